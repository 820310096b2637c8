/* The impact's door: a quarter car with the stop through one design event. */

export { type ImpactRun, simulateImpact } from "./impact.ts";
export { impactSetupOf, settled } from "./impactSetup.ts";
export type { ImpactTrace } from "./impactTrace.ts";
