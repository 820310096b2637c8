/* The road's door: what a use demands, and how often the travel is reached. */

export { roadClasses } from "../choices.ts";
export { restingStop } from "./heldAtRide.ts";
export { progressiveContactFactor, type RoadCorner, roadTravel } from "./roadTravel.ts";
export { defaultRules, rulesOf } from "./useRules.ts";
