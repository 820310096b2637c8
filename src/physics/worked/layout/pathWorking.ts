import * as messages from "../../../words/compiled/physics/worked/layout.ts";
import type { ArmRole, Linkage } from "../../fitment.ts";
import { type SwingPath, swingFormulas } from "../../motion/path/swingPath.ts";
import { carrierFormula, type WheelPath } from "../../motion/path/wheelPath.ts";
import { Turn } from "../../motion/turn.ts";
import type { Message, Words } from "../../sentence.ts";
import { type FormulaStep, step, type Terms } from "../step.ts";
import { degrees, degreesOf, mm, quantity, turnBy, type Working } from "../workedFigure.ts";
import type { MeasuredTerms } from "./measuredTerms.ts";

/** How the wheel rises as an arm turns by α, and back; z in mm, α in degrees. */
export interface PathWorking {
  readonly before: readonly FormulaStep[];
  /** dz/dα at ride, mm per radian. */
  slope(): Working;
  travel(turn: number): Working;
  /** α for a wheel travel; null where it is only found by search. */
  turn(travel: number, letter: Words): Working | null;
}

/** b and θ0 of the arm that carries the stop. */
export interface MeasuredArm {
  readonly length: number;
  readonly angle: number;
}

export function measuredArm(terms: MeasuredTerms, armRole: ArmRole | undefined): MeasuredArm {
  const end = armRole === "carriesWheel" ? messages.wheelCenter : messages.outerJoint;
  return {
    length: terms.length("pivotToOuter", "b", messages.pivotLineTo({ end })),
    angle: terms.angle("armAngle", "θ0", messages.armBelowHorizontal),
  };
}

/** dz/dα where the arm stands at ride, by a formula of its path. */
export function slopeWorking(path: WheelPath, formula: Words, terms: Terms): Working {
  path.follow(turnBy(0));
  return { value: path.slope, steps: [step(formula, terms, mm(path.slope))] };
}

/** The wheel rises in proportion to the outer joint; `before` tells where κ comes from. */
export function swingWorking(
  path: SwingPath,
  arm: MeasuredArm,
  before: readonly FormulaStep[],
): PathWorking {
  const terms = {
    κ: quantity("count", path.ratio.value),
    b: mm(arm.length),
    θ0: degrees(arm.angle),
  };
  return {
    before,
    slope: () => slopeWorking(path, swingFormulas.slope, terms),
    travel(turn) {
      path.rise(turnBy(turn));
      const value = path.travel;
      const letters = { ...terms, α: degrees(turn) };
      return { value, steps: [step(swingFormulas.rise, letters, mm(value))] };
    },
    turn(travel, letter) {
      const turn = new Turn();
      const value = path.turnFor(travel, turn) ? degreesOf(turn) : Number.NaN;
      const letters = { ...terms, z: { letter, value: mm(travel) } };
      return { value, steps: [step(swingFormulas.turn, letters, degrees(value))] };
    },
  };
}

/** Where κ came from, of a swing without a linkage. */
export function ratioOrigin(linkage: Linkage): Message {
  if (linkage === "carriesWheel") return messages.armCarriesWheelItself;
  return linkage === "typed" ? messages.fromCheck : messages.usualForSuchArms;
}

/** What is measured of a wheel that a carrier holds: how far it stands from the lower joint, mm. */
export interface CarriedWheel {
  readonly out: number;
  readonly above: number;
}

/**
 * Lines of a path with a wheel carrier: `towards` tells how far the lower joint rises and how the carrier turns,
 * and the wheel's own rise follows from them. Back to a turn only by search.
 */
export function carrierWorking(
  path: WheelPath,
  before: readonly FormulaStep[],
  slope: () => Working,
  wheel: CarriedWheel,
  towards: (turn: number) => {
    readonly steps: readonly FormulaStep[];
    readonly lowerRise: number;
    /** δ, degrees. */
    readonly carrier: number;
  },
): PathWorking {
  return {
    before,
    slope,
    travel(turn) {
      path.rise(turnBy(turn));
      const value = path.travel;
      const { steps, lowerRise, carrier } = towards(turn);
      const letters = {
        "L up": mm(lowerRise),
        e: mm(wheel.out),
        v: mm(wheel.above),
        δ: degrees(carrier),
      };
      return { value, steps: [...steps, step(carrierFormula, letters, mm(value))] };
    },
    turn: () => null,
  };
}
