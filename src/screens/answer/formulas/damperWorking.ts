import type { Corner, Fitment } from "../../../physics/fitment.ts";
import { geometryReading, meanOf, originOf } from "./measured.ts";
import { armValues, swingToTravel, travelToSwing } from "./swingWorking.ts";
import type { LayoutWorking } from "./workedFigure.ts";
import {
  acosDegrees,
  cosDegrees,
  degrees,
  type FormulaStep,
  mm,
  quantity,
  sinDegrees,
} from "./workedFigure.ts";

/**
 * The lower mount turns about the pivot and the upper mount stands still, so the damper is the third
 * side of a triangle: its length gives the arm's turn by the cosine rule, and the turn its length.
 */
export function damperWorking(fitment: Fitment, corner: Corner): LayoutWorking | undefined {
  const values = armValues(fitment, corner, {
    toStop: "pivotToMount",
    line: "mountLineAngle",
    meets: "lower mount",
    leans: "damper",
  });
  const eyeToEye = geometryReading(fitment, corner, "damperLength");
  if (!values || !eyeToEye) return undefined;
  const { a, b, theta, phi, beta, kappa, swing, lengths, angles } = values;
  const length = meanOf(eyeToEye);

  const x = a * cosDegrees(phi) - length * sinDegrees(beta);
  const y = -a * sinDegrees(phi) + length * cosDegrees(beta);
  const q = Math.hypot(x, y);
  const gamma = acosDegrees((q * q + a * a - length * length) / (2 * a * q));

  const triangle: FormulaStep[] = [
    {
      formula: "q = √[(a·cos φ0 − L0·sin β)² + (L0·cos β − a·sin φ0)²]",
      worked: ["√[(", mm(x), ")² + (", mm(y), ")²]"],
      result: mm(q),
    },
    {
      formula: "γ0 = acos[(q² + a² − L0²)/(2·a·q)]",
      worked: [
        "acos[((",
        mm(q),
        ")² + (",
        mm(a),
        ")² − (",
        mm(length),
        ")²) / (2 · ",
        mm(a),
        " · ",
        mm(q),
        ")]",
      ],
      result: degrees(gamma),
    },
  ];

  return {
    source: "Triangle of pivot, lower mount and upper mount, cosine rule; R = dz/ds.",
    symbols: [
      ...lengths,
      {
        symbol: "L0",
        meaning: "damper eye to eye at ride",
        value: mm(length),
        origin: originOf(eyeToEye),
      },
      ...angles,
      {
        symbol: "q",
        meaning: "pivot to upper mount",
        value: mm(q),
        origin: "computed below",
      },
    ],
    ratio() {
      const value = (kappa * b * cosDegrees(theta) * length) / (a * q * sinDegrees(gamma));
      return {
        value,
        steps: [
          ...triangle,
          {
            formula: "R = κ·b·cos θ0·L0 / (a·q·sin γ0)",
            worked: [
              `${kappa} · `,
              mm(b),
              " · cos ",
              degrees(theta),
              " · ",
              mm(length),
              " / (",
              mm(a),
              " · ",
              mm(q),
              " · sin ",
              degrees(gamma),
              ")",
            ],
            result: quantity("ratio", value),
          },
        ],
      };
    },
    wheelTravel(closing, letter) {
      const left = length - closing;
      const angle = acosDegrees((q * q + a * a - left * left) / (2 * a * q));
      const alpha = gamma - angle;
      const travel = swingToTravel(swing, alpha);
      return {
        value: travel.value,
        steps: [
          ...triangle,
          {
            formula: `α = γ0 − acos{[q² + a² − (L0 − ${letter})²]/(2·a·q)}`,
            worked: [
              degrees(gamma),
              " − acos{[(",
              mm(q),
              ")² + (",
              mm(a),
              ")² − (",
              mm(left),
              ")²] / (2 · ",
              mm(a),
              " · ",
              mm(q),
              ")}",
            ],
            result: degrees(alpha),
          },
          ...travel.steps,
        ],
      };
    },
    closing(wheelTravel, letter) {
      const turned = travelToSwing(swing, wheelTravel, letter);
      const angle = gamma - turned.value;
      const value = length - Math.sqrt(q * q + a * a - 2 * a * q * cosDegrees(angle));
      return {
        value,
        steps: [
          ...turned.steps,
          ...triangle,
          {
            formula: "s = L0 − √[q² + a² − 2·a·q·cos(γ0 − α)]",
            worked: [
              mm(length),
              " − √[(",
              mm(q),
              ")² + (",
              mm(a),
              ")² − 2 · ",
              mm(a),
              " · ",
              mm(q),
              " · cos ",
              degrees(angle),
              "]",
            ],
            result: mm(value),
          },
        ],
      };
    },
  };
}
