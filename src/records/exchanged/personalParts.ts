import type { CheckRecord } from "../check/checkRecord.ts";
import { isPlainObject, type PlainObject } from "../text/plainObject.ts";

/** Texts of a check that are somebody's, by their place in the record: "/author/name". */
export type PersonalTexts = { readonly [place: string]: string };

/** What is taken out wholly, and what is emptied because the record needs it. */
const whole = /^\/(author\/(name|contact)|notes|job\/customer)$|\/by$/;
const emptied = /^\/fitted\/by$/;

export function isPersonalPlace(place: string): boolean {
  return whole.test(place);
}

interface Parted {
  readonly record: unknown;
  readonly texts: PersonalTexts;
}

function parted(value: unknown, place: string, texts: Record<string, string>): unknown {
  if (Array.isArray(value)) return value.map((each, at) => parted(each, `${place}/${at}`, texts));
  if (!isPlainObject(value)) return value;
  const kept: Record<string, unknown> = {};
  for (const [name, inner] of Object.entries(value)) {
    const own = `${place}/${name}`;
    if (typeof inner === "string" && isPersonalPlace(own)) {
      if (inner !== "") texts[own] = inner;
      if (emptied.test(own)) kept[name] = "";
    } else kept[name] = parted(inner, own, texts);
  }
  return kept;
}

/** A record without names, contacts, notes and photos, and the texts taken out of it. */
export function withoutPersonal(record: CheckRecord): Parted {
  const { photos: _photos, fitted, ...rest } = record;
  const { photos: _fittedPhotos, ...fittedOnly } = fitted ?? { photos: undefined };
  const texts: Record<string, string> = {};
  const bare = { ...rest, ...(fitted && { fitted: fittedOnly }) };
  return { record: parted(bare, "", texts), texts };
}

/** The record with those texts in their places again; one whose place is not there is passed over. */
export function withPersonal(record: PlainObject, texts: PersonalTexts): PlainObject {
  const copy = structuredClone(record);
  for (const [place, text] of Object.entries(texts)) {
    if (!isPersonalPlace(place)) continue;
    const parts = place.split("/").slice(1);
    const last = parts.pop() ?? "";
    let at: unknown = copy;
    for (const part of parts) {
      const there: boolean =
        (isPlainObject(at) || Array.isArray(at)) && Object.hasOwn(at as object, part);
      at = there ? (at as Record<string, unknown>)[part] : null;
    }
    if (isPlainObject(at)) (at as Record<string, unknown>)[last] = text;
  }
  return copy;
}
