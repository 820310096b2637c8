import { layoutAtHeight } from "../../physics/kinematics/index.ts";
import type { ReadingId } from "../../physics/readings/index.ts";
import { length, type Message, type Sentence } from "../../physics/sentence.ts";
import { meanOf } from "../../physics/uncertainty/index.ts";
import * as messages from "../../words/compiled/records/quickCheck.ts";
import type { TypedReading } from "../check/checkRecord.ts";
import { isBelievable } from "../entry/readingCatalogue.ts";
import type { Platform } from "../pack/pack.ts";
import type { QuickCheckReadings } from "./quickCheckQuestion.ts";

/** A reading that is not believed beside the others, and why. */
export interface DoubtedReading {
  readonly reading: ReadingId;
  readonly sentence: Sentence;
}

type Heights = Pick<QuickCheckReadings, "rideHeight" | "gap">;

/** From the ground a height is more by the wheel's radius, about 280 to 450 mm. Common practice. */
const wheelRadius = [200, 500] as const;

/** A ride height as far above the usual one as a wheel's centre is above the ground. */
export function groundToArch(platform: Platform, { rideHeight }: Heights): DoubtedReading | null {
  if (rideHeight === undefined || platform.rideHeight === undefined) return null;
  const above = meanOf(rideHeight) - meanOf(platform.rideHeight);
  if (above < wheelRadius[0] || above > wheelRadius[1]) return null;
  return {
    reading: "left.rideHeight",
    sentence: [messages.thisIsFarAbove({ meanOf: length(meanOf(platform.rideHeight)) })],
  };
}

/** What no vehicle has: no number is made of it, and none is shown. */
export function notBelieved({
  gap,
  stopHeight,
  clearance,
}: QuickCheckReadings): DoubtedReading | null {
  const typed: readonly (readonly [ReadingId, Message, TypedReading | undefined])[] = [
    ["left.gap", messages.gap, gap],
    ["stop.freeHeight", messages.heightOfStop, stopHeight],
    ["left.limits.0", messages.clearance, clearance?.reading],
  ];
  for (const [reading, name, own] of typed) {
    if (own === undefined || isBelievable(reading, meanOf(own))) continue;
    return {
      reading,
      sentence: [messages.asTypedIsFar({ name })],
    };
  }
  return null;
}

/** Typed as mm and read as inches it is about what this vehicle has; as mm it is next to nothing. Common practice. */
const slip = { least: 1 / 8, asInches: [0.4, 2.5] } as const;

function looksLikeInches(typedMm: number, usualMm: number): boolean {
  const share = (25.4 * typedMm) / usualMm;
  return typedMm < slip.least * usualMm && share >= slip.asInches[0] && share <= slip.asInches[1];
}

/** A gap or clearance typed in inches as if it were mm, held against what the other readings make of the pack's. */
export function inchesForMm(
  { gap: usualGap, limits, layout, rideHeight: usualHeight }: Platform,
  usualStopMm: number | null,
  { rideHeight, gap, stopHeight, clearance }: Omit<QuickCheckReadings, "payload">,
): DoubtedReading | null {
  const raisedMm = rideHeight && usualHeight ? meanOf(rideHeight) - meanOf(usualHeight) : 0;
  const raised = layoutAtHeight(layout, raisedMm, 0);
  const openedMm = raised.ok ? raised.value.openedMm : 0;
  if (gap !== undefined && usualGap !== undefined) {
    const taller = stopHeight && usualStopMm !== null ? meanOf(stopHeight) - usualStopMm : 0;
    const expected = meanOf(usualGap) + openedMm - taller;
    if (looksLikeInches(meanOf(gap), expected))
      return slipOf("left.gap", messages.gap, gap, expected);
  }
  const limit = limits.find(({ kind }) => kind === clearance?.kind);
  if (clearance === undefined || limit === undefined) return null;
  const more = limit.at === "wheel" ? (limit.perWheel ?? 1) * raisedMm : openedMm;
  const expected = meanOf(limit.reading) + more;
  return looksLikeInches(meanOf(clearance.reading), expected)
    ? slipOf("left.limits.0", messages.clearance, clearance.reading, expected)
    : null;
}

function slipOf(
  reading: ReadingId,
  name: Message,
  typed: TypedReading,
  expectedMm: number,
): DoubtedReading {
  return {
    reading,
    sentence: [
      messages.byOtherReadingsThis({
        name,
        expectedMm: length(expectedMm),
        meanOf: length(meanOf(typed)),
      }),
    ],
  };
}

/** Raised by its springs the gap opens; where it did not, the body may have been raised off the frame. */
export function bodyLift(platform: Platform, { rideHeight, gap }: Heights): DoubtedReading | null {
  if (rideHeight === undefined || platform.rideHeight === undefined) return null;
  if (gap === undefined || platform.gap === undefined) return null;
  const raisedMm = meanOf(rideHeight) - meanOf(platform.rideHeight);
  if (raisedMm < 15 + rideHeight.tol + platform.rideHeight.tol) return null;
  const raised = layoutAtHeight(platform.layout, raisedMm, 0);
  if (!raised.ok) return null;
  const opened = meanOf(gap) - meanOf(platform.gap);
  if (opened > 0.3 * raised.value.openedMm) return null;
  return {
    reading: "left.gap",
    sentence: [messages.itStandsHigherBut({ raisedMm: length(raisedMm) })],
  };
}
