import { type GeometryReadingName, isGeometryReadingName } from "../layouts/geometryRegistry.ts";
import {
  type CornerReadingName,
  cornerReadings,
  type SettleReadingName,
  settleReadings,
} from "./cornerReadings.ts";
import {
  type ContactPart,
  contactParts,
  type FullTravelReadingName,
  fullTravelReadings,
} from "./fullTravelReadings.ts";
import { type LimitPart, limitReadings } from "./limitReadings.ts";
import { type RideQuantity, rideReadings } from "./rideReadings.ts";
import { type RuleValueName, ruleValues } from "./ruleValues.ts";
import { type StopReadingName, stopReadings } from "./stopReadings.ts";
import {
  type LayoutValueName,
  layoutValues,
  type VehicleValueName,
  vehicleValues,
} from "./vehicleValues.ts";

export type ReadingSide = "left" | "right";
type LimitId = `${ReadingSide}.limits.${number}`;

/**
 * The name of one value that is measured or typed. Geometry shared by both sides: "pivotToStop"; a side's
 * own: "left.gap", "right.pivotToStop" (where the right side's geometry was measured apart),
 * "left.limits.0", "left.limits.0.distance"; the stop's: "stop.freeHeight"; ride data: "ride.wheelRateNPerMm";
 * a demand: "rules.reserveMm"; a check of the whole travel: "fullTravel.left.stop.wheelTravel".
 */
export type ReadingId =
  | GeometryReadingName
  | `${ReadingSide}.${GeometryReadingName}`
  | `${ReadingSide}.${CornerReadingName}`
  | `${ReadingSide}.${SettleReadingName}`
  | LimitId
  | `${LimitId}.${Exclude<LimitPart, "reading">}`
  | `stop.${StopReadingName}`
  | `ride.${RideQuantity}`
  | `rules.${RuleValueName}`
  | `vehicle.${VehicleValueName}`
  | `layout.${LayoutValueName}`
  | `fullTravel.${ReadingSide}.${ContactPart | "atRide"}.${FullTravelReadingName}`;

/** What takes part in the doubt of a figure: a reading, or what the model itself, or a stop that was recorded, may be off. */
export type QuantityId =
  | ReadingId
  | "wheelPerOuter"
  | "linkage"
  | `${ReadingSide}.linkage`
  | `${ReadingSide}.settle`
  | "recordedStop.freeHeight"
  | "stop.testDoubt"
  /* Where a linkage is looked at alone, of no side. */
  | "gap"
  | "seatToPad";

/** What a reading's id names. */
export type ReadingPlace =
  | {
      readonly of: "geometry";
      readonly side: ReadingSide | null;
      readonly name: GeometryReadingName;
    }
  | { readonly of: "corner"; readonly side: ReadingSide; readonly name: CornerReadingName }
  | { readonly of: "settle"; readonly side: ReadingSide; readonly name: SettleReadingName }
  | {
      readonly of: "limit";
      readonly side: ReadingSide;
      readonly index: number;
      readonly name: LimitPart;
    }
  | { readonly of: "stop"; readonly name: StopReadingName }
  | { readonly of: "ride"; readonly name: RideQuantity }
  | { readonly of: "rules"; readonly name: RuleValueName }
  | { readonly of: "vehicle"; readonly name: VehicleValueName }
  | { readonly of: "layout"; readonly name: LayoutValueName }
  | {
      readonly of: "fullTravel";
      readonly side: ReadingSide;
      readonly part: ContactPart | "atRide";
      readonly name: FullTravelReadingName;
    };

function isIn<Name extends string>(
  registry: { readonly [Each in Name]: unknown },
  name: string,
): name is Name {
  return Object.hasOwn(registry, name);
}

function isSide(text: string | undefined): text is ReadingSide {
  return text === "left" || text === "right";
}

function isContactPart(text: string): text is ContactPart | "atRide" {
  return text === "atRide" || (contactParts as readonly string[]).includes(text);
}

/** What an id names; null for a text that names nothing. The one place where an id is taken apart. */
export function parseReadingId(id: string): ReadingPlace | null {
  if (isGeometryReadingName(id)) return { of: "geometry", side: null, name: id };
  const [first = "", second = "", third = "", fourth = "", ...more] = id.split(".");
  if (more.length > 0) return null;
  if (first === "fullTravel") {
    return isSide(second) && isContactPart(third) && isIn(fullTravelReadings, fourth)
      ? { of: "fullTravel", side: second, part: third, name: fourth }
      : null;
  }
  if (isSide(first) && second === "limits") return limitPlace(first, third, fourth, id);
  if (id !== `${first}.${second}`) return null;
  if (isSide(first)) {
    if (isIn(cornerReadings, second)) return { of: "corner", side: first, name: second };
    if (isIn(settleReadings, second)) return { of: "settle", side: first, name: second };
    return isGeometryReadingName(second) ? { of: "geometry", side: first, name: second } : null;
  }
  switch (first) {
    case "stop":
      return isIn(stopReadings, second) ? { of: "stop", name: second } : null;
    case "ride":
      return isIn(rideReadings, second) ? { of: "ride", name: second } : null;
    case "rules":
      return isIn(ruleValues, second) ? { of: "rules", name: second } : null;
    case "vehicle":
      return isIn(vehicleValues, second) ? { of: "vehicle", name: second } : null;
    case "layout":
      return isIn(layoutValues, second) ? { of: "layout", name: second } : null;
    default:
      return null;
  }
}

function limitPlace(
  side: ReadingSide,
  index: string,
  part: string,
  id: string,
): ReadingPlace | null {
  if (!/^(?:0|[1-9]\d{0,2})$/.test(index)) return null;
  const limit = `${side}.limits.${index}`;
  if (id === limit) return { of: "limit", side, index: Number(index), name: "reading" };
  return id === `${limit}.${part}` && part !== "reading" && isIn(limitReadings, part)
    ? { of: "limit", side, index: Number(index), name: part }
    : null;
}

/** What a reading's id names. */
export function placeOf(id: ReadingId): ReadingPlace {
  return parseReadingId(id) as ReadingPlace;
}

export function isReadingId(id: string): id is ReadingId {
  return parseReadingId(id) !== null;
}

/** The side that an id begins with, also one of a group of fields: "left.limits". */
export function sideOf(id: string): ReadingSide | null {
  const first = id.split(".", 1)[0];
  return isSide(first) ? first : null;
}

/** The id without its side: "right.armAngle" is "armAngle". */
export function withoutSide(id: string): string {
  const side = sideOf(id);
  return side === null ? id : id.slice(side.length + 1);
}

/** Which side's how manieth hard limit an id belongs to, whatever follows it; null for every other id. */
export function limitOf(id: string): { readonly side: ReadingSide; readonly index: number } | null {
  const place = parseReadingId(id.split(".", 3).join("."));
  return place?.of === "limit" ? { side: place.side, index: place.index } : null;
}
