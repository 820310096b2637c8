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
import { readingById, readingKind, readingWords } from "./readingById.ts";

const source =
  "Monte Carlo through the formulas of the travel budget, one draw for each reading (JCGM 101:2008). Shares of the margin of error by first order (JCGM 100:2008, 5.1.2).";

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
        origin: [
          "± ",
          quantity(kind, reading.tol),
          ` over √3${
            reading.values.length > 1 ? ` and the scatter of ${reading.values.length} repeats` : ""
          }; ${share < 0.01 ? "less than 1" : (100 * share).toFixed(0)} % of the margin of error`,
        ],
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
  return [{ ...line, formula: `${line.formula}, each reading; first: ${first}` }];
}

function percentiles([low, high]: readonly [number, number], words: string): FormulaStep[] {
  const found = [`of ${words} over all draws`];
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
      ...percentiles(context.assessed.intervals.wheelTravelToContactMm, "travel to contact"),
    ],
    source,
    assumed: ["The readings err independently of each other."],
  };
}

export function reserveInterval(context: CornerContext): WorkedFigure | undefined {
  const interval = context.assessed.intervals.reserveMm;
  return interval
    ? {
        symbols: symbols(context, context.assessed.doubt.reserve),
        steps: [
          ...firstUncertainty(context, context.assessed.doubt.reserve),
          ...percentiles(interval, "the reserve"),
        ],
        source,
        assumed: ["The readings err independently of each other."],
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
        ["share of draws with a reserve of at least ", mm(context.rules.reserveMm)],
        quantity("share", probability),
      ),
    ],
    source: `${source} Decided as in JCGM 106:2012: 95 % for yes, 5 % for no.`,
    assumed: ["The readings err independently of each other."],
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
        ["share of draws with a travel to contact of at least ", mm(needed)],
        quantity("share", probability),
      ),
    ],
    source: `${source} Decided as in JCGM 106:2012: 95 % for yes, 5 % for no.`,
    assumed: ["The travel needed is taken at the mean readings.", "Linear, Gaussian, one corner."],
  };
}
