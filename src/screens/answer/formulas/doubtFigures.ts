import type { DoubtShare } from "../../../physics/fitment.ts";
import {
  conformityFormulas,
  drawnReading,
  intervalFormulas,
  standardUncertainty,
  uncertaintyFormulas,
} from "../../../physics/uncertainty/index.ts";
import {
  type CornerContext,
  type FormulaStep,
  type FormulaSymbol,
  mm,
  quantity,
  step,
  told,
  type WorkedFigure,
} from "../../../physics/worked/index.ts";
import { sentenceOf } from "../../../saying/texts.ts";
import { inLetters, inNumbers } from "../../../saying/workedStep.ts";
import * as messages from "../../../words/compiled/screens/answer/formulas.ts";
import { readingById, readingKind, readingWords } from "./readingById.ts";

const source = messages.monteCarloThroughFormulas;

function symbols(context: CornerContext, shares: readonly DoubtShare[]): FormulaSymbol[] {
  return shares.flatMap(({ reading: id, share }) => {
    const reading = readingById(context.fitment, id);
    const kind = readingKind(id);
    if (!reading || !kind) return [];
    const uncertainty = standardUncertainty(drawnReading(id, reading));
    return [
      {
        symbol: "u",
        meaning: readingWords(context.fitment, id),
        value: quantity(kind, uncertainty),
        origin: sentenceOf(messages.over3HasValuesSelect, {
          quantity: quantity(kind, reading.tol),
          hasValues: reading.values.length > 1,
          values: reading.values.length,
          share: share < 0.01 ? messages.lessThan1 : (100 * share).toFixed(0),
        }),
      },
    ];
  });
}

/** How the doubt of the reading that matters most comes from its ± and its repeats. */
function firstUncertainty(context: CornerContext, shares: readonly DoubtShare[]): FormulaStep[] {
  const id = shares[0]?.reading;
  if (id === undefined) return [];
  const reading = readingById(context.fitment, id);
  const kind = readingKind(id);
  if (!reading || !kind) return [];
  const drawn = drawnReading(id, reading);
  const { length: n } = reading.values;
  const line = step(
    n > 1 ? uncertaintyFormulas.repeated : uncertaintyFormulas.once,
    {
      tol: quantity(kind, drawn.halfWidth),
      s: quantity(kind, drawn.standardError * Math.sqrt(n)),
      n: quantity("count", n),
    },
    quantity(kind, standardUncertainty(drawn)),
  );
  const first = readingWords(context.fitment, id);
  const formula = messages.eachReadingFirst({ formula: inLetters(line), first });
  return [told(formula, inNumbers(line), line.result)];
}

function percentiles([low, high]: readonly [number, number], words: string): FormulaStep[] {
  const found = [messages.ofOverAllDraws({ words })];
  return [
    told(intervalFormulas.lower, found, mm(low)),
    told(intervalFormulas.upper, found, mm(high)),
    step(intervalFormulas.half, { lower: mm(low), upper: mm(high) }, mm((high - low) / 2)),
  ];
}

export function contactInterval(context: CornerContext): WorkedFigure {
  return {
    symbols: symbols(context, context.assessed.doubt.contact),
    steps: [
      ...firstUncertainty(context, context.assessed.doubt.contact),
      ...percentiles(context.assessed.intervals.wheelTravelToContactMm, messages.travelToContact),
    ],
    source,
    assumed: [messages.readingsErrIndependentlyOf],
  };
}

export function reserveInterval(context: CornerContext): WorkedFigure | undefined {
  const interval = context.assessed.intervals.reserveMm;
  return interval
    ? {
        symbols: symbols(context, context.assessed.doubt.reserve),
        steps: [
          ...firstUncertainty(context, context.assessed.doubt.reserve),
          ...percentiles(interval, messages.reserve),
        ],
        source,
        assumed: [messages.readingsErrIndependentlyOf],
      }
    : undefined;
}

export function clearanceProbability(context: CornerContext): WorkedFigure | undefined {
  const probability = context.assessed.clearanceProbability;
  if (probability === null) return undefined;
  return {
    symbols: symbols(context, context.assessed.doubt.reserve),
    steps: [
      ...firstUncertainty(context, context.assessed.doubt.reserve),
      told(
        conformityFormulas.reserve,
        sentenceOf(messages.shareOfDrawsWith, { mm: mm(context.rules.reserveMm) }),
        quantity("share", probability),
      ),
    ],
    source: messages.decidedAsInJcgm({ source }),
    assumed: [messages.readingsErrIndependentlyOf],
  };
}

export function earlyContactProbability(context: CornerContext): WorkedFigure | undefined {
  const probability = context.assessed.earlyContactProbability;
  const needed = context.assessed.freeTravelNeededMm;
  if (probability === null || needed === null) return undefined;
  return {
    symbols: symbols(context, context.assessed.doubt.contact),
    steps: [
      ...firstUncertainty(context, context.assessed.doubt.contact),
      told(
        conformityFormulas.contact,
        sentenceOf(messages.shareOfDrawsWithTravel, { mm: mm(needed) }),
        quantity("share", probability),
      ),
    ],
    source: messages.decidedAsInJcgm({ source }),
    assumed: [messages.travelNeededIsTaken, messages.linearGaussianOneCorner],
  };
}
