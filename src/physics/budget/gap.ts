import * as messages from "../../words/compiled/physics/budget.ts";
import type { Corner, Fitment, Reading } from "../fitment.ts";
import { fail, type Outcome, succeed } from "../outcome.ts";
import { standingNames } from "../readings/cornerReadings.ts";
import type { QuantityId } from "../readings/readingId.ts";
import { checkedMean } from "../uncertainty/checkedMean.ts";

/**
 * How it was found where the stop stands: its gap to the pad; its height now, where it touches and is
 * pressed; the seat's distance to the pad, where there is no stop or a ruined one.
 */
type GapWay = (typeof standingNames)[number];

/** The one reading of a corner that says where the stop stands. */
export interface GapReading {
  readonly way: GapWay;
  readonly id: QuantityId;
  readonly reading: Reading;
}

/** The corner's reading that says where the stop stands. Errors: `gapMissing`, `gapTwice`. */
export function gapReadingOf(corner: Corner): Outcome<GapReading> {
  const found = standingNames.flatMap((way): GapReading[] => {
    const reading = corner[way];
    return reading === undefined ? [] : [{ way, id: `${corner.side}.${way}`, reading }];
  });
  const [only, second] = found;
  if (only === undefined) {
    return fail(
      "gapMissing",
      [messages.whereStopStandsIs({ side: corner.side })],
      `${corner.side}.gap`,
    );
  }
  return second === undefined
    ? succeed(only)
    : fail("gapTwice", [messages.stopHasGapPressed({ side: corner.side })], second.id);
}

/**
 * g of the stop that is asked about, mm along its axis at ride; below 0 by so much it is pressed in.
 *
 * Seat and pad stand apart at ride by what was measured: gap + height of the stop that stood there, the
 * height of a pressed stop, or seat to pad. g is what the stop asked about, with its spacer, leaves of it.
 * Errors: those of `gapReadingOf`; an impossible reading, by its name.
 */
export function gapOf(fitment: Fitment, corner: Corner): Outcome<number> {
  const measured = gapReadingOf(corner);
  if (!measured.ok) return measured;
  const { way, id, reading } = measured.value;
  const mean = checkedMean(reading, id, way === "gap" ? "gap" : "length");
  if (!mean.ok) return mean;
  const height = checkedMean(fitment.stop.freeHeight, "stop.freeHeight", "length");
  if (!height.ok) return height;
  const { recordedStop } = fitment;
  if (way !== "gap") return succeed(mean.value - height.value - (fitment.spacerMm ?? 0));
  const recorded =
    recordedStop === undefined
      ? height
      : checkedMean(recordedStop.freeHeight, recordedHeightId, "length");
  return recorded.ok
    ? succeed(mean.value + recorded.value - height.value - (fitment.spacerMm ?? 0))
    : recorded;
}

/** The height of the stop that the readings were taken with, where another is asked about. */
export const recordedHeightId: QuantityId = "recordedStop.freeHeight";

/**
 * g of the stop that the readings were taken with, mm. Contacts found by hand belong to it. Where none
 * stood there, that of the stop the record names. Errors as `gapOf`.
 */
export function measuredGapOf(fitment: Fitment, corner: Corner): Outcome<number> {
  const { recordedStop = fitment.stop, spacerMm: _, recordedStop: __, ...rest } = fitment;
  return gapOf({ ...rest, stop: recordedStop }, corner);
}

/**
 * The same, null where no stop stood there: what it carried then held the vehicle up. Errors as `gapOf`.
 */
export function recordedGapOf(fitment: Fitment, corner: Corner): Outcome<number | null> {
  return corner.seatToPad === undefined ? measuredGapOf(fitment, corner) : succeed(null);
}
