import {
  type GeometryReadingName,
  geometryRegistry,
  isGeometryReadingName,
} from "../layouts/geometryRegistry.ts";
import { cornerReadings, settle, settleReadings } from "./cornerReadings.ts";
import { fullTravelReadings } from "./fullTravelReadings.ts";
import { type LimitKind, limitNames, limitReadings } from "./limitReadings.ts";
import { parseReadingId, type ReadingPlace } from "./readingId.ts";
import { rideReadings } from "./rideReadings.ts";
import { ruleValues } from "./ruleValues.ts";
import { stopReadings } from "./stopReadings.ts";
import type { ValueDefinition, ValueDefinitions } from "./valueDefinition.ts";
import { layoutValues, vehicleValues } from "./vehicleValues.ts";

function geometryValue(name: GeometryReadingName): ValueDefinition {
  const { sort, name: words, believable, usualTolerance } = geometryRegistry[name];
  return {
    name: words,
    kind: sort === "angle" ? "angle" : "length",
    believable,
    usualTolerance,
    allowed: sort === "length" ? "aboveZero" : "any",
  };
}

/** What is known of the value that a place names. */
function definitionAt(place: ReadingPlace): ValueDefinition {
  switch (place.of) {
    case "geometry":
      return geometryValue(place.name);
    case "corner":
      return cornerReadings[place.name];
    case "settle":
      return settleReadings[place.name];
    case "limit":
      return limitReadings[place.name];
    case "stop":
      return stopReadings[place.name];
    case "ride":
      return rideReadings[place.name];
    case "rules":
      return ruleValues[place.name];
    case "vehicle":
      return vehicleValues[place.name];
    case "layout":
      return layoutValues[place.name];
    case "fullTravel":
      return fullTravelReadings[place.name];
  }
}

const byName = {
  ...cornerReadings,
  ...settleReadings,
  settleMm: settle,
  ...limitReadings,
  ...stopReadings,
  ...rideReadings,
  ...ruleValues,
  ...vehicleValues,
  ...layoutValues,
  ...fullTravelReadings,
} as const satisfies ValueDefinitions;

/** The last part of a reading's id, which names the value in whichever group it is. */
export type ValueName = GeometryReadingName | keyof typeof byName;

/** What is known of a value by the last part of its id, whichever group it is in; null where no value has that name. */
function definitionNamed(name: string): ValueDefinition | null {
  if (isGeometryReadingName(name)) return geometryValue(name);
  return Object.hasOwn(byName, name) ? byName[name as keyof typeof byName] : null;
}

/**
 * What is known of a value by its id, or by the last part alone; a hard limit's is named by its kind. Null
 * where it names nothing.
 */
export function definitionOf(id: string, limitKind?: LimitKind): ValueDefinition | null {
  const place = parseReadingId(id);
  if (place === null) return definitionNamed(id.slice(id.lastIndexOf(".") + 1));
  const value = definitionAt(place);
  return place.of === "limit" && place.name === "reading" && limitKind !== undefined
    ? { ...value, name: limitNames[limitKind] }
    : value;
}

export function isAngle(id: string): boolean {
  return definitionOf(id)?.kind === "angle";
}
