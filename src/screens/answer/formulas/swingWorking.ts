import type { Corner, Fitment } from "../../../physics/fitment.ts";
import { geometryReading, meanOf, originOf } from "./measured.ts";
import {
  asinDegrees,
  degrees,
  type FormulaSymbol,
  mm,
  quantity,
  sinDegrees,
  type Working,
} from "./workedFigure.ts";

/** The arm's swing as wheel travel, shared by every layout whose wheel hangs on an arm. */
export interface Swing {
  /** κ */
  readonly wheelPerOuter: number;
  /** b, mm */
  readonly outer: number;
  /** θ0, degrees */
  readonly armAngle: number;
}

/** Which readings of a layout on an arm stand for a and φ0, and how its lines are called. */
interface ArmNames {
  readonly toStop: "pivotToStop" | "pivotToMount";
  readonly line: "stopLineAngle" | "mountLineAngle";
  /** "contact patch", "lower mount": where the stop's line meets the arm. */
  readonly meets: string;
  /** "stop", "damper": what leans. */
  readonly leans: string;
}

/** What layouts on an arm have in common, at the means; angles in degrees. */
export interface ArmValues {
  readonly a: number;
  readonly b: number;
  readonly theta: number;
  readonly phi: number;
  readonly beta: number;
  readonly kappa: number;
  readonly swing: Swing;
  /** a and b. */
  readonly lengths: readonly FormulaSymbol[];
  /** θ0, φ0, β and κ. */
  readonly angles: readonly FormulaSymbol[];
}

/** Undefined where a length that must be there is not. */
export function armValues(
  fitment: Fitment,
  corner: Corner,
  names: ArmNames,
): ArmValues | undefined {
  const toStop = geometryReading(fitment, corner, names.toStop);
  const toOuter = geometryReading(fitment, corner, "pivotToOuter");
  if (!toStop || !toOuter) return undefined;
  const armLine = geometryReading(fitment, corner, "armAngle");
  const stopLine = geometryReading(fitment, corner, names.line);
  const lean = geometryReading(fitment, corner, "stopLean");
  const a = meanOf(toStop);
  const b = meanOf(toOuter);
  const theta = armLine ? meanOf(armLine) : 0;
  const phi = stopLine ? meanOf(stopLine) : theta;
  const beta = lean ? meanOf(lean) : 0;
  const kappa = fitment.layout.wheelPerOuter ?? 1;
  return {
    a,
    b,
    theta,
    phi,
    beta,
    kappa,
    swing: { wheelPerOuter: kappa, outer: b, armAngle: theta },
    lengths: [
      {
        symbol: "a",
        meaning: `pivot to ${names.meets}`,
        value: mm(a),
        origin: originOf(toStop),
      },
      { symbol: "b", meaning: "pivot to outer joint", value: mm(b), origin: originOf(toOuter) },
    ],
    angles: [
      {
        symbol: "θ0",
        meaning: "arm below the horizontal",
        value: degrees(theta),
        origin: armLine ? originOf(armLine) : "not measured, taken as 0",
      },
      {
        symbol: "φ0",
        meaning: `line pivot to ${names.meets} below the horizontal`,
        value: degrees(phi),
        origin: stopLine ? originOf(stopLine) : "not measured, taken as the arm's",
      },
      {
        symbol: "β",
        meaning: `lean of the ${names.leans}, top toward the pivot`,
        value: degrees(beta),
        origin: lean ? originOf(lean) : "not measured, taken as 0",
      },
      {
        symbol: "κ",
        meaning: "wheel travel per travel of the outer joint",
        value: quantity("count", kappa),
        origin: "from the check",
      },
    ],
  };
}

export function swingToTravel(swing: Swing, alpha: number): Working {
  const { wheelPerOuter, outer, armAngle } = swing;
  const value = wheelPerOuter * outer * (sinDegrees(armAngle) - sinDegrees(armAngle - alpha));
  return {
    value,
    steps: [
      {
        formula: "z = κ·b·[sin θ0 − sin(θ0 − α)]",
        worked: [
          `${wheelPerOuter} · `,
          mm(outer),
          " · [sin ",
          degrees(armAngle),
          " − sin ",
          degrees(armAngle - alpha),
          "]",
        ],
        result: mm(value),
      },
    ],
  };
}

export function travelToSwing(swing: Swing, travel: number, letter: string): Working {
  const { wheelPerOuter, outer, armAngle } = swing;
  const value = armAngle - asinDegrees(sinDegrees(armAngle) - travel / (wheelPerOuter * outer));
  return {
    value,
    steps: [
      {
        formula: `α = θ0 − asin[sin θ0 − ${letter}/(κ·b)]`,
        worked: [
          degrees(armAngle),
          " − asin[sin ",
          degrees(armAngle),
          " − ",
          mm(travel),
          ` / (${wheelPerOuter} · `,
          mm(outer),
          ")]",
        ],
        result: degrees(value),
      },
    ],
  };
}
