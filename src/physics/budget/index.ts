/* The travel budget's door: the gap in each of the ways that it is known, and a corner at its mean readings. */

export { cornerAtMeans } from "./cornerAtMeans.ts";
export { usualUsableShare } from "./cornerPlaces.ts";
export { gapOf } from "./gap.ts";
export type { HardLimitPlace } from "./hardLimit.ts";
