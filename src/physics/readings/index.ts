/* The readings' door: what can be read on a vehicle, each defined once. */

export {
  closerReadings,
  type GeometryReadingName,
  type GeometryReadingOf,
  geometryNames,
  geometryRegistry,
  isGeometryReadingName,
  type LayoutFact,
  layoutReadingsInOrder,
  layoutRegistry,
  neededReadings,
  type OwnReadingOf,
} from "../layouts/geometryRegistry.ts";
export { layoutKinds } from "../layouts/layoutKinds.ts";
export { armRoles, type StopCarrier, stopCarriers } from "../layouts/layoutSaid.ts";
export { cornerReadingNames, settle, standingNames } from "./cornerReadings.ts";
export { definitionOf, type ValueName } from "./definitionOf.ts";
export { type ContactPart, contactParts } from "./fullTravelReadings.ts";
export { type LimitKind, type LimitPlace, limitKinds, limitPlaces } from "./limitReadings.ts";
export {
  isReadingId,
  limitOf,
  parseReadingId,
  placeOf,
  type ReadingId,
  type ReadingPlace,
  sideOf,
  withoutSide,
} from "./readingId.ts";
export { rideQuantities, rideReadings } from "./rideReadings.ts";
export { type RuleValueName, ruleValueNames } from "./ruleValues.ts";
export { optionalStopNumbers, type StopReadingName, stopNumberNames } from "./stopReadings.ts";
export { isBelievable, type ValueDefinition, type ValueKind } from "./valueDefinition.ts";
