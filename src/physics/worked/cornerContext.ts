import * as messages from "../../words/compiled/physics/worked.ts";
import { type CornerAtMeans, cornerAtMeans } from "../budget/cornerAtMeans.ts";
import { gapOf, gapReadingOf } from "../budget/gap.ts";
import type { Corner, CornerAssessment, Fitment, UseRules } from "../fitment.ts";
import { rulesOf } from "../road/useRules.ts";
import type { Message } from "../sentence.ts";
import { handLedWorking } from "./layout/handWorking.ts";
import { layoutWorking } from "./layout/layoutWorking.ts";
import { meanOf, originOf } from "./measured.ts";
import type { LayoutWorking } from "./workedFigure.ts";
import { type FormulaSymbol, mm } from "./workedFigure.ts";

/** Everything the working of one corner's figures draws on. */
export interface CornerContext {
  readonly fitment: Fitment;
  readonly corner: Corner;
  readonly assessed: CornerAssessment;
  readonly layout: LayoutWorking;
  readonly atMeans: CornerAtMeans;
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
  const modelled = corner && layoutWorking(fitment, corner);
  const found = corner && cornerAtMeans(fitment, corner);
  if (!corner || !modelled || !found?.ok) return undefined;
  const layout = handLedWorking(fitment, corner, modelled);
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
    atMeans: found.value,
    rules: rulesOf(fitment.use, fitment.rules),
    gap,
    usable,
    freeHeight,
    gapSymbol: {
      symbol: "g",
      meaning: gapMeaning(corner),
      value: mm(gap),
      origin: originOf(stands.value.reading),
    },
    usableSymbol: {
      symbol: "δu",
      meaning: messages.usableCompressionOfStop,
      value: mm(usable),
      origin: messages.stopsData,
    },
    freeHeightSymbol: {
      symbol: "H",
      meaning: messages.freeHeightOfStop,
      value: mm(freeHeight),
      origin: originOf(fitment.stop.freeHeight, messages.stopsDataOrMeasured),
    },
  };
}

/** What the gap of this stop is made of: below 0, by so much it is pressed. */
function gapMeaning(corner: Corner): Message {
  if (corner.pressedHeight !== undefined) return messages.gapHeightOfPressed;
  if (corner.seatToPad !== undefined) return messages.gapSeatToPad;
  return messages.gapAlongStopsAxis;
}
