import { fail, type Outcome, succeed } from "../../physics/outcome.ts";
import * as messages from "../../words/compiled/records/text.ts";
import type { Message, Words } from "../../words/message.ts";
import { recordBounds } from "../check/recordFormat.ts";
import { cleanTexts } from "./soundText.ts";

/**
 * Reads JSON text from anywhere without harm: bounded in size and nesting, no field twice in one
 * object (the second would silently replace the first), no "__proto__", no number too large to hold.
 * Its texts are clean: well-formed, without controls and marks that turn their direction.
 */
export function readJsonText(text: string, what: Words): Outcome<unknown> {
  const plain = text.charCodeAt(0) === 0xfeff ? text.slice(1) : text;
  if (plain.trim() === "") return fail("textEmpty", [messages.isEmpty({ what })]);
  if (plain.length > recordBounds.textCharacters) {
    const most = Math.round(recordBounds.textCharacters / 1e6);
    return fail("textTooLong", [messages.isTooLargeTo({ what, most })]);
  }
  const scanned = scan(plain, what);
  if (!scanned.ok) return scanned;
  let value: unknown;
  try {
    value = JSON.parse(plain);
  } catch (error) {
    return fail("textNotJson", [notJson(plain, what, error)]);
  }
  const sound = checkPlainData(value, what);
  return sound.ok ? succeed(cleanTexts(sound.value)) : sound;
}

function notJson(text: string, what: Words, error: unknown): Message {
  const message = error instanceof Error ? error.message : "";
  if (/end of (?:JSON|data|input)/i.test(message) || /Unterminated/i.test(message)) {
    return messages.isCutOffIts({ what });
  }
  const position = /position (\d+)/.exec(message)?.[1];
  if (position !== undefined && Number(position) >= text.trimEnd().length) {
    return messages.isCutOffIts({ what });
  }
  if (position === undefined) return messages.isNotCheckIt({ what });
  const before = text.slice(0, Number(position)).split("\n");
  const column = (before.at(-1) ?? "").length + 1;
  return messages.isNotCheckItIs({ what, before: before.length, column });
}

const quote = 34;
const backslash = 92;

/** Where the string that begins at `start` ends (the index of its closing quote), or the text's end. */
function stringEnd(text: string, start: number): number {
  let at = text.indexOf('"', start + 1);
  while (at !== -1) {
    let slashes = 0;
    while (text.charCodeAt(at - 1 - slashes) === backslash) slashes += 1;
    if (slashes % 2 === 0) return at;
    at = text.indexOf('"', at + 1);
  }
  return text.length;
}

const colonAhead = /[ \t\r\n]*:/y;

/** Nesting and repeated fields, found in one pass that needs no stack of its own calls. */
function scan(text: string, what: Words): Outcome<null> {
  const open: (Set<string> | null)[] = [];
  let values = 0;
  for (let at = 0; at < text.length; at += 1) {
    const code = text.charCodeAt(at);
    if (code === quote) {
      const end = stringEnd(text, at);
      const fields = open.at(-1) ?? null;
      colonAhead.lastIndex = end + 1;
      if (fields !== null && colonAhead.test(text)) {
        const name = fieldName(text.slice(at, end + 1));
        if (name === "__proto__") {
          return fail("fieldForbidden", [messages.hasFieldNamedProto({ what })]);
        }
        if (fields.has(name)) {
          return fail("fieldTwice", [messages.hasFieldTwiceIn({ what, name: shortened(name) })]);
        }
        fields.add(name);
        if (fields.size > recordBounds.fields) return tooManyFields(what);
      }
      at = end;
    } else if (code === 123 || code === 91) {
      open.push(code === 123 ? new Set() : null);
      values += 1;
      if (open.length > recordBounds.nesting) return tooDeep(what);
    } else if (code === 125 || code === 93) {
      open.pop();
    } else if (code === 44) {
      values += 1;
    }
    if (values > recordBounds.values) return tooMany(what);
  }
  return succeed(null);
}

function fieldName(quoted: string): string {
  if (!quoted.includes("\\")) return quoted.slice(1, -1);
  try {
    return String(JSON.parse(quoted));
  } catch {
    return quoted;
  }
}

export function shortened(text: string, most = 40): string {
  return text.length > most ? `${text.slice(0, most)}…` : text;
}

function tooDeep(what: Words): Outcome<never> {
  return fail("tooDeep", [messages.hasListsWithinLists({ what, nesting: recordBounds.nesting })]);
}

function tooMany(what: Words): Outcome<never> {
  return fail("tooMany", [messages.holdsMoreThanValues({ what, values: recordBounds.values })]);
}

function tooManyFields(what: Words): Outcome<never> {
  return fail("tooManyFields", [messages.hasMoreThanFields({ what, fields: recordBounds.fields })]);
}

interface Place {
  readonly container: object;
  /** Null for a list, whose items need no names. */
  readonly names: readonly string[] | null;
  /** The field that the container is in, for a sentence. */
  readonly within: string;
  next: number;
}

function placeOf(container: object, within: string): Place {
  const names = Array.isArray(container) ? null : Object.keys(container);
  return { container, names, within, next: 0 };
}

/**
 * Plain data all the way: not too deep, no "__proto__", every number finite. Walks with one place for
 * each level of nesting, so that it costs no memory of its own.
 */
export function checkPlainData(value: unknown, what: Words): Outcome<unknown> {
  const open: Place[] = [placeOf([value], "")];
  let values = 0;
  for (let place = open.at(-1); place !== undefined; place = open.at(-1)) {
    const { container, names, within, next } = place;
    const count = names === null ? (container as readonly unknown[]).length : names.length;
    if (next >= count) {
      open.pop();
      continue;
    }
    place.next += 1;
    values += 1;
    if (values > recordBounds.values) return tooMany(what);
    const name = names === null ? within : (names[next] ?? "");
    if (name === "__proto__") {
      return fail("fieldForbidden", [messages.hasFieldNamedProto({ what })]);
    }
    const item: unknown = Reflect.get(container, names === null ? next : name);
    if (typeof item === "number" && !Number.isFinite(item)) {
      return fail("numberNotFinite", [messages.numberInIsToo({ what, name: shortened(name) })]);
    }
    if (typeof item !== "object" || item === null) continue;
    // The first place holds the value itself and is no level of it.
    if (open.length > recordBounds.nesting) return tooDeep(what);
    open.push(placeOf(item, name));
  }
  return succeed(value);
}
