import type { Corner, Fitment } from "../../../physics/fitment.ts";
import { armWorking } from "./armWorking.ts";
import { axleWorking } from "./axleWorking.ts";
import { damperWorking } from "./damperWorking.ts";
import { strutWorking } from "./strutWorking.ts";
import type { FormulaSymbol, Working } from "./workedFigure.ts";

/** How one layout turns stop closing into wheel travel and back, told step by step. */
export interface LayoutWorking {
  readonly symbols: readonly FormulaSymbol[];
  /** R at ride. */
  ratio(): Working;
  /** Wheel travel, mm, for a stop closing, mm. `letter` names the closing in the formulas. */
  wheelTravel(closing: number, letter: string): Working;
  /** Stop closing, mm, for a wheel travel, mm. */
  closing(wheelTravel: number, letter: string): Working;
  readonly source: string;
}

/** Undefined where a reading of the geometry is missing. */
export function layoutWorking(fitment: Fitment, corner: Corner): LayoutWorking | undefined {
  switch (fitment.layout.kind) {
    case "arm":
      return armWorking(fitment, corner);
    case "damper":
      return damperWorking(fitment, corner);
    case "strut":
      return strutWorking(fitment, corner);
    case "axle":
      return axleWorking(fitment, corner);
  }
}
