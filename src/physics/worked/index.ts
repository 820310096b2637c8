/* The worked formulas' door: how a figure came about, step by step. */

export { type CornerContext, cornerContext } from "./cornerContext.ts";
export { type EventFigure, impactAssumptions, impactFigure } from "./impactFigures.ts";
export { oneWheelContact, oneWheelFullStop, oneWheelRatio } from "./oneWheelTravel.ts";
export { loadedTravelToContact, payloadSag } from "./payloadSag.ts";
export {
  contactsPerKm,
  freeTravelNeeded,
  mostExtraHeight,
  roadTravelSigma,
} from "./roadFigures.ts";
export { screeningAssumptions } from "./roadResponse.ts";
export {
  type FormulaStep,
  type Named,
  type Renamed,
  step,
  type Terms,
  type TermValue,
  told,
} from "./step.ts";
export { progressiveness, rateClass, secantRate } from "./stopRate.ts";
export {
  freeShare,
  leverRatio,
  leverRatioAtFullStop,
  reserve,
  spacerHeight,
  tallerHeight,
  travelToContact,
  travelToFullStop,
  travelToHardLimit,
} from "./travelBudget.ts";
export {
  type FormulaSymbol,
  lastValue,
  mm,
  quantity,
  type WorkedFigure,
} from "./workedFigure.ts";
