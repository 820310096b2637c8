/* The verdict's door: what the checks say, and of what. */

export { sureEnough, unlikelyEnough } from "./decisions.ts";
export { missingId } from "./missingRideData.ts";
export { believableRatio } from "./plausible.ts";
export { decidingChecks } from "./reason.ts";
export {
  type SheetlessFitment,
  type TravelWithoutCurve,
  travelWithoutCurve,
  withoutCurveSentences,
} from "./withoutCurve.ts";
