export { hitchLoad, upToRating } from "./axleLoad.ts";
/* The estimates' door: rates, damping and curves from what can be measured where no data sheet is at hand, each with its ±. */

export { coilSpringRate, steelShearModulus, wheelRateFromCoil } from "./coilSpring.ts";
export { dampingFromShare, usualReboundPerBump } from "./dampingFromShare.ts";
export type { Estimate, Toleranced } from "./estimate.ts";
export { type RubberBlockEstimate, rubberBlockCurve } from "./rubberBlock.ts";
export { wheelRateFromSag } from "./wheelRateFromSag.ts";
