import { geometryNames } from "../../physics/readings/index.ts";
import { isPlainObject, type PlainObject } from "../text/plainObject.ts";
import { readFullTravel } from "./readFullTravel.ts";
import { checkVersion } from "./recordFormat.ts";
import { fits } from "./schema/fits.ts";
import { fullTravelSchema } from "./schema/fullTravelSchema.ts";

/** The geometry that version 1 had. */
const geometryOfVersion1: readonly string[] = [
  "pivotToStop",
  "pivotToOuter",
  "pivotToMount",
  "damperLength",
  "track",
  "stopSpacing",
  "armAngle",
  "stopLineAngle",
  "mountLineAngle",
  "stopLean",
];
const newGeometry = geometryNames.filter((name) => !geometryOfVersion1.includes(name));

/** A group of fields without some of them; anything else as it is. */
function without(value: unknown, names: readonly string[]): unknown {
  if (!isPlainObject(value)) return value;
  return Object.fromEntries(Object.entries(value).filter(([name]) => !names.includes(name)));
}

function changed(group: PlainObject, name: string, change: (value: unknown) => unknown) {
  return Object.hasOwn(group, name) ? { ...group, [name]: change(group[name]) } : group;
}

function layoutOf(value: unknown): unknown {
  const layout = without(value, ["armRole", "stopOn", "wheelPerOuterTol"]);
  return isPlainObject(layout)
    ? changed(layout, "readings", (readings) => without(readings, newGeometry))
    : layout;
}

function cornerOf(value: unknown): unknown {
  const corner = without(value, ["pressedHeight", "seatToPad", "settleMm"]);
  if (!isPlainObject(corner)) return corner;
  const own = changed(corner, "geometry", (geometry) => without(geometry, newGeometry));
  return changed(own, "limits", (limits) =>
    Array.isArray(limits) ? limits.map((limit: unknown) => without(limit, ["distance"])) : limits,
  );
}

function stopOf(value: unknown): unknown {
  return without(value, [
    "usableTolMm",
    "restLoss",
    "staticShare",
    "branches",
    "testDoubt",
    "partNumber",
    "revision",
    "batch",
  ]);
}

function referenceOf(value: unknown): unknown {
  const taken = without(value, ["edition", "stop"]);
  return isPlainObject(taken)
    ? changed(taken, "platform", (platform) =>
        isPlainObject(platform) ? changed(platform, "layout", layoutOf) : platform,
      )
    : taken;
}

const changes: { readonly [field: string]: (value: unknown) => unknown } = {
  layout: layoutOf,
  corners: (corners) => (Array.isArray(corners) ? corners.map(cornerOf) : corners),
  stop: stopOf,
  rules: (rules) => without(rules, ["roadKurtosis"]),
  reference: referenceOf,
};

function fullTravelOf(value: unknown): unknown {
  const found = readFullTravel({ fullTravel: value });
  if (found === null) return null;
  const corners = found.corners.map(({ contacts: { block: _, ...contacts }, ...side }) => ({
    ...side,
    contacts,
  }));
  const known = { ...found, corners };
  return fits(fullTravelSchema, known) ? known : null;
}

/**
 * A record of version 1 as one of version 2. What version 1 did not have is absent, even where a field of
 * that name stands in it, since version 1 gave it no meaning; of its check of the whole travel, which was
 * never refused, only what can be read stays.
 */
export function fromVersion1(record: PlainObject): PlainObject {
  let current: PlainObject = { ...record, version: checkVersion };
  for (const [name, change] of Object.entries(changes)) {
    if (Object.hasOwn(current, name)) current = { ...current, [name]: change(current[name]) };
  }
  const {
    job: _job,
    advised: _advised,
    fitted: _fitted,
    second: _second,
    fullTravel: _found,
    ...rest
  } = current;
  const found = fullTravelOf(record.fullTravel);
  return found === null ? rest : { ...rest, fullTravel: found };
}
