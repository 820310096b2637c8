import { usualUsableShare } from "../../../physics/budget/index.ts";
import type {
  Fitment,
  GeometryReadingName,
  Reading,
  RideQuantity,
} from "../../../physics/fitment.ts";
import type { FieldPath } from "../../../physics/outcome.ts";
import { definitionOf, limitOf, parseReadingId, sideOf } from "../../../physics/readings/index.ts";
import type { QuantityKind } from "../../../physics/sentence.ts";
import { entryName } from "../../../records/entry/readingCatalogue.ts";
import { said } from "../../../saying/texts.ts";
import * as messages from "../../../words/compiled/screens/answer/formulas.ts";

/** The reading an id stands for; undefined for what is no reading of this fitment. */
export function readingById(fitment: Fitment, id: FieldPath): Reading | undefined {
  if (id === "stop.freeHeight") return fitment.stop.freeHeight;
  const place = parseReadingId(id);
  if (place?.of === "ride") return rideReading(fitment, place.name);
  const shared: { readonly [Name in GeometryReadingName]?: Reading } = fitment.layout.readings;
  if (place?.of === "geometry" && place.side === null) return shared[place.name];
  const corner = fitment.corners.find(({ side }) => side === sideOf(id));
  switch (place?.of) {
    case "limit":
      return place.name === "perWheel" ? undefined : corner?.limits[place.index]?.[place.name];
    case "corner":
      return corner?.[place.name];
    case "geometry":
      return corner?.geometry?.[place.name];
    default:
      return undefined;
  }
}

function rideReading(fitment: Fitment, name: RideQuantity): Reading | undefined {
  const value = fitment.ride?.[name];
  const tol = fitment.ride?.tolerances?.[name];
  return value === undefined || tol === undefined ? undefined : { values: [value], tol };
}

/** What takes part in the doubt without being a reading of the vehicle, by the last part of its id. */
const causeWords: { readonly [cause: string]: string } = {
  linkage: messages.whatComputedTravelItself,
  wheelPerOuter: messages.howWheelMovesWith,
  settle: messages.frictionInSuspension,
  testDoubt: messages.fromItsTest,
  usableCompressionMm: messages.howMuchStopsOf,
};

/** "left gap", "right clearance over the tire", "arm angle"; of a cause of doubt that is no reading, its words. */
export function readingWords(fitment: Fitment, id: FieldPath): string {
  const cause = causeWords[id.slice(id.lastIndexOf(".") + 1)];
  if (cause !== undefined) return cause;
  const limit = limitOf(id);
  const corner = fitment.corners.find(({ side }) => side === limit?.side);
  return said(entryName(id, corner?.limits[limit?.index ?? -1]?.kind));
}

/** The ± of a cause of doubt that is no reading, mm, and where it comes from; null where it has none of its own. */
export function causeDoubt(
  { stop, corners }: Fitment,
  id: FieldPath,
): { readonly halfWidthMm: number; readonly from: string } | null {
  if (id === "stop.usableCompressionMm") {
    const { usableTolMm, usableCompressionMm } = stop;
    return usableTolMm === undefined
      ? {
          halfWidthMm: usualUsableShare * usableCompressionMm,
          from: messages.ofItsUsableCompression,
        }
      : { halfWidthMm: usableTolMm, from: messages.ofItsUsableCompression2 };
  }
  const corner = corners.find(({ side }) => id === `${side}.settle`);
  return corner?.settleMm === undefined
    ? null
    : {
        halfWidthMm: corner.settleMm,
        from: messages.ofRideHeightHalf,
      };
}

/** What a reading measures, for showing its value; undefined where it has no unit of ours. */
export function readingKind(id: FieldPath): QuantityKind | undefined {
  const kind = definitionOf(id)?.kind;
  return kind === "length" || kind === "angle" || kind === "mass" || kind === "rate"
    ? kind
    : undefined;
}
