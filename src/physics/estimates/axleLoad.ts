import * as messages from "../../words/compiled/physics/estimates.ts";
import { fail, type Outcome, succeed } from "../outcome.ts";
import type { Quantity } from "../sentence.ts";
import { type Estimate, isPositive, type Toleranced } from "./estimate.ts";

/** A trailer's weight on the hitch, and the lever it works by. */
export interface HitchLoad {
  /** Pressing down on the hitch, kg. */
  readonly tongue: Toleranced;
  /** Hitch behind the middle of the rear axle, mm. */
  readonly overhang: Toleranced;
  /** Front to rear axle, mm. */
  readonly wheelbase: Toleranced;
}

/**
 * What a trailer's tongue puts on each wheel of an axle, kg: rear T·(1 + o/w)/2, front −T·(o/w)/2, which is
 * told as none, since the front is lifted. Source: statics, moments about the other axle; left and right
 * alike. Doubt to first order, JCGM 100:2008, 5.1.2.
 *
 * Errors: "hitchNotUsable" where a value is not above 0 or the overhang is as long as the wheelbase.
 */
export function hitchLoad(
  { tongue, overhang, wheelbase }: HitchLoad,
  axle: "front" | "rear",
): Outcome<Estimate> {
  const usable = [tongue, overhang, wheelbase].every(isPositive);
  if (!usable || overhang.value >= wheelbase.value) {
    return fail("hitchNotUsable", [messages.hitchStandsBehindRear]);
  }
  const lever = overhang.value / wheelbase.value;
  const leverTol =
    lever * Math.hypot(overhang.tol / overhang.value, wheelbase.tol / wheelbase.value);
  const lifted = (tongue.value * lever) / 2;
  const mass = (value: number): Quantity => ({ kind: "mass", value });
  if (axle === "front") {
    return succeed({
      value: 0,
      tol: 0,
      how: messages.noneTongueWeightOf({ words: mass(tongue.value), words2: mass(lifted) }),
    });
  }
  const value = (tongue.value * (1 + lever)) / 2;
  return succeed({
    value,
    tol: Math.hypot((tongue.tol * (1 + lever)) / 2, (tongue.value * leverTol) / 2),
    how: messages.halfOfWhichTongue({ words: mass(2 * value), words2: mass(tongue.value) }),
  });
}

/**
 * The most that each wheel may carry on top of now, kg: half of what the axle's rating leaves. An upper
 * bound: nobody has to load it so far. Left and right alike (common practice).
 *
 * @param rating of the axle, kg
 * @param corner weight on one wheel as it stands, kg
 * Errors: "ratingNotUsable"; "ratingPassed" where it weighs more than its rating already.
 */
export function upToRating(rating: Toleranced, corner: Toleranced): Outcome<Estimate> {
  if (!(isPositive(rating) && isPositive(corner))) {
    return fail("ratingNotUsable", [messages.axlesRatingMustBe]);
  }
  const value = rating.value / 2 - corner.value;
  if (value < 0) {
    return fail("ratingPassed", [
      messages.thisAxleWeighsNow({ corner: { kind: "mass", value: 2 * corner.value } }),
    ]);
  }
  return succeed({
    value,
    tol: Math.hypot(rating.tol / 2, corner.tol),
    how: messages.mostThatAxlesRating({
      inModelUnits: { kind: "mass", value: rating.value },
    }),
  });
}
