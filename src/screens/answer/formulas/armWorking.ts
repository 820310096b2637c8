import type { Corner, Fitment } from "../../../physics/fitment.ts";
import type { LayoutWorking } from "./layoutWorking.ts";
import { geometryReading, meanOf, originOf } from "./measured.ts";
import { type Swing, swingToTravel, travelToSwing } from "./swingWorking.ts";
import { asinDegrees, cosDegrees, degrees, mm, quantity, sinDegrees } from "./workedFigure.ts";

export function armWorking(fitment: Fitment, corner: Corner): LayoutWorking | undefined {
  const toStop = geometryReading(fitment, corner, "pivotToStop");
  const toOuter = geometryReading(fitment, corner, "pivotToOuter");
  if (!toStop || !toOuter) return undefined;
  const armLine = geometryReading(fitment, corner, "armAngle");
  const stopLine = geometryReading(fitment, corner, "stopLineAngle");
  const lean = geometryReading(fitment, corner, "stopLean");

  const a = meanOf(toStop);
  const b = meanOf(toOuter);
  const theta = armLine ? meanOf(armLine) : 0;
  const phi = stopLine ? meanOf(stopLine) : theta;
  const beta = lean ? meanOf(lean) : 0;
  const kappa = fitment.layout.wheelPerOuter ?? 1;
  const swing: Swing = { wheelPerOuter: kappa, outer: b, armAngle: theta };
  const line = phi + beta;

  return {
    source:
      "Geometry of an arm about a fixed axis; ratio R = dz/ds (derivation in the model, section 1).",
    symbols: [
      { symbol: "a", meaning: "pivot to contact patch", value: mm(a), origin: originOf(toStop) },
      { symbol: "b", meaning: "pivot to outer joint", value: mm(b), origin: originOf(toOuter) },
      {
        symbol: "θ0",
        meaning: "arm below the horizontal",
        value: degrees(theta),
        origin: armLine ? originOf(armLine) : "not measured, taken as 0",
      },
      {
        symbol: "φ0",
        meaning: "line pivot to contact patch below the horizontal",
        value: degrees(phi),
        origin: stopLine ? originOf(stopLine) : "not measured, taken as the arm's",
      },
      {
        symbol: "β",
        meaning: "lean of the stop, top toward the pivot",
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
