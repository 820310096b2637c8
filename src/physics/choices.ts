/* Words of which one is said, each list once; the types follow from it. */

/** Who says so: read on the vehicle, taken from a parts library, or estimated. */
export const readingSources = ["measured", "pack", "estimated"] as const;
export type ReadingSource = (typeof readingSources)[number];

export const uses = ["daily", "towing", "offroad"] as const;
export type Use = (typeof uses)[number];

/** ISO 8608 road classes: how rough the road is. */
export const roadClasses = ["A", "B", "C", "D", "E"] as const;
export type RoadClass = (typeof roadClasses)[number];

/** From best to worst for the verdict. */
export const states = ["ok", "care", "unsure", "no"] as const;
export type State = (typeof states)[number];

/** What is checked, in the order in which it is shown. */
export const checkIds = ["clearance", "earlyContact", "stiffness", "balance", "plausible"] as const;
export type CheckId = (typeof checkIds)[number];

/** What has to be changed on the vehicle, from least to most work. */
export const changes = ["nothing", "spacer", "stop", "both"] as const;
export type Change = (typeof changes)[number];
