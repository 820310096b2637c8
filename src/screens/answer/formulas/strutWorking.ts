import type { Corner, Fitment } from "../../../physics/fitment.ts";
import { geometryReading, meanOf, originOf } from "./measured.ts";
import type { LayoutWorking } from "./workedFigure.ts";
import { cosDegrees, degrees, mm, quantity } from "./workedFigure.ts";

export function strutWorking(fitment: Fitment, corner: Corner): LayoutWorking {
  const lean = geometryReading(fitment, corner, "stopLean");
  const beta = lean ? meanOf(lean) : 0;
  const cosine = cosDegrees(beta);
  return {
    source: "The stop closes along its own leaning axis as the wheel rises.",
    symbols: [
      {
        symbol: "β",
        meaning: "lean of the stop from the vertical",
        value: degrees(beta),
        origin: lean ? originOf(lean) : "not measured, taken as 0",
      },
    ],
    ratio() {
      return {
        value: 1 / cosine,
        steps: [
          {
            formula: "R = 1 / cos β",
            worked: ["1 / cos ", degrees(beta)],
            result: quantity("ratio", 1 / cosine),
          },
        ],
      };
    },
    wheelTravel(closing, letter) {
      return {
        value: closing / cosine,
        steps: [
          {
            formula: `z = ${letter} / cos β`,
            worked: [mm(closing), " / cos ", degrees(beta)],
            result: mm(closing / cosine),
          },
        ],
      };
    },
    closing(wheelTravel, letter) {
      return {
        value: wheelTravel * cosine,
        steps: [
          {
            formula: `s = ${letter}·cos β`,
            worked: [mm(wheelTravel), " · cos ", degrees(beta)],
            result: mm(wheelTravel * cosine),
          },
        ],
      };
    },
  };
}
