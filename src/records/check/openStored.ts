import type { State } from "../../physics/fitment.ts";
import { limitPlaces } from "../../physics/readings/limitReadings.ts";
import type { Entry } from "../entry/entry.ts";
import type { PartialCheckRecord } from "./checkRecord.ts";
import { checkFormat, checkVersion } from "./recordFormat.ts";
import type { Progress, StoredCheck } from "./storedCheck.ts";

type Plain = { readonly [key: string]: unknown };

function isPlain(value: unknown): value is Plain {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

function isText(value: unknown): value is string {
  return typeof value === "string";
}

function isNumber(value: unknown): value is number {
  return typeof value === "number" && Number.isFinite(value);
}

function isOneOf<Value extends string>(...values: readonly Value[]) {
  return (value: unknown): value is Value => (values as readonly unknown[]).includes(value);
}

function texts(value: unknown): string[] {
  return Array.isArray(value) ? value.filter(isText) : [];
}

/** `value` with only those of the fields named that are sound; fields not named stay as they are. */
function withSound(value: Plain, sound: { readonly [field: string]: (item: unknown) => boolean }) {
  return Object.fromEntries(
    Object.entries(value).filter(
      ([field, item]) => !Object.hasOwn(sound, field) || sound[field]?.(item) === true,
    ),
  );
}

function isReading(value: unknown): boolean {
  return (
    isPlain(value) &&
    Array.isArray(value.values) &&
    value.values.length > 0 &&
    value.values.every(isNumber) &&
    isNumber(value.tol) &&
    (value.typed === undefined || (Array.isArray(value.typed) && value.typed.every(isText)))
  );
}

function readings(value: unknown): Plain {
  if (!isPlain(value)) return {};
  return Object.fromEntries(Object.entries(value).filter(([, reading]) => isReading(reading)));
}

function rows(most: number): (value: unknown) => boolean {
  return (value) =>
    Array.isArray(value) &&
    value.every((row) => Array.isArray(row) && row.length <= most && row.every(isNumber));
}

const isSide = isOneOf("left", "right");
const isLayout = isOneOf("arm", "damper", "strut", "axle");

function limitOf(value: unknown): Plain[] {
  if (!isPlain(value) || !isOneOf(...limitPlaces)(value.at) || !isText(value.kind)) return [];
  return [withSound(value, { reading: isReading, distance: isReading, perWheel: isNumber })];
}

function cornersOf(value: unknown): Plain[] {
  const corners = (Array.isArray(value) ? value : []).filter(isPlain);
  const seen = new Set<unknown>();
  return corners.flatMap((corner) => {
    if (!isSide(corner.side) || seen.has(corner.side)) return [];
    seen.add(corner.side);
    const limits = (Array.isArray(corner.limits) ? corner.limits : []).flatMap(limitOf);
    const sound = withSound(corner, {
      gap: isReading,
      pressedHeight: isReading,
      seatToPad: isReading,
      settleMm: isNumber,
      rideHeight: isReading,
      cornerMassKg: isReading,
      geometry: isPlain,
    });
    const geometry = isPlain(sound.geometry) ? { geometry: readings(sound.geometry) } : {};
    return [{ ...sound, ...geometry, limits }];
  });
}

function layoutOf(value: Plain): Plain {
  const layout = withSound(value, { kind: isLayout, wheelPerOuter: isNumber });
  return { ...layout, readings: readings(layout.readings) };
}

function rideOf(value: Plain): Plain {
  return Object.fromEntries(
    Object.entries(value).filter(([name, item]) =>
      name === "tolerances" || name === "estimated" ? isPlain(item) : isNumber(item),
    ),
  );
}

/** The copy of a pack's platform and rules: whole, or not at all. */
function isReference(value: unknown): boolean {
  if (!isPlain(value) || !isText(value.pack)) return false;
  const { platform, rules } = value;
  const isPlatform =
    isPlain(platform) &&
    isText(platform.id) &&
    isText(platform.label) &&
    isPlain(platform.layout) &&
    isPlain(platform.layout.readings);
  return (platform === undefined || isPlatform) && (rules === undefined || isPlain(rules));
}

function recordOf(value: unknown, id: string, createdAt: string): PartialCheckRecord {
  const record = isPlain(value) ? value : {};
  const { layout, photos, ride, stop, vehicle, ...rest } = withSound(record, {
    author: isPlain,
    vehicle: isPlain,
    axle: isOneOf("front", "rear"),
    layout: isPlain,
    stop: isPlain,
    ride: isPlain,
    rules: isPlain,
    reference: isReference,
    photos: Array.isArray,
    notes: isText,
  });
  const opened = {
    ...rest,
    format: checkFormat,
    version: checkVersion,
    id: isText(record.id) ? record.id : id,
    createdAt: isText(record.createdAt) ? record.createdAt : createdAt,
    corners: cornersOf(record.corners),
    ...(isPlain(vehicle) && {
      vehicle: withSound(vehicle, {
        label: isText,
        platformId: (item) => item === null || isText(item),
        liftMm: isNumber,
        use: isOneOf("daily", "towing", "offroad"),
      }),
    }),
    ...(Array.isArray(photos) && {
      photos: photos.filter((photo) => isPlain(photo) && isText(photo.data)),
    }),
    ...(isPlain(layout) && { layout: layoutOf(layout) }),
    ...(isPlain(ride) && { ride: rideOf(ride) }),
    ...(isPlain(stop) && {
      stop: withSound(stop, {
        name: isText,
        duty: isOneOf("impact", "carry"),
        freeHeight: isReading,
        usableCompressionMm: isNumber,
        curve: rows(2),
        damping: (item) => item === null || rows(3)(item),
        testedAtSpeed: (item) => typeof item === "boolean",
        estimated: isPlain,
      }),
    }),
  };
  return opened as unknown as PartialCheckRecord;
}

function entriesOf(value: unknown): { [id: string]: Entry } {
  const entries: { [id: string]: Entry } = {};
  if (!isPlain(value)) return entries;
  for (const [id, entry] of Object.entries(value)) {
    if (!isPlain(entry) || id === "__proto__") continue;
    const unit = (isText(entry.unit) ? entry.unit : "mm") as Entry["unit"];
    const tol = isText(entry.tol) ? entry.tol : "";
    entries[id] = { ...entry, texts: texts(entry.texts), unit, tol };
  }
  return entries;
}

function progressOf(value: unknown): Progress {
  const progress = isPlain(value) ? value : {};
  const { step, skipped, cautionsFor, stood, rightGeometry } = progress;
  return {
    ...progress,
    step: isText(step) ? step : "",
    skipped: texts(skipped),
    cautionsFor: isOneOf("level", "raised")(cautionsFor) ? cautionsFor : null,
    stood: texts(stood),
    rightGeometry: isOneOf("same", "own")(rightGeometry) ? rightGeometry : null,
  };
}

function timeOf(...values: readonly unknown[]): string {
  return (
    values.filter(isText).find((text) => !Number.isNaN(Date.parse(text))) ??
    "1970-01-01T00:00:00.000Z"
  );
}

const isState = isOneOf<State>("ok", "care", "no", "unsure");

/**
 * What any version of Stopfit stored of a check, in today's shape: the one way in for what comes from a
 * database or a backup. What an older version did not have gets its beginning; what cannot be what it
 * says is left out, everything else stays. Null where it does not even have an id.
 */
export function openStored(value: unknown): StoredCheck | null {
  if (!isPlain(value) || !isText(value.id) || value.id === "") return null;
  const { id } = value;
  const createdAt = timeOf(value.createdAt, value.updatedAt);
  const { deletedAt, revision, lastVerdict, ...rest } = value;
  return {
    ...rest,
    id,
    name: isText(value.name) ? value.name : "",
    createdAt,
    updatedAt: timeOf(value.updatedAt, createdAt),
    ...(isText(deletedAt) && { deletedAt }),
    ...(isNumber(revision) && revision >= 0 && { revision: Math.floor(revision) }),
    ...(isState(lastVerdict) && { lastVerdict }),
    record: recordOf(value.record, id, createdAt),
    entries: entriesOf(value.entries),
    progress: progressOf(value.progress),
  };
}
