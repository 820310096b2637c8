import { stopCurve } from "../../../physics/stop/stopCurve.ts";
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

export function rateClass(context: CornerContext): WorkedFigure | undefined {
  const secant = secantRate(context);
  const rate = secant?.steps.at(-1)?.result.value;
  if (!secant || rate === undefined || !(rate > 0)) return undefined;
  const step = Math.min(10, Math.max(5, Math.round(5 * Math.log10(rate))));
  return {
    symbols: [
      {
        symbol: "k",
        meaning: "secant rate at half the usable compression",
        value: quantity("rate", rate),
        origin: "computed above",
      },
    ],
    steps: [
      {
        formula: "n = 5·log10 k, rounded, k in N/mm",
        worked: [`5 · log10 ${rate.toPrecision(5)} = ${(5 * Math.log10(rate)).toFixed(3)}`],
        result: quantity("count", step),
      },
      {
        formula: "class = preferred number R5 of 10^(n/5)",
        worked: [`10^(${step}/5) = ${(10 ** (step / 5)).toFixed(2)} N/mm`],
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
    source: `${curveSource} The rule of one half is the model's own, section 2.`,
    assumed: [],
  };
}
