/* Re-measuring's door: what to measure again, and what that is expected to settle. */

export type { RemeasureLevel } from "./openQuestions.ts";
export {
  planRemeasureSteps,
  type RemeasureItem,
  type RemeasurePlan,
  type ToolsAtHand,
} from "./planRemeasure.ts";
export type { BetterTool } from "./readAgain.ts";
