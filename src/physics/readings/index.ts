/* The readings' door: what can be read on a vehicle, each defined once. */

export { cornerReadingNames, settle, standingNames } from "./cornerReadings.ts";
export { definitionOf, type ValueName } from "./definitionOf.ts";
export { type ContactPart, contactParts } from "./fullTravelReadings.ts";
export {
  type GeometryReadingName,
  type GeometryReadingOf,
  geometryNames,
  geometryRegistry,
  isGeometryReadingName,
  layoutReadingsInOrder,
  layoutRegistry,
  neededReadings,
} from "./geometryRegistry.ts";
export { layoutKinds } from "./layoutDefinitions.ts";
export { type LimitKind, type LimitPlace, limitKinds, limitPlaces } from "./limitReadings.ts";
export { linkageReadings } from "./linkageReadings.ts";
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
export { ruleValueNames } from "./ruleValues.ts";
export { optionalStopNumbers, type StopReadingName, stopNumberNames } from "./stopReadings.ts";
export { strutReadings } from "./strutReadings.ts";
export { isBelievable, type ValueDefinition, type ValueKind } from "./valueDefinition.ts";
