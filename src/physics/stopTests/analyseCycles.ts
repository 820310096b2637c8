import type { Outcome } from "../outcome.ts";
import type { CyclesAnalysis, TimeDisplacementForce } from "./benchTest.ts";

/**
 * What time–displacement–force cycles say: energy in and out, loss per cycle, loss factor, equivalent
 * viscous damping. Cycles with missing samples are left out and told in `remarks`.
 *
 * Errors: "tooFewSamples", "timeNotRising", "noCycle", "energyGained", "columnsNotUsable".
 */
export declare function analyseCycles(test: TimeDisplacementForce): Outcome<CyclesAnalysis>;
