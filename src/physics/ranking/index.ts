/* The ranking's door: the stops of a pack in order. */

export { little } from "./rankedStop.ts";
export { type RankedStop, type RankProgress, rankStops } from "./rankStops.ts";
