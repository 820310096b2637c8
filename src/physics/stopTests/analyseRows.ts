import type { Outcome } from "../outcome.ts";
import type { DepthSpeedForce, RowsAnalysis, RowsOptions } from "./benchTest.ts";

/**
 * What depth–speed–force rows say of a stop: signs, zeros and swapped columns put right and told in
 * `remarks`; the static curve from the static rows; the damping table from the rows at speed.
 *
 * Errors of the whole: "tooFewRows", "columnsNotUsable", "depthNotTold". What only curve or damping
 * lacks is the fault of that part.
 */
export declare function analyseRows(
  rows: DepthSpeedForce,
  options?: RowsOptions,
): Outcome<RowsAnalysis>;
