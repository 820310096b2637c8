/* The prescription's door: the combination of stop and spacer to fit, tested. */

export {
  type Candidate,
  fittedId,
  leastStopHeightMm,
  scaledBuilds,
  spacersByInch,
  spacersByMm,
} from "./candidates.ts";
export { fitmentWithStop } from "./fitmentWithStop.ts";
export { type PrescribeProgress, type Prescription, prescribeSteps } from "./prescribe.ts";
export { sitsOnStopSentence, stopWords, travelKeptSentence } from "./prescriptionSentences.ts";
export type { SearchOptions, SearchProgress } from "./searchSteps.ts";
export { travelMadeWith } from "./travelMadeWith.ts";
