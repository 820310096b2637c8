import type { LimitKind } from "../../physics/fitment.ts";
import type { QuantityKind } from "../../physics/sentence.ts";
import { notFarAhead } from "../text/moment.ts";
import { cleanTexts } from "../text/soundText.ts";
import { openStored } from "./openStored.ts";
import type { StoredCheck } from "./storedCheck.ts";

type Plain = { readonly [key: string]: unknown };

function isPlain(value: unknown): value is Plain {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

const isText = (value: unknown): value is string => typeof value === "string";
const isNumber = (value: unknown): value is number => Number.isFinite(value);
const isTextOrAbsent = (value: unknown): boolean => value === undefined || isText(value);

function isKnown(kinds: object, kind: unknown): boolean {
  return isText(kind) && Object.hasOwn(kinds, kind);
}

/** `value` without the fields named whose content is not as said. */
function without(value: Plain, sound: { readonly [field: string]: (item: unknown) => boolean }) {
  const bad = Object.keys(sound).filter(
    (field) => value[field] !== undefined && sound[field]?.(value[field]) === false,
  );
  if (bad.length === 0) return value;
  return Object.fromEntries(Object.entries(value).filter(([field]) => !bad.includes(field)));
}

function onlyWith(value: unknown, sound: (item: unknown) => boolean): unknown {
  if (!isPlain(value)) return undefined;
  const kept = Object.entries(value).filter(([, item]) => sound(item));
  return kept.length === Object.keys(value).length ? value : Object.fromEntries(kept);
}

const eventNumbers: { readonly [kind: string]: readonly string[] } = {
  obstacle: ["heightM", "lengthM", "speedKmPerH"],
  hump: ["heightM", "lengthM", "speedKmPerH"],
  landing: ["heightM"],
};

function isEvent(value: unknown): boolean {
  if (!isPlain(value) || !isText(value.kind) || !Object.hasOwn(eventNumbers, value.kind)) {
    return false;
  }
  return eventNumbers[value.kind]?.every((field) => isNumber(value[field])) === true;
}

const ruleFields = {
  roadClass: (value: unknown) => isText(value) && /^[A-E]$/.test(value),
  speedKmPerH: isNumber,
  allowedContactsPerKm: isNumber,
  accelerationCapG: isNumber,
  reserveMm: isNumber,
  balanceMm: isNumber,
  roadKurtosis: isNumber,
  events: (value: unknown) => Array.isArray(value) && value.every(isEvent),
};

function isCurveEstimate(value: unknown): boolean {
  return isPlain(value) && isText(value.how) && isNumber(value.forceShare);
}

const limitKinds: { readonly [Kind in LimitKind]: true } = {
  tyre: true,
  damper: true,
  spring: true,
  metal: true,
  other: true,
};

/** A clearance of a kind that is not known is a clearance still. */
function limitOf(limit: unknown): unknown {
  return isPlain(limit) && !isKnown(limitKinds, limit.kind) ? { ...limit, kind: "other" } : limit;
}

function cornerOf(corner: unknown): unknown {
  return isPlain(corner) && Array.isArray(corner.limits)
    ? { ...corner, limits: corner.limits.map(limitOf) }
    : corner;
}

const pictures: readonly unknown[] = ["image/jpeg", "image/png", "image/webp"];

function isPhoto(photo: unknown): boolean {
  return (
    isPlain(photo) &&
    pictures.includes(photo.type) &&
    isTextOrAbsent(photo.caption) &&
    isTextOrAbsent(photo.reading)
  );
}

const roles: readonly unknown[] = ["installer", "customer", "support"];

function recordOf(record: Plain): Plain {
  const { author, corners, photos, reference, ride, rules, stop, ...rest } = record;
  const house = isPlain(reference) && isPlain(reference.rules) ? reference.rules : null;
  return {
    ...rest,
    ...(isPlain(author) && {
      author: without(author, {
        role: (value) => roles.includes(value),
        name: isText,
        contact: isText,
      }),
    }),
    corners: Array.isArray(corners) ? corners.map(cornerOf) : [],
    ...(isPlain(stop) && { stop: without(stop, { estimated: isCurveEstimate }) }),
    ...(isPlain(ride) && {
      ride: {
        ...ride,
        ...(ride.tolerances !== undefined && { tolerances: onlyWith(ride.tolerances, isNumber) }),
        ...(ride.estimated !== undefined && { estimated: onlyWith(ride.estimated, isText) }),
      },
    }),
    ...(isPlain(rules) && { rules: without(rules, ruleFields) }),
    ...(isPlain(reference) && {
      reference: house ? { ...reference, rules: without(house, ruleFields) } : reference,
    }),
    ...(Array.isArray(photos) && { photos: photos.filter(isPhoto) }),
  };
}

const quantityKinds: { readonly [Kind in QuantityKind]: true } = {
  length: true,
  angle: true,
  rate: true,
  stiffnessClass: true,
  force: true,
  mass: true,
  energy: true,
  speed: true,
  acceleration: true,
  share: true,
  ratio: true,
  count: true,
};

/** Words, and numbers of kinds that a screen can show. */
export function isSentence(value: unknown): boolean {
  return (
    Array.isArray(value) &&
    value.every(
      (part) =>
        isText(part) ||
        (isPlain(part) && isKnown(quantityKinds, part.kind) && isNumber(part.value)),
    )
  );
}

function isEntry(value: unknown): boolean {
  return (
    isPlain(value) &&
    Array.isArray(value.texts) &&
    value.texts.every(isText) &&
    isText(value.unit) &&
    isText(value.tol) &&
    isTextOrAbsent(value.tool) &&
    isTextOrAbsent(value.reach)
  );
}

function isDoubt(value: unknown): boolean {
  return value === null || (isPlain(value) && isText(value.side) && isNumber(value.halfWidthMm));
}

/** The walk through readings to take again: whole, or none. */
function isWalk(walk: unknown): boolean {
  if (!isPlain(walk) || !Array.isArray(walk.done) || !isNumber(walk.left)) return false;
  const { now, just } = walk;
  if (!isDoubt(just) || !walk.done.every((each) => isPlain(each) && isText(each.reading))) {
    return false;
  }
  if (now === null) return true;
  return (
    isPlain(now) &&
    isText(now.reading) &&
    (now.before === null || isEntry(now.before)) &&
    (now.tool === null || (isPlain(now.tool) && isText(now.tool.id) && isText(now.tool.name))) &&
    (now.removes === null || isNumber(now.removes)) &&
    isSentence(now.sentence) &&
    isDoubt(now.doubt)
  );
}

function entryOf(entry: Plain): Plain {
  return without(entry, { tool: isText, reach: isText });
}

/** An id that an address, a file name and a list can hold. */
export function isSoundId(id: unknown): id is string {
  return isText(id) && /^[\x21-\x7e][\x20-\x7e]{0,199}$/.test(id);
}

/**
 * What is stored of a check, or comes in a backup, fit to be shown by every screen: opened, its texts
 * clean, no date far ahead, and what no screen can show left out. `value` belongs to nobody else, and its
 * texts are cleaned in place. Null where it is no check.
 */
export function soundStored(value: unknown, now: Date = new Date()): StoredCheck | null {
  const opened = openStored(cleanTexts(value));
  if (opened === null) return null;
  const { again, earlier, deletedAt, ...rest } = opened;
  const record = recordOf(opened.record as unknown as Plain);
  const entries = Object.fromEntries(
    Object.entries(opened.entries).map(([id, entry]) => [id, entryOf(entry as unknown as Plain)]),
  );
  const earlierValues = onlyWith(
    earlier,
    (item) => isPlain(item) && isText(item.reading) && isText(item.until) && isEntry(item.entry),
  );
  return {
    ...rest,
    createdAt: notFarAhead(opened.createdAt, now),
    updatedAt: notFarAhead(opened.updatedAt, now),
    ...(deletedAt !== undefined && { deletedAt: notFarAhead(deletedAt, now) }),
    record: {
      ...record,
      id: isSoundId(record.id) ? record.id : opened.id,
      ...(isText(record.createdAt) && { createdAt: notFarAhead(record.createdAt, now) }),
    },
    entries,
    ...(earlierValues !== undefined && { earlier: earlierValues }),
    ...(isWalk(again) && { again }),
  } as unknown as StoredCheck;
}
