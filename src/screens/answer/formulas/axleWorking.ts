import type { Corner, Fitment } from "../../../physics/fitment.ts";
import { geometryReading, meanOf, originOf } from "./measured.ts";
import { strutWorking } from "./strutWorking.ts";
import type { LayoutWorking } from "./workedFigure.ts";
import { cosDegrees, degrees, mm, quantity } from "./workedFigure.ts";

/** Both wheels up together: the axle rises level, as a strut's wheel does. */
export function axleWorking(fitment: Fitment, corner: Corner): LayoutWorking {
  return {
    ...strutWorking(fitment, corner),
    source: "The axle rises level, both wheels together; the stop closes along its axis.",
  };
}

/** One wheel up, the other on the ground: the axle turns about the far tyre. */
export function oneWheelWorking(fitment: Fitment, corner: Corner): LayoutWorking | undefined {
  const trackReading = geometryReading(fitment, corner, "track");
  const spacingReading = geometryReading(fitment, corner, "stopSpacing");
  if (fitment.layout.kind !== "axle" || !trackReading || !spacingReading) return undefined;
  const lean = geometryReading(fitment, corner, "stopLean");
  const beta = lean ? meanOf(lean) : 0;
  const track = meanOf(trackReading);
  const spacing = meanOf(spacingReading);
  const closingPerTravel = (cosDegrees(beta) * (track + spacing)) / (2 * track);
  return {
    source: "The axle turns about the other tyre, which stays on the ground.",
    symbols: [
      {
        symbol: "β",
        meaning: "lean of the stop from the vertical",
        value: degrees(beta),
        origin: lean ? originOf(lean) : "not measured, taken as 0",
      },
      { symbol: "T", meaning: "track", value: mm(track), origin: originOf(trackReading) },
      {
        symbol: "S",
        meaning: "spacing of the two stops",
        value: mm(spacing),
        origin: originOf(spacingReading),
      },
    ],
    ratio() {
      return {
        value: 1 / closingPerTravel,
        steps: [
          {
            formula: "R = 2·T / [(T + S)·cos β]",
            worked: [
              "2 · ",
              mm(track),
              " / [(",
              mm(track),
              " + ",
              mm(spacing),
              ") · cos ",
              degrees(beta),
              "]",
            ],
            result: quantity("ratio", 1 / closingPerTravel),
          },
        ],
      };
    },
    wheelTravel(closing, letter) {
      const value = closing / closingPerTravel;
      return {
        value,
        steps: [
          {
            formula: `z = 2·T·${letter} / [(T + S)·cos β]`,
            worked: [
              "2 · ",
              mm(track),
              " · ",
              mm(closing),
              " / [(",
              mm(track),
              " + ",
              mm(spacing),
              ") · cos ",
              degrees(beta),
              "]",
            ],
            result: mm(value),
          },
        ],
      };
    },
    closing(wheelTravel, letter) {
      const value = wheelTravel * closingPerTravel;
      return {
        value,
        steps: [
          {
            formula: `s = ${letter}·cos β·(T + S)/(2·T)`,
            worked: [
              mm(wheelTravel),
              " · cos ",
              degrees(beta),
              " · (",
              mm(track),
              " + ",
              mm(spacing),
              ") / (2 · ",
              mm(track),
              ")",
            ],
            result: mm(value),
          },
        ],
      };
    },
  };
}
