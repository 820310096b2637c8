import type { UseRules } from "../../physics/fitment.ts";
import {
  cornerReadingNames,
  layoutKinds,
  limitKinds,
  limitPlaces,
  rideQuantities,
  stopNumberNames,
} from "../../physics/readings/index.ts";
import { eachOf, isPlainObject } from "../text/plainObject.ts";
import {
  type Fields,
  flag,
  group,
  type Keep,
  listOf,
  nullOr,
  number,
  oneOf,
  text,
  whole,
  wholeList,
} from "../text/salvage.ts";
import type {
  Advice,
  Author,
  CheckStop,
  Fitted,
  GeometryReadings,
  Job,
  PartialCheckRecord,
  PartialCorner,
  PartialLayout,
  PartialLimit,
  Photo,
  TakenFromPack,
  TypedReading,
  Vehicle,
} from "./checkRecord.ts";
import { readFullTravel } from "./readFullTravel.ts";
import { checkFormat, checkVersion } from "./recordFormat.ts";
import type { HandStop } from "./storedCheck.ts";

const values: Keep<TypedReading["values"]> = (value) => {
  const kept = wholeList(number)(value);
  return kept === undefined || kept.length === 0 ? undefined : kept;
};

const reading: Keep<TypedReading> = whole<TypedReading, "values" | "tol">(
  {
    values,
    tol: number,
    typed: wholeList(text),
    tool: text,
    reach: text,
    source: oneOf("measured", "pack", "estimated"),
    by: text,
  },
  ["values", "tol"],
);

/** Readings by name; also of a name that only a later version knows. */
const geometry: Keep<GeometryReadings> = (value) => {
  if (!isPlainObject(value)) return undefined;
  const kept = Object.entries(value).flatMap(([name, item]) => {
    const sound = reading(item);
    return sound === undefined ? [] : [[name, sound] as const];
  });
  return Object.fromEntries(kept);
};

/** A clearance of a kind that is not known is a clearance still. */
const limit = whole<PartialLimit, "kind" | "at">(
  {
    kind: (value) =>
      typeof value === "string"
        ? (limitKinds.find((kind) => kind === value) ?? "other")
        : undefined,
    at: oneOf(...limitPlaces),
    perWheel: number,
    distance: reading,
    reading,
  },
  ["kind", "at"],
);

const corner = whole<PartialCorner, "side">(
  {
    side: oneOf("left", "right"),
    ...eachOf(cornerReadingNames, reading),
    settleMm: number,
    geometry,
    limits: listOf(limit),
  },
  ["side"],
);

const corners: Keep<readonly PartialCorner[]> = (value) => {
  const seen = new Set<unknown>();
  return listOf(corner)(value)?.flatMap((each) => {
    if (seen.has(each.side)) return [];
    seen.add(each.side);
    return [{ ...each, limits: each.limits ?? [] }];
  });
};

const layout = group<PartialLayout>({
  kind: oneOf(...layoutKinds),
  armRole: oneOf("lower", "upper", "underStrut", "carriesWheel"),
  stopOn: oneOf("frame", "arm"),
  wheelPerOuter: number,
  wheelPerOuterTol: number,
  readings: geometry,
});

function rows<Row extends readonly number[]>(columns: Row["length"]): Keep<readonly Row[]> {
  const isRow = (value: unknown): value is Row => wholeList(number)(value)?.length === columns;
  return wholeList((value) => (isRow(value) ? value : undefined));
}

const damping = nullOr(rows<NonNullable<CheckStop["damping"]>[number]>(3));
const branches = wholeList(
  whole<NonNullable<CheckStop["branches"]>[number], "tauS" | "share">(
    { tauS: number, share: number },
    ["tauS", "share"],
  ),
);

type KeptDoubt = NonNullable<CheckStop["testDoubt"]>;

const testDoubt = whole<KeptDoubt, "fastestMmPerS" | "laws">(
  {
    fastestMmPerS: number,
    laws: wholeList(
      whole<KeptDoubt["laws"][number], "damping">(
        { damping, restLoss: number, staticShare: number, branches },
        ["damping"],
      ),
    ),
  },
  ["fastestMmPerS", "laws"],
);

