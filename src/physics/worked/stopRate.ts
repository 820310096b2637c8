import * as messages from "../../words/compiled/physics/worked.ts";
import {
  classFormulas,
  classStep,
  earlyShare,
  placeInSeries,
  progressiveFormulas,
  secantFormulas,
  secantRate as secantRateOf,
  secantsOf,
} from "../stop/stiffnessClass.ts";
import { stopCurve } from "../stop/stopCurve.ts";
import type { CornerContext } from "./cornerContext.ts";
import { step } from "./step.ts";
import { mm, quantity, type WorkedFigure } from "./workedFigure.ts";

const curveSource = messages.forceReadFromStops;

export function secantRate(context: CornerContext): WorkedFigure | undefined {
  const curve = stopCurve(context.fitment.stop);
  if (!curve.ok) return undefined;
  const half = mm(context.usable / 2);
  const force = quantity("force", curve.value.force(half.value));
  return {
    symbols: [
      context.usableSymbol,
      {
        symbol: "F",
        meaning: messages.forceOfStopAt,
        value: force,
        origin: messages.stopsStaticCurve,
      },
    ],
    steps: [
      step(secantFormulas.half, { δu: mm(context.usable) }, half),
      step(
        secantFormulas.rate,
        { "F(δu/2)": force, "(δu/2)": half },
        quantity("rate", secantRateOf(curve.value)),
      ),
    ],
    source: curveSource,
    assumed: [messages.pressedSlowlyStaticTest],
  };
}

export function rateClass(context: CornerContext): WorkedFigure | undefined {
  const secant = secantRate(context);
  const rate = secant?.steps.at(-1)?.result.value;
  if (!secant || rate === undefined || !(rate > 0)) return undefined;
  const exact = quantity("count", placeInSeries(rate));
  const n = quantity("count", classStep(rate));
  return {
    symbols: [
      {
        symbol: "k",
        meaning: messages.secantRateAtHalf,
        value: quantity("rate", rate),
        origin: messages.computedAbove,
      },
    ],
    steps: [
      step(classFormulas.exact, { k: quantity("count", rate) }, exact),
      step(classFormulas.step, { exact }, n),
      step(
        classFormulas.class,
        { n },
        quantity("stiffnessClass", context.assessed.stopRateClass),
        messages.forNMm({ n: (10 ** (n.value / 5)).toFixed(1) }),
      ),
    ],
    source: messages.iso3SeriesR,
    assumed: [],
  };
}

export function progressiveness(context: CornerContext): WorkedFigure | undefined {
  const curve = stopCurve(context.fitment.stop);
  if (!curve.ok) return undefined;
  const early = earlyShare * context.usable;
  const { early: earlyRate, whole: wholeRate } = secantsOf(curve.value);
  const k1 = quantity("rate", earlyRate);
  const k2 = quantity("rate", wholeRate);
  return {
    symbols: [context.usableSymbol],
    steps: [
      step(
        progressiveFormulas.early,
        {
          "F(0.2·δu)": quantity("force", curve.value.force(early)),
          "(0.2·δu)": mm(early),
        },
        k1,
      ),
      step(
        progressiveFormulas.whole,
        { "F(δu)": quantity("force", curve.value.force(context.usable)), δu: mm(context.usable) },
        k2,
      ),
      step(progressiveFormulas.ratio, { k1, k2 }, quantity("count", wholeRate / earlyRate)),
    ],
    source: messages.ruleOfTwoCommon({ curveSource }),
    assumed: [],
  };
}
