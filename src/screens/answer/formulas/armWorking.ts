import type { Corner, Fitment } from "../../../physics/fitment.ts";
import { armValues, swingToTravel, travelToSwing } from "./swingWorking.ts";
import type { LayoutWorking } from "./workedFigure.ts";
import { asinDegrees, cosDegrees, degrees, mm, quantity, sinDegrees } from "./workedFigure.ts";

export function armWorking(fitment: Fitment, corner: Corner): LayoutWorking | undefined {
  const values = armValues(fitment, corner, {
    toStop: "pivotToStop",
    line: "stopLineAngle",
    meets: "contact patch",
    leans: "stop",
  });
  if (!values) return undefined;
  const { a, b, theta, phi, beta, kappa, swing, lengths, angles } = values;
  const line = phi + beta;

  return {
    source: "Geometry of an arm about a fixed axis; ratio R = dz/ds.",
    symbols: [...lengths, ...angles],
    ratio() {
      const value = (kappa * b * cosDegrees(theta)) / (a * cosDegrees(line));
      return {
        value,
        steps: [
          {
            formula: "R = κ·b·cos θ0 / [a·cos(φ0 + β)]",
            worked: [
              `${kappa} · `,
              mm(b),
              " · cos ",
              degrees(theta),
              " / [",
              mm(a),
              " · cos(",
              degrees(phi),
              " + ",
              degrees(beta),
              ")]",
            ],
            result: quantity("ratio", value),
          },
        ],
      };
    },
    wheelTravel(closing, letter) {
      const alpha = line - asinDegrees(sinDegrees(line) - closing / a);
      const travel = swingToTravel(swing, alpha);
      return {
        value: travel.value,
        steps: [
          {
            formula: `α = φ0 + β − asin[sin(φ0 + β) − ${letter}/a]`,
            worked: [
              degrees(line),
              " − asin[sin ",
              degrees(line),
              " − ",
              mm(closing),
              " / ",
              mm(a),
              "]",
            ],
            result: degrees(alpha),
          },
          ...travel.steps,
        ],
      };
    },
    closing(wheelTravel, letter) {
      const turned = travelToSwing(swing, wheelTravel, letter);
      const value = a * (sinDegrees(line) - sinDegrees(line - turned.value));
      return {
        value,
        steps: [
          ...turned.steps,
          {
            formula: "s = a·[sin(φ0 + β) − sin(φ0 + β − α)]",
            worked: [
              mm(a),
              " · [sin ",
              degrees(line),
              " − sin ",
              degrees(line - turned.value),
              "]",
            ],
            result: mm(value),
          },
        ],
      };
    },
  };
}
