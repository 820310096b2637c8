import { asinDegrees, degrees, mm, sinDegrees, type Working } from "./workedFigure.ts";

/** The arm's swing as wheel travel, shared by every layout whose wheel hangs on an arm. */
export interface Swing {
  /** κ */
  readonly wheelPerOuter: number;
  /** b, mm */
  readonly outer: number;
  /** θ0, degrees */
  readonly armAngle: number;
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
