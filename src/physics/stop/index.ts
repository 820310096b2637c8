/* The stop's door: its curve and its class, and what a hit beyond its test may be off. */

export { fasterThanTested, simulatedStops } from "./beyondTest.ts";
export { isProgressive, secantRate, stiffnessClassOf } from "./stiffnessClass.ts";
export { stopCurve } from "./stopCurve.ts";
