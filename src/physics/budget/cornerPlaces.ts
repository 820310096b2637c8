import * as messages from "../../words/compiled/physics/budget.ts";
import type { Corner, Fitment, LimitKind, Reading } from "../fitment.ts";
import { layoutRegistry } from "../layouts/geometryRegistry.ts";
import { type Fault, type Outcome, succeed } from "../outcome.ts";
import { readingName } from "../readingNames.ts";
import type { QuantityId } from "../readings/readingId.ts";
import { capital } from "../sentence.ts";
import { checkedMean, type ReadingSort } from "../uncertainty/checkedMean.ts";
import { type DrawnReading, drawnReading } from "../uncertainty/drawnReading.ts";
import { gapReadingOf, recordedHeightId } from "./gap.ts";
import { type HandContacts, handContactsOf } from "./handContacts.ts";

/** One place in a corner's formulas and the quantity that fills it. One reading may fill two places. */
export interface CornerPlace {
  readonly id: QuantityId;
  /** As measured; null: a doubt that nobody reads off, such as friction or what the model may be off. */
  readonly reading: Reading | null;
  readonly drawn: DrawnReading;
}

/** Where a hard limit's readings stand; `clearance` alone where it is not on the arm. */
export interface LimitPlaces {
  readonly kind: LimitKind;
  readonly at: "wheel" | "stop" | "arm" | "hand";
  readonly perWheel: number;
  readonly clearance: number;
  /** On the arm: of its distance from the pivot line. */
  readonly distance: number;
  /** In the corner's list; null: found by hand. */
  readonly index: number | null;
}

/** What was found by hand, by the places of its readings; −1 = none. */
interface HandPlaces {
  readonly atRide: number;
  readonly stop: number;
  readonly block: number;
  readonly blockHeight: number;
  /** q, what the increments beyond the last contact may be off. */
  readonly beyond: number;
}

/** Everything that enters a corner's travel budget, each quantity at its place; −1 = no such quantity. */
export interface CornerPlaces {
  readonly all: readonly CornerPlace[];
  /** The layout's places come first. */
  readonly geometryCount: number;
  /** Of the distance that a stop on the arm stands off its pad, among the layout's. */
  readonly standOff: number;
  /** What says where the stop stands: `gapReadingOf`. */
  readonly stands: number;
  readonly freeHeight: number;
  /** Height of the stop that the readings were taken with, where it is another. */
  readonly recordedHeight: number;
  readonly usable: number;
  readonly settle: number;
  readonly limits: readonly LimitPlaces[];
  /** Null where neither stop nor block was met by hand. */
  readonly hand: HandPlaces | null;
}

/** Share of the usable compression that it may be off where the maker does not say. Common practice. */
export const usualUsableShare = 0.05;
/** Standard deviation of what increments beyond the last contact by hand may be off. Provisional. */
const beyondDeviation = 0.03;

/** Half-width of the usable compression, mm: as given, else 5 % of it. */
function usableTolerance({ stop }: Fitment): number {
  return stop.usableTolMm ?? usualUsableShare * stop.usableCompressionMm;
}

/**
 * The quantities of a corner besides its layout's own, which come before.
 *
 * Errors: those of `gapReadingOf`; an impossible reading, by its name; `limitNotOnArm`.
 */
