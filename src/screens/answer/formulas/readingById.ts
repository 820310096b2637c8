import type {
  Fitment,
  GeometryReadingName,
  Reading,
  RideQuantity,
} from "../../../physics/fitment.ts";
import type { ReadingId } from "../../../physics/outcome.ts";
import type { QuantityKind } from "../../../physics/sentence.ts";
import { catalogueEntry, entryName } from "../../../records/entry/readingCatalogue.ts";

/** The reading an id stands for; undefined for what is no reading of this fitment. */
export function readingById(fitment: Fitment, id: ReadingId): Reading | undefined {
  if (id === "stop.freeHeight") return fitment.stop.freeHeight;
  const ride = /^ride\.(\w+)$/.exec(id)?.[1];
  if (ride) return rideReading(fitment, ride as RideQuantity);
  const own = /^(left|right)\.(.+)$/.exec(id);
  const shared: { readonly [Name in GeometryReadingName]?: Reading } = fitment.layout.readings;
  if (!own) return shared[id as GeometryReadingName];
  const corner = fitment.corners.find(({ side }) => side === own[1]);
  const name = own[2] ?? "";
  const limit = /^limits\.(\d+)$/.exec(name)?.[1];
  if (limit) return corner?.limits[Number(limit)]?.reading;
  if (name === "gap" || name === "rideHeight" || name === "cornerMassKg") return corner?.[name];
  return corner?.geometry?.[name as GeometryReadingName];
}

function rideReading(fitment: Fitment, name: RideQuantity): Reading | undefined {
  const value = fitment.ride?.[name];
  const tol = fitment.ride?.tolerances?.[name];
  return value === undefined || tol === undefined ? undefined : { values: [value], tol };
}

/** "left gap", "right clearance over the tyre", "arm angle". */
export function readingWords(fitment: Fitment, id: ReadingId): string {
  const limit = /^(left|right)\.limits\.(\d+)$/.exec(id);
  const corner = limit && fitment.corners.find(({ side }) => side === limit[1]);
  return entryName(id, corner ? corner.limits[Number(limit?.[2])]?.kind : undefined);
}

/** What a reading measures, for showing its value; undefined where it has no unit of ours. */
export function readingKind(id: ReadingId): QuantityKind | undefined {
  const { kind } = catalogueEntry(id);
  return kind === "length" || kind === "angle" || kind === "mass" || kind === "rate"
    ? kind
    : undefined;
}