const stopFields: Fields<CheckStop> = {
  name: text,
  duty: oneOf("impact", "carry"),
  freeHeight: reading,
  ...eachOf(stopNumberNames, number),
  curve: rows<CheckStop["curve"][number]>(2),
  damping,
  testedAtSpeed: flag,
  branches,
  testDoubt,
  partNumber: text,
  revision: text,
  batch: text,
  estimated: whole<NonNullable<CheckStop["estimated"]>, "how" | "forceShare">(
    { how: text, forceShare: number },
    ["how", "forceShare"],
  ),
};

const stop = group(stopFields);

const ride = group<NonNullable<PartialCheckRecord["ride"]>>({
  ...eachOf(rideQuantities, number),
  tolerances: group(eachOf(rideQuantities, number)),
  estimated: group(eachOf(rideQuantities, text)),
});

type Event = UseRules["events"][number];

const sizes = { heightM: number, lengthM: number, speedKmPerH: number };

const event: Keep<Event> = (value) => {
  switch (isPlainObject(value) ? value.kind : null) {
    case "landing":
      return whole<Extract<Event, { kind: "landing" }>, "kind" | "heightM">(
        { kind: oneOf("landing"), heightM: number },
        ["kind", "heightM"],
      )(value);
    case "obstacle":
      return whole<Extract<Event, { kind: "obstacle" }>, "kind" | keyof typeof sizes>(
        { kind: oneOf("obstacle"), ...sizes },
        ["kind", "heightM", "lengthM", "speedKmPerH"],
      )(value);
    case "hump":
      return whole<Extract<Event, { kind: "hump" }>, "kind" | keyof typeof sizes>(
        { kind: oneOf("hump"), ...sizes },
        ["kind", "heightM", "lengthM", "speedKmPerH"],
      )(value);
    default:
      return undefined;
  }
};

const rules = group<UseRules>({
  roadClass: oneOf("A", "B", "C", "D", "E"),
  roadKurtosis: oneOf(3, 5),
  speedKmPerH: number,
  allowedContactsPerKm: number,
  accelerationCapG: number,
  reserveMm: number,
  balanceMm: number,
  events: wholeList(event),
});

/** The copy of a pack's platform and rules: whole, or not at all. */
const reference: Keep<TakenFromPack> = (value) => {
  const isTaken = (taken: unknown): taken is TakenFromPack => {
    if (!isPlainObject(taken) || typeof taken.pack !== "string") return false;
    const { platform } = taken;
    if (taken.rules !== undefined && !isPlainObject(taken.rules)) return false;
    return (
      platform === undefined ||
      (isPlainObject(platform) &&
        typeof platform.id === "string" &&
        typeof platform.label === "string" &&
        isPlainObject(platform.layout) &&
        isPlainObject(platform.layout.readings))
    );
  };
  if (!isTaken(value)) return undefined;
  const { edition, stop: chosen, ...taken } = value;
  const house = rules(value.rules);
  return {
    ...taken,
    ...(text(edition) !== undefined && { edition }),
    ...(text(chosen) !== undefined && { stop: chosen }),
    ...(house !== undefined && { rules: house }),
  };
};

const picture = oneOf<Photo["type"]>("image/jpeg", "image/png", "image/webp");

function isPhoto(value: unknown): value is Photo {
  const isTextOrAbsent = (item: unknown): boolean => item === undefined || text(item) !== undefined;
  return (
    isPlainObject(value) &&
    picture(value.type) !== undefined &&
    text(value.data) !== undefined &&
    isTextOrAbsent(value.caption) &&
    isTextOrAbsent(value.reading) &&
    isTextOrAbsent(value.takenAt) &&
    isTextOrAbsent(value.by) &&
    isTextOrAbsent(value.sha256)
  );
}

/** The very photo: the store knows it again by that. */
const photo: Keep<Photo> = (value) => (isPhoto(value) ? value : undefined);

