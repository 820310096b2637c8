import type { FormulaSymbol, LayoutWorking } from "../workedFigure.ts";
import { cosDegrees, degrees, type FormulaStep, mm, quantity } from "../workedFigure.ts";
import type { MeasuredTerms } from "./measuredTerms.ts";

const lean = (terms: MeasuredTerms) =>
  terms.angle("stopLean", "β", "lean of the stop from the vertical");

/** A strut by its lean alone, or a beam axle with both wheels up: the stop closes along its axis. */
export function straightWorking(terms: MeasuredTerms, source: string): LayoutWorking {
  const beta = lean(terms);
  return alongAxis(terms, source, cosDegrees(beta), {
    ratio: { formula: "R = 1 / cos β", worked: ["1 / cos ", degrees(beta)] },
    travel: (s, letter) => ({
      formula: `z = ${letter} / cos β`,
      worked: [mm(s), " / cos ", degrees(beta)],
    }),
    closing: (z, letter) => ({
      formula: `s = ${letter}·cos β`,
      worked: [mm(z), " · cos ", degrees(beta)],
    }),
  });
}

/** A beam axle with one wheel up, the other on the ground: it turns about the far tire. */
export function oneWheelWorking(terms: MeasuredTerms): LayoutWorking {
  const beta = lean(terms);
  const track = terms.length("track", "T", "track");
  const spacing = terms.length("stopSpacing", "S", "spacing of the two stops");
  const sum = ["(", mm(track), " + ", mm(spacing), ")"] as const;
  return alongAxis(
    terms,
    "The axle turns about the other tire, which stays on the ground.",
    (cosDegrees(beta) * (track + spacing)) / (2 * track),
    {
      ratio: {
        formula: "R = 2·T / [(T + S)·cos β]",
        worked: ["2 · ", mm(track), " / [", ...sum, " · cos ", degrees(beta), "]"],
      },
      travel: (s, letter) => ({
        formula: `z = 2·T·${letter} / [(T + S)·cos β]`,
        worked: ["2 · ", mm(track), " · ", mm(s), " / [", ...sum, " · cos ", degrees(beta), "]"],
      }),
      closing: (z, letter) => ({
        formula: `s = ${letter}·cos β·(T + S)/(2·T)`,
        worked: [mm(z), " · cos ", degrees(beta), " · ", ...sum, " / (2 · ", mm(track), ")"],
      }),
    },
  );
}

type Line = Omit<FormulaStep, "result">;

function alongAxis(
  { symbols }: { readonly symbols: readonly FormulaSymbol[] },
  source: string,
  closingPerTravel: number,
  lines: {
    readonly ratio: Line;
    readonly travel: (closing: number, letter: string) => Line;
    readonly closing: (travel: number, letter: string) => Line;
  },
): LayoutWorking {
  return {
    source,
    symbols,
    ratio: () => {
      const value = 1 / closingPerTravel;
      return { value, steps: [{ ...lines.ratio, result: quantity("ratio", value) }] };
    },
    wheelTravel: (closing, letter) => {
      const value = closing / closingPerTravel;
      return { value, steps: [{ ...lines.travel(closing, letter), result: mm(value) }] };
    },
    closing: (travel, letter) => {
      const value = travel * closingPerTravel;
      return { value, steps: [{ ...lines.closing(travel, letter), result: mm(value) }] };
    },
  };
}
