/*
 * The door to the calculation for anyone who uses it as a library; within Stopfit each room has a door of
 * its own, so that nothing is read that is not used.
 *
 * Pure functions: no DOM, no storage, no package. Lengths in mm, forces in N, masses in kg, rates in N/mm,
 * damping in N·s/mm, angles of readings in degrees, times in s; wheel travel counts from the measured
 * ride height, up positive. MODEL.md tells the formulas and where they come from.
 *
 * A `Fitment` is one axle with its readings, stop, rules and ride data; its `Assessment` is all that is said of
 * it. `assessStatic` gives the answer without events, `completeAssessment` adds them, `assessFitment` does
 * both at once. Nothing throws for what a person typed: an `Outcome` holds a value, or a fault with a sentence.
 */

export * from "./assess.ts";
export * from "./budget/index.ts";
export * from "./choices.ts";
export * from "./estimates/index.ts";
export * from "./fitment.ts";
export * from "./fullTravel/index.ts";
export * from "./impact/index.ts";
export * from "./kinematics/index.ts";
export * from "./outcome.ts";
export * from "./prescription/index.ts";
export * from "./ranking/index.ts";
export * from "./readingNames.ts";
export * from "./readings/index.ts";
export * from "./remeasure/index.ts";
export * from "./road/index.ts";
export * from "./sentence.ts";
export * from "./standardGravity.ts";
export * from "./stiffness/index.ts";
export * from "./stop/index.ts";
export * from "./stopTests/index.ts";
export * from "./uncertainty/index.ts";
export * from "./verdict/index.ts";
export * as worked from "./worked/index.ts";
