/* The stop's door: its curve and its class. */

export { isProgressive, secantRate, stiffnessClassOf } from "./stiffnessClass.ts";
export { stopCurve } from "./stopCurve.ts";
