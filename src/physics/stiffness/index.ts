/* The stiffness' door: which classes of stop work, by height. */

export { type CornerDynamics, cornerDynamicsSteps } from "./cornerDynamics.ts";
export { type CellFailure, heightClassMap, type MapCell } from "./heightClassMap.ts";
