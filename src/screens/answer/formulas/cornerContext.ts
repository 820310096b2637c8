import { gapOf, gapReadingOf } from "../../../physics/budget/gap.ts";
import type { Corner, CornerAssessment, Fitment, UseRules } from "../../../physics/fitment.ts";
import { rulesOf } from "../../../physics/road/useRules.ts";
import { layoutWorking } from "./layoutWorking.ts";
import { meanOf, originOf } from "./measured.ts";
import type { LayoutWorking } from "./workedFigure.ts";
import { type FormulaSymbol, mm } from "./workedFigure.ts";

/** Everything the working of one corner's figures draws on. */
export interface CornerContext {
  readonly fitment: Fitment;
  readonly corner: Corner;
  readonly assessed: CornerAssessment;
  readonly layout: LayoutWorking;
  readonly rules: UseRules;
  readonly gap: number;
  readonly usable: number;
  readonly freeHeight: number;
  readonly gapSymbol: FormulaSymbol;
  readonly usableSymbol: FormulaSymbol;
  readonly freeHeightSymbol: FormulaSymbol;
}

export function cornerContext(
  fitment: Fitment,
  assessed: CornerAssessment,
): CornerContext | undefined {
  const corner = fitment.corners.find(({ side }) => side === assessed.side);
  const layout = corner && layoutWorking(fitment, corner);
  if (!corner || !layout) return undefined;
  const stands = gapReadingOf(corner);
  const standing = gapOf(fitment, corner);
  if (!stands.ok || !standing.ok) return undefined;
  const gap = standing.value;
  const freeHeight = meanOf(fitment.stop.freeHeight);
  const usable = fitment.stop.usableCompressionMm;
  return {
    fitment,
    corner,
    assessed,
    layout,
    rules: rulesOf(fitment.use, fitment.rules),
    gap,
    usable,
    freeHeight,
    gapSymbol: {
      symbol: "g",
      meaning: "gap along the stop's axis",
      value: mm(gap),
      origin: originOf(stands.value.reading),
    },
    usableSymbol: {
      symbol: "δu",
      meaning: "usable compression of the stop",
      value: mm(usable),
      origin: "stop's data",
    },
    freeHeightSymbol: {
      symbol: "H",
      meaning: "free height of the stop",
      value: mm(freeHeight),
      origin: originOf(fitment.stop.freeHeight, "stop's data or measured"),
    },
  };
}
