import type { QuantityKind } from "../../physics/sentence.ts";
import { notFarAhead } from "../text/moment.ts";
import { isPlainObject } from "../text/plainObject.ts";
import { cleanTexts } from "../text/soundText.ts";
import { openStored } from "./openStored.ts";
import type { StoredCheck } from "./storedCheck.ts";

const isText = (value: unknown): value is string => typeof value === "string";
const isNumber = (value: unknown): value is number => Number.isFinite(value);
const isTextOrAbsent = (value: unknown): boolean => value === undefined || isText(value);

function isKnown(kinds: object, kind: unknown): boolean {
  return isText(kind) && Object.hasOwn(kinds, kind);
}

function onlyWith(value: unknown, sound: (item: unknown) => boolean): unknown {
  if (!isPlainObject(value)) return undefined;
  const kept = Object.entries(value).filter(([, item]) => sound(item));
  return kept.length === Object.keys(value).length ? value : Object.fromEntries(kept);
}

const quantityKinds: { readonly [Kind in QuantityKind]: true } = {
  length: true,
  spacer: true,
  angle: true,
  rate: true,
  damping: true,
  stiffnessClass: true,
  force: true,
  mass: true,
  energy: true,
  speed: true,
  roadSpeed: true,
  contactRate: true,
  acceleration: true,
  share: true,
  ratio: true,
  count: true,
};

/** Words, and numbers of kinds that a screen can show. */
function isSentence(value: unknown): boolean {
  return (
    Array.isArray(value) &&
    value.every(
      (part) =>
        isText(part) ||
        (isPlainObject(part) && isKnown(quantityKinds, part.kind) && isNumber(part.value)),
    )
  );
}

function isEntry(value: unknown): boolean {
  return (
    isPlainObject(value) &&
    Array.isArray(value.texts) &&
    value.texts.every(isText) &&
    isText(value.unit) &&
    isText(value.tol) &&
    isTextOrAbsent(value.tool) &&
    isTextOrAbsent(value.reach)
  );
}

function isDoubt(value: unknown): boolean {
  return (
    value === null || (isPlainObject(value) && isText(value.side) && isNumber(value.halfWidthMm))
  );
}

/** The walk through readings to take again: whole, or none. */
function isWalk(walk: unknown): boolean {
  if (!isPlainObject(walk) || !Array.isArray(walk.done) || !isNumber(walk.left)) return false;
  const { now, just } = walk;
  if (!isDoubt(just) || !walk.done.every((each) => isPlainObject(each) && isText(each.reading))) {
    return false;
  }
  if (now === null) return true;
  return (
    isPlainObject(now) &&
    isText(now.reading) &&
    (now.before === null || isEntry(now.before)) &&
    (now.tool === null ||
      (isPlainObject(now.tool) && isText(now.tool.id) && isText(now.tool.name))) &&
    (now.removes === null || isNumber(now.removes)) &&
    isSentence(now.sentence) &&
    isDoubt(now.doubt)
  );
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
  const { record } = opened;
  const earlierValues = onlyWith(
    earlier,
    (item) =>
      isPlainObject(item) && isText(item.reading) && isText(item.until) && isEntry(item.entry),
  );
  return {
    ...rest,
    createdAt: notFarAhead(opened.createdAt, now),
    updatedAt: notFarAhead(opened.updatedAt, now),
    ...(deletedAt !== undefined && { deletedAt: notFarAhead(deletedAt, now) }),
    record: {
      ...record,
      id: isSoundId(record.id) ? record.id : opened.id,
      createdAt: notFarAhead(record.createdAt, now),
    },
    ...(earlierValues !== undefined && { earlier: earlierValues }),
    ...(isWalk(again) && { again }),
  } as unknown as StoredCheck;
}
