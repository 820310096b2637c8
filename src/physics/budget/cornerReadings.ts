import type { Corner, Fitment, Reading } from "../fitment.ts";
import { type LayoutPlan, layoutPlan } from "../kinematics/layoutPlan.ts";
import type { GeometryReading } from "../kinematics/measuredPlaces.ts";
import type { AxleMovement } from "../kinematics/straightMotion.ts";
import { type Outcome, type ReadingId, succeed } from "../outcome.ts";
import { type DrawnReading, drawnReading } from "../uncertainty/drawnReading.ts";
import { checkedMean, type ReadingSort } from "../uncertainty/readingMean.ts";
import { type GapWay, gapReadingOf, recordedHeightId } from "./gap.ts";

/** One place in a corner's formulas and the reading that fills it. */
export interface CornerPlace {
  readonly name: GeometryReading["name"] | GapWay | "freeHeight" | "recordedHeight" | "limit";
  readonly id: ReadingId;
  /** As measured; null for what is no reading of the vehicle. */
  readonly reading: Reading | null;
  readonly drawn: DrawnReading | null;
}

/**
 * Everything measured that enters a corner's travel budget, in the order in which the formulas take
 * it: the layout's places (`layoutPlan`), what says where the stop stands (`gapReadingOf`), the stop's
 * free height, the hard limits, the height of the stop the gap was measured with where it is another. One
 * reading may fill two places. Errors: those of `gapReadingOf`; an impossible reading, by its name.
 */
export function cornerReadings(fitment: Fitment, corner: Corner): Outcome<readonly CornerPlace[]> {
  interface Wanted {
    readonly name: CornerPlace["name"];
    readonly id: ReadingId;
    readonly sort: ReadingSort;
    readonly reading: Reading;
  }
  const single = (
    name: CornerPlace["name"],
    id: ReadingId,
    sort: ReadingSort,
    reading: Reading,
  ): Wanted => ({ name, id, sort, reading });
  const stands = gapReadingOf(corner);
  if (!stands.ok) return stands;
  const { way, id: gapId, reading: gap } = stands.value;
  const recorded = way === "gap" ? (fitment.recordedStop?.freeHeight ?? null) : null;
  const wanted: readonly Wanted[] = [
    single(way, gapId, way === "gap" ? "gap" : "length", gap),
    single("freeHeight", "stop.freeHeight", "length", fitment.stop.freeHeight),
    ...corner.limits.map((limit, index) =>
      single("limit", `${corner.side}.limits.${index}`, "length", limit.reading),
    ),
    ...(recorded === null ? [] : [single("recordedHeight", recordedHeightId, "length", recorded)]),
  ];
  const plan = layoutPlan(fitment.layout, corner);
  if (!plan.ok) return plan;
  const places: CornerPlace[] = [...plan.value.places];
  for (const { name, id, sort, reading } of wanted) {
    const mean = checkedMean(reading, id, sort);
    if (!mean.ok) return mean;
    places.push({ name, id, reading, drawn: drawnReading(id, reading) });
  }
  return succeed(places);
}

/** The plan of a corner whose readings `cornerReadings` has found to be possible. */
export function checkedPlan(
  { layout }: Fitment,
  corner: Corner,
  movement: AxleMovement = "both",
): LayoutPlan {
  const plan = layoutPlan(layout, corner, movement);
  if (plan.ok) return plan.value;
  throw new RangeError("A corner is checked before it is computed with.");
}

/** The mean of every place, in order. */
export function placeMeans(places: readonly CornerPlace[]): Float64Array {
  return Float64Array.from(places, (place) => place.drawn?.mean ?? 0);
}
