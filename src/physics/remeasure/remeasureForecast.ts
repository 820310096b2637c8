import type { Margin } from "./margin.ts";
import type { OpenQuestion } from "./openQuestions.ts";
import type { OtherWay } from "./otherWays.ts";
import type { RemeasureWay } from "./readAgain.ts";

/** What else would narrow the doubt than readings taken again, and how far. */
export interface OtherForecast {
  readonly way: OtherWay;
  readonly about: Margin["about"];
  readonly side: OpenQuestion["side"];
  readonly halfWidthNowMm: number;
  readonly halfWidthThenMm: number;
}

/** What taking one reading again is expected to do to the doubt it matters most for. */
export interface RemeasureForecast {
  readonly way: RemeasureWay;
  readonly about: Margin["about"];
  readonly side: OpenQuestion["side"];
  /** Half the 95 % interval of the reserve, or of the free travel against what is needed, mm. */
  readonly halfWidthNowMm: number;
  readonly halfWidthThenMm: number;
  /** Share of the interval's width that goes, 0 … 1. */
  readonly removed: number;
  /** Chance that this question is then decided, and that the verdict is then settled, 0 … 1. */
  readonly settlesQuestion: number;
  readonly settlesVerdict: number;
}