export function cornerPlaces(
  fitment: Fitment,
  corner: Corner,
  geometry: readonly CornerPlace[],
): Outcome<CornerPlaces> {
  const stands = gapReadingOf(corner);
  if (!stands.ok) return stands;
  const { way, id, reading } = stands.value;
  const misplaced = limitFault(fitment, corner);
  if (misplaced !== null) return { ok: false, fault: misplaced };
  const hand = handContactsOf(fitment, corner);
  const all: CornerPlace[] = [...geometry];
  const wanted: {
    readonly place: number;
    readonly sort: ReadingSort;
    readonly kind?: LimitKind;
  }[] = [];
  const measured = (
    name: QuantityId,
    value: Reading | undefined,
    sort: ReadingSort,
    kind?: LimitKind,
  ): number => {
    if (value === undefined) return -1;
    const place = all.push({ id: name, reading: value, drawn: drawnReading(name, value) }) - 1;
    wanted.push({ place, sort, ...(kind === undefined ? {} : { kind }) });
    return place;
  };
  const doubt = (
    name: QuantityId,
    mean: number,
    halfWidth: number,
    standardError: number,
  ): number =>
    all.push({
      id: name,
      reading: null,
      drawn: { id: name, mean, halfWidth, standardError },
    }) - 1;
  const { stop, recordedStop } = fitment;
  const needsRecorded = way === "gap" || hand?.block != null || hand?.stop != null;
  const settle = corner.settleMm ?? 0;
  const byHand = hand?.stop != null || hand?.block != null;
  const places: CornerPlaces = {
    all,
    geometryCount: geometry.length,
    standOff: geometry.findIndex((place) => place.id === id),
    stands: measured(id, reading, way === "gap" ? "gap" : "length"),
    freeHeight: measured("stop.freeHeight", stop.freeHeight, "length"),
    recordedHeight: needsRecorded
      ? measured(recordedHeightId, recordedStop?.freeHeight, "length")
      : -1,
    usable: doubt(
      "stop.usableCompressionMm",
      stop.usableCompressionMm,
      usableTolerance(fitment),
      0,
    ),
    settle: settle > 0 ? doubt(`${corner.side}.settle`, 0, settle, 0) : -1,
    limits: limitPlaces(corner, hand, measured),
    hand: byHand ? handPlaces(corner, hand, measured, doubt) : null,
  };
  for (const { place, sort, kind } of wanted) {
    const { id: name, reading: value } = all[place] as CornerPlace;
    const mean = checkedMean(value ?? undefined, name, sort, kind);
    if (!mean.ok) return mean;
  }
  return succeed(places);
}

/** A limit on the arm needs an arm, and its distance from the pivot line. */
function limitFault({ layout }: Fitment, { side, limits }: Corner): Fault | null {
  for (const [index, { at, distance, kind }] of limits.entries()) {
    if (at !== "arm") continue;
    const id = `${side}.limits.${index}`;
    if (!layoutRegistry[layout.kind].onArm) {
      return {
        code: "limitNotOnArm",
        sentence: [messages.isSaidToBe({ readingName: capital(readingName(id, kind)) })],
        reading: id,
      };
    }
    const mean = checkedMean(distance, `${id}.distance`, "length");
    if (!mean.ok) return mean.fault;
  }
  return null;
}

type Measured = (
  id: QuantityId,
  reading: Reading | undefined,
  sort: ReadingSort,
  kind?: LimitKind,
) => number;

/** The corner's limits but for those kinds that were found by hand, and these. */
function limitPlaces(
  { side, limits }: Corner,
  hand: HandContacts | null,
  measured: Measured,
): readonly LimitPlaces[] {
  const found = hand?.limits ?? [];
  const atRide = hand?.atRide ?? null;
  const own = limits.flatMap(({ kind, at, perWheel, reading, distance }, index): LimitPlaces[] =>
    found.some((contact) => contact.kind === kind)
      ? []
      : [
          {
            kind,
            at,
            perWheel: perWheel ?? 1,
            clearance: measured(`${side}.limits.${index}`, reading, "length", kind),
            distance:
              at === "arm" ? measured(`${side}.limits.${index}.distance`, distance, "length") : -1,
            index,
          },
        ],
  );
  const byHand = found.map(({ kind, id, reading }): LimitPlaces => {
    const clearance = measured(id, reading, "gap");
    return {
      kind,
      at: "hand",
      perWheel: 1,
      clearance,
      distance: atRide === null ? -1 : measured(atRide.id, atRide.reading, "length"),
      index: null,
    };
  });
  return [...own, ...byHand];
}

function handPlaces(
  { side }: Corner,
  hand: HandContacts | null,
  measured: Measured,
  doubt: (id: QuantityId, mean: number, halfWidth: number, standardError: number) => number,
): HandPlaces {
  const { atRide = null, stop = null, block = null } = hand ?? {};
  return {
    atRide: atRide === null ? -1 : measured(atRide.id, atRide.reading, "length"),
    stop: stop === null ? -1 : measured(stop.id, stop.reading, "gap"),
    block: block === null ? -1 : measured(block.id, block.reading, "gap"),
    blockHeight: block === null ? -1 : measured(block.height.id, block.height.reading, "length"),
    beyond: doubt(`${side}.linkage`, 0, 0, beyondDeviation),
  };
}

/** The mean of every place, in order. */
export function placeMeans(places: readonly CornerPlace[]): Float64Array {
  return Float64Array.from(places, ({ drawn }) => drawn.mean);
}