const job = whole<Job, "id" | "label">(
  { id: text, label: text, number: text, customer: text, moment: oneOf("before", "after") },
  ["id", "label"],
);

const advisedPart = whole<
  NonNullable<Advice["part"]>,
  "name" | "spacerMm" | "heightMm" | "stopRateClass" | "change" | "verdict"
>(
  {
    name: text,
    partNumber: text,
    revision: text,
    spacerMm: number,
    heightMm: number,
    stopRateClass: number,
    change: oneOf("nothing", "spacer", "stop", "both"),
    verdict: oneOf("ok", "care", "no", "unsure"),
  },
  ["name", "spacerMm", "heightMm", "stopRateClass", "change", "verdict"],
);

/** A part that can't be what it says would read as "no part prescribed": such advice is left out whole. */
const advice: Keep<Advice> = (value) => {
  const kept = whole<Advice, "at" | "sides">(
    {
      at: text,
      sides: wholeList(oneOf("left", "right")),
      pack: text,
      edition: text,
      part: advisedPart,
    },
    ["at", "sides"],
  )(value);
  if (kept === undefined || kept.sides.length === 0) return undefined;
  const lost = isPlainObject(value) && value.part !== undefined && kept.part === undefined;
  return lost ? undefined : kept;
};

const fitted = whole<Fitted, "partNumber" | "spacerMm" | "at" | "by">(
  {
    partNumber: text,
    revision: text,
    batch: text,
    spacerMm: number,
    at: text,
    by: text,
    odometer: number,
    photos: listOf(photo),
  },
  ["partNumber", "spacerMm", "at", "by"],
);

const second: Keep<NonNullable<PartialCheckRecord["second"]>> = (value) => {
  if (!isPlainObject(value) || !isPlainObject(value.readings)) return undefined;
  const [by, at] = [text(value.by), text(value.at)];
  const readings = Object.entries(value.readings).flatMap(([id, item]) => {
    const found = id === "__proto__" ? undefined : reading(item);
    return found === undefined ? [] : [[id, found] as const];
  });
  if (by === undefined || at === undefined || readings.length === 0) return undefined;
  return { by, at, readings: Object.fromEntries(readings) };
};

const fields: Fields<PartialCheckRecord> = {
  format: () => checkFormat,
  version: () => checkVersion,
  id: text,
  createdAt: text,
  author: group<Author>({
    role: oneOf("installer", "customer", "support"),
    name: text,
    contact: text,
  }),
  vehicle: group<Vehicle>({
    label: text,
    platformId: nullOr(text),
    liftMm: number,
    use: oneOf("daily", "towing", "offroad"),
  }),
  axle: oneOf("front", "rear"),
  layout,
  corners,
  stop,
  ride,
  rules,
  fullTravel: (value) => readFullTravel({ fullTravel: value }) ?? undefined,
  job,
  advised: listOf(advice),
  fitted,
  second,
  reference,
  photos: listOf(photo),
  notes: text,
};

/**
 * The record of a stored check of any version, in today's shape: what can't be what it says is left out,
 * everything else stays. Version 1 had nothing that version 2 reads otherwise.
 */
export function openRecord(value: unknown, id: string, createdAt: string): PartialCheckRecord {
  const kept = group<PartialCheckRecord>(fields)(value) ?? {};
  return {
    ...kept,
    format: checkFormat,
    version: checkVersion,
    id: kept.id ?? id,
    createdAt: kept.createdAt ?? createdAt,
    corners: kept.corners ?? [],
  };
}

/** What a side that is put aside holds. */
export const openCorner: Keep<PartialCorner> = (value) => {
  const kept = corner(value);
  return kept && { ...kept, limits: kept.limits ?? [] };
};

/** What of a stop typed by hand is put aside. */
export const openHandStop: Keep<HandStop> = group<HandStop>({
  name: stopFields.name,
  duty: stopFields.duty,
  testedAtSpeed: stopFields.testedAtSpeed,
  branches: stopFields.branches,
  testDoubt: stopFields.testDoubt,
  partNumber: stopFields.partNumber,
  revision: stopFields.revision,
  batch: stopFields.batch,
});
