import { stiffnessClasses } from "../stop/stiffnessClass.ts";
import { stopCurve } from "../stop/stopCurve.ts";
import type { CornerContext } from "./cornerContext.ts";
import { mm, quantity, type WorkedFigure } from "./workedFigure.ts";

const curveSource =
  "Force read from the stop's static test, PCHIP through the points (Fritsch & Carlson 1980).";

export function secantRate(context: CornerContext): WorkedFigure | undefined {
  const curve = stopCurve(context.fitment.stop);
  if (!curve.ok) return undefined;
  const half = context.usable / 2;
  const force = curve.value.force(half);
  return {
    symbols: [
      context.usableSymbol,
      {
        symbol: "F",
        meaning: "force of the stop at half its usable compression",
        value: quantity("force", force),
        origin: "stop's static curve",
      },
    ],
    steps: [
      { formula: "δu / 2", worked: [mm(context.usable), " / 2"], result: mm(half) },
      {
        formula: "k = F(δu/2) / (δu/2)",
        worked: [quantity("force", force), " / ", mm(half)],
        result: quantity("rate", force / half),
      },
    ],
    source: curveSource,
    assumed: ["Pressed slowly: a static test."],
  };
}

/** The step of the first class in R5, 10^(5/5) = 10 N/mm. */
const firstStep = 5;

export function rateClass(context: CornerContext): WorkedFigure | undefined {
  const secant = secantRate(context);
  const rate = secant?.steps.at(-1)?.result.value;
  if (!secant || rate === undefined || !(rate > 0)) return undefined;
  const exact = 5 * Math.log10(rate);
  const last = firstStep + stiffnessClasses.length - 1;
  const step = Math.min(last, Math.max(firstStep, Math.round(exact)));
  return {
    symbols: [
      {
        symbol: "k",
        meaning: "secant rate at half the usable compression, N/mm",
        value: quantity("rate", rate),
        origin: "computed above",
      },
    ],
    steps: [
      {
        formula: "5·log10 k",
        worked: ["5 · log10(", quantity("count", rate), ")"],
        result: quantity("count", exact),
      },
      {
        formula: `n = the nearest whole number, ${firstStep} to ${last}`,
        worked: ["round(", quantity("count", exact), ")"],
        result: quantity("count", step),
      },
      {
        formula: "class = R5(n), the preferred number for 10^(n/5)",
        worked: [`R5(${step}), for ${(10 ** (step / 5)).toFixed(1)} N/mm`],
        result: quantity("stiffnessClass", context.assessed.stopRateClass),
      },
    ],
    source: "ISO 3, series R5, 10 to 1000 N/mm (50 to 6000 lbf/in).",
    assumed: [],
  };
}

export function progressiveness(context: CornerContext): WorkedFigure | undefined {
  const curve = stopCurve(context.fitment.stop);
  if (!curve.ok) return undefined;
  const early = 0.2 * context.usable;
  const half = 0.5 * context.usable;
  const earlyRate = curve.value.force(early) / early;
  const halfRate = curve.value.force(half) / half;
  return {
    symbols: [context.usableSymbol],
    steps: [
      {
        formula: "k1 = F(0.2·δu) / (0.2·δu)",
        worked: [quantity("force", curve.value.force(early)), " / ", mm(early)],
        result: quantity("rate", earlyRate),
      },
      {
        formula: "k2 = F(0.5·δu) / (0.5·δu)",
        worked: [quantity("force", curve.value.force(half)), " / ", mm(half)],
        result: quantity("rate", halfRate),
      },
      {
        formula: "k1 / k2, progressive if 0.5 or less",
        worked: [quantity("rate", earlyRate), " / ", quantity("rate", halfRate)],
        result: quantity("count", earlyRate / halfRate),
      },
    ],
    source: `${curveSource} The rule of one half: common practice.`,
    assumed: [],
  };
}
