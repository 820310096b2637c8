import type { ArmRole, Linkage } from "../../fitment.ts";
import {
  asinDegrees,
  cosDegrees,
  degrees,
  type FormulaStep,
  mm,
  quantity,
  sinDegrees,
  type Working,
} from "../workedFigure.ts";
import type { MeasuredTerms } from "./measuredTerms.ts";

/** How the wheel rises as an arm turns by α, and back; z in mm, α in degrees. */
export interface PathWorking {
  readonly before: readonly FormulaStep[];
  /** dz/dα at ride, mm per radian. */
  slope(): Working;
  travel(turn: number): Working;
  /** α for a wheel travel; null where it is only found by search. */
  turn(travel: number, letter: string): Working | null;
}

/** b and θ0 of the arm that carries the stop. */
export interface MeasuredArm {
  readonly length: number;
  readonly angle: number;
}

export function measuredArm(terms: MeasuredTerms, armRole: ArmRole | undefined): MeasuredArm {
  const end = armRole === "carriesWheel" ? "wheel center" : "outer joint";
  return {
    length: terms.length("pivotToOuter", "b", `pivot line to the ${end}`),
    angle: terms.angle("armAngle", "θ0", "arm below the horizontal"),
  };
}

/** z = κ·b·[sin θ0 − sin(θ0 − α)]: the wheel rises in proportion to the outer joint. */
export function swingPath(
  arm: MeasuredArm,
  ratio: number,
  before: readonly FormulaStep[],
): PathWorking {
  const { length: b, angle } = arm;
  return {
    before,
    slope() {
      const value = ratio * b * cosDegrees(angle);
      return {
        value,
        steps: [
          {
            formula: "dz/dα = κ·b·cos θ0, per radian",
            worked: [quantity("count", ratio), " · ", mm(b), " · cos ", degrees(angle)],
            result: mm(value),
          },
        ],
      };
    },
    travel(turn) {
      const value = ratio * b * (sinDegrees(angle) - sinDegrees(angle - turn));
      return {
        value,
        steps: [
          {
            formula: "z = κ·b·[sin θ0 − sin(θ0 − α)]",
            worked: [
              quantity("count", ratio),
              " · ",
              mm(b),
              " · [sin ",
              degrees(angle),
              " − sin ",
              degrees(angle - turn),
              "]",
            ],
            result: mm(value),
          },
        ],
      };
    },
    turn(travel, letter) {
      const value = angle - asinDegrees(sinDegrees(angle) - travel / (ratio * b));
      return {
        value,
        steps: [
          {
            formula: `α = θ0 − asin[sin θ0 − ${letter}/(κ·b)]`,
            worked: [
              degrees(angle),
              " − asin[sin ",
              degrees(angle),
              " − ",
              mm(travel),
              " / (",
              quantity("count", ratio),
              " · ",
              mm(b),
              ")]",
            ],
            result: degrees(value),
          },
        ],
      };
    },
  };
}

/** Where κ came from, of a swing without a linkage. */
export function ratioOrigin(linkage: Linkage): string {
  if (linkage === "carriesWheel") return "the arm carries the wheel itself";
  return linkage === "typed" ? "from the check" : "usual for such arms, not measured";
}

/** The wheel's own rise, from the joint's and the carrier's turn δ: e out and v above the lower joint. */
export function wheelStep(
  joint: number,
  tyre: number,
  above: number,
  delta: number,
  value: number,
): FormulaStep {
  return {
    formula: "z = L up + e·sin δ + v·(cos δ − 1)",
    worked: [
      mm(joint),
      " + ",
      mm(tyre),
      " · sin ",
      degrees(delta),
      " + ",
      mm(above),
      " · (cos ",
      degrees(delta),
      " − 1)",
    ],
    result: mm(value),
  };
}
