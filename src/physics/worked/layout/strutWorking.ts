import {
  asinDegrees,
  atan2Degrees,
  cosDegrees,
  degrees,
  type FormulaStep,
  mm,
  quantity,
  sinDegrees,
} from "../workedFigure.ts";
import type { MeasuredTerms } from "./measuredTerms.ts";
import { type MeasuredArm, type PathWorking, wheelStep } from "./pathWorking.ts";

/** What the strut and the arm below it are, for both contact and path. */
export interface StrutTerms {
  readonly arm: MeasuredArm;
  readonly jointToTop: number;
  readonly topLean: number;
  readonly lean: number;
  /** p, how far the strut's axis passes the lower joint, mm. */
  readonly aside: number;
}

export function strutTerms(terms: MeasuredTerms): StrutTerms {
  const arm = {
    length: terms.length("lowerArmLength", "a", "length of the lower arm"),
    angle: terms.angle("lowerArmAngle", "φ0", "lower arm below the horizontal"),
  };
  const lean = terms.angle("stopLean", "βs", "lean of the strut, top toward the middle");
  const jointToTop = terms.length("jointToTop", "L0", "lower joint to the top mount");
  const topLean = terms.angle("jointToTopLean", "β", "lean of that line", lean);
  return { arm, jointToTop, topLean, lean, aside: jointToTop * sinDegrees(lean - topLean) };
}

/** The wheel carrier turns with the strut's axis, which passes the lower joint at p. */
export function strutPath(terms: MeasuredTerms, strut: StrutTerms): PathWorking {
  const { arm, jointToTop, topLean, lean, aside } = strut;
  const tyre = terms.length("tyreOffset", "e", "lower joint out to the middle of the tire");
  const above = terms.length("wheelCentreAbove", "v", "wheel center above the lower joint");
  const jointY = arm.length * cosDegrees(arm.angle);
  const jointZ = -arm.length * sinDegrees(arm.angle);
  const topY = jointY - jointToTop * sinDegrees(topLean);
  const topZ = jointZ + jointToTop * cosDegrees(topLean);
  const straight = Math.sqrt(jointToTop * jointToTop - aside * aside);
  const before: readonly FormulaStep[] = [
    {
      formula: "p = L0·sin(βs − β), the strut's axis beside the joint",
      worked: [mm(jointToTop), " · sin(", degrees(lean), " − ", degrees(topLean), ")"],
      result: mm(aside),
    },
  ];
  return {
    before,
    slope() {
      const cross = jointY * (topZ - jointZ) - jointZ * (topY - jointY);
      const dot = jointY * (topY - jointY) + jointZ * (topZ - jointZ);
      const turning = ((aside * cross) / straight - dot) / (jointToTop * jointToTop);
      const value = jointY + tyre * turning;
      return {
        value,
        steps: [
          {
            formula:
              "dδ/dα = (p·X/√(L0² − p²) − W)/L0², X and W the arm across and along the line to the top",
            worked: [
              "(",
              mm(aside),
              " · ",
              mm(cross),
              " / √[(",
              mm(jointToTop),
              ")² − (",
              mm(aside),
              ")²] − ",
              mm(dot),
              ") / (",
              mm(jointToTop),
              ")²",
            ],
            result: quantity("count", turning),
          },
          {
            formula: "dz/dα = a·cos φ0 + e·dδ/dα, per radian",
            worked: [
              mm(arm.length),
              " · cos ",
              degrees(arm.angle),
              " + ",
              mm(tyre),
              " · ",
              quantity("count", turning),
            ],
            result: mm(value),
          },
        ],
      };
    },
    travel(turn) {
      const y = arm.length * cosDegrees(arm.angle - turn);
      const z = -arm.length * sinDegrees(arm.angle - turn);
      const across = topY - y;
      const up = topZ - z;
      const far = Math.hypot(across, up);
      const delta = atan2Degrees(-across, up) + asinDegrees(aside / far) - lean;
      const risen = z - jointZ;
      const value = risen + tyre * sinDegrees(delta) + above * (cosDegrees(delta) - 1);
      return {
        value,
        steps: [
          {
            formula: "L up: how far the lower joint has risen",
            worked: [
              mm(arm.length),
              " · [sin ",
              degrees(arm.angle),
              " − sin ",
              degrees(arm.angle - turn),
              "]",
            ],
            result: mm(risen),
          },
          {
            formula: "δ, the wheel carrier's turn: lean of the line to the top + asin(p/D) − βs",
            worked: [
              "atan2(",
              mm(-across),
              "; ",
              mm(up),
              ") + asin[",
              mm(aside),
              " / ",
              mm(far),
              "] − ",
              degrees(lean),
            ],
            result: degrees(delta),
          },
          wheelStep(risen, tyre, above, delta, value),
        ],
      };
    },
    turn: () => null,
  };
}
