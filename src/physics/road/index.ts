/* The road's door: what a use demands, and how often the travel is reached. */

export { restingStop } from "./heldAtRide.ts";
export { progressiveContactFactor, type RoadCorner, roadTravel } from "./roadTravel.ts";
export { roadClasses } from "./roughness.ts";
export { defaultRules, rulesOf } from "./useRules.ts";
