/* The stop tests' door: rows of a bench put right, and what is taken from them. */

export { analyseRows } from "./analyseRows.ts";
export { analyseTimed } from "./analyseTimed.ts";
export {
  type BenchTest,
  type CycleSummary,
  type CyclesAnalysis,
  type Remark,
  type RowsAnalysis,
  type StaticCurve,
  staticSpeedMmPerS,
  type TestAnalysis,
  type TimedAnalysis,
} from "./benchTest.ts";
export { type FoundStop, foundStop } from "./foundStop.ts";
export type { FreeMassHit } from "./freeMassHit.ts";
export { movedByTold } from "./movedByTold.ts";
export { predictedHit } from "./predictedHit.ts";
export { curveThrough } from "./staticCurve.ts";
export type { Doubted, StopLoss } from "./stopLoss.ts";
export { testDoubt } from "./testDoubt.ts";
