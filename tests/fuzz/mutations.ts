import type { Chance } from "./chance.ts";

/* What befalls an input: on its way, by another program, or by someone who means harm. */

const names = [
  "__proto__",
  "constructor",
  "prototype",
  "toString",
  "hasOwnProperty",
  "length",
  "valueOf",
  "then",
  "",
  "values",
  "gap",
  "0",
];

export const numbers = [
  0,
  -0,
  1,
  -1,
  0.1,
  1e-9,
  5e-324,
  -5e-324,
  1e-308,
  1e21,
  1e100,
  1e308,
  -1e308,
  2 ** 31,
  2 ** 53,
  -(2 ** 53),
  25.4,
  1 / 25.4,
  1000,
  1e6,
  360,
  90,
  89.95,
  180,
];

const loneHigh = "\ud83d";
const loneLow = "\ude00";

export const texts: readonly string[] = [
  "",
  " ",
  "NaN",
  "Infinity",
  "null",
  "undefined",
  "[object Map]",
  "__proto__",
  "constructor",
  loneHigh,
  loneLow,
  `${loneLow}${loneHigh}`,
  "\u0000",
  "\ufeff",
  "\u202e",
  "\u2028",
  "é́́́",
  "2 5/16",
  "58,7",
  "1e999",
  "-0",
  "<script>alert(1)</script>",
  "'; --",
  "../../etc",
  "=1+1",
  "x".repeat(5000),
  "9".repeat(400),
];

function deep(chance: Chance): unknown {
  let value: unknown = 1;
  const levels = chance.pick([2, 10, 60, 200]);
  for (let level = 0; level < levels; level++) value = chance.once(2) ? [value] : { a: value };
  return value;
}

function hostile(chance: Chance): unknown {
  switch (chance.below(8)) {
    case 0:
    case 1:
      return chance.pick(numbers);
    case 2:
    case 3:
      return chance.pick(texts);
    case 4:
      return chance.pick([null, true, false, [], {}, [[]], [{}]]);
    case 5:
      return deep(chance);
    case 6:
      return Array.from({ length: chance.pick([1, 3, 500]) }, () => chance.pick(numbers));
    default:
      return { [chance.pick(names)]: chance.pick(numbers) };
  }
}

/** A number near the one there: what a slip of a finger, a unit or a sign makes of it. */
function slipped(value: number, chance: Chance): number {
  const by = chance.pick([
    -1,
    0,
    0.5,
    0.9,
    1.001,
    1.1,
    2,
    10,
    25.4,
    1 / 25.4,
    1000,
    1e-3,
    1e9,
    1e-9,
  ]);
  const slip = chance.once(4) ? value + chance.pick([-1, 1, 0.5, -0.5, 5, -5, 90]) : value * by;
  return Number.isFinite(slip) ? slip : chance.pick(numbers);
}

type Holder = { [name: string]: unknown } | unknown[];

function isHolder(value: unknown): value is Holder {
  return typeof value === "object" && value !== null;
}

/** Every object and list within, the value itself among them. */
function holders(value: unknown, found: Holder[] = []): Holder[] {
  if (!isHolder(value)) return found;
  found.push(value);
  for (const item of Object.values(value)) holders(item, found);
  return found;
}

/** Sets a field that JSON could hold: a list has no names. */
function set(holder: Holder, name: string, value: unknown): void {
  if (Array.isArray(holder) && !/^\d{1,4}$/.test(name)) {
    holder.push(value);
    return;
  }
  Object.defineProperty(holder, name, {
    value,
    enumerable: true,
    configurable: true,
    writable: true,
  });
}

/** Changes a parsed value in place, once: a number, a field, a list, a place. */
export function mutateValue(value: unknown, chance: Chance): void {
  const all = holders(value);
  if (all.length === 0) return;
  const holder = chance.pick(all);
  const fields = Object.keys(holder);
  const field = chance.pick(fields);
  if (field === undefined) {
    set(holder, chance.pick(names), hostile(chance));
    return;
  }
  const item = Reflect.get(holder, field);
  if (typeof item === "number" && !chance.once(3)) {
    set(holder, field, slipped(item, chance));
    return;
  }
  switch (chance.below(7)) {
    case 0:
      if (Array.isArray(holder)) holder.splice(Number(field), 1);
      else Reflect.deleteProperty(holder, field);
      break;
    case 1:
      set(holder, Array.isArray(holder) ? `${chance.below(20)}` : chance.pick(names), item);
      break;
    case 2: {
      const other = chance.pick(all);
      // A holder is not put into what it holds: JSON has no circles.
      set(holder, field, structuredClone(other));
      break;
    }
    case 3:
      if (Array.isArray(holder)) holder.push(structuredClone(item));
      else set(holder, `${field} `, item);
      break;
    default:
      set(holder, field, hostile(chance));
  }
}

const pieces = [
  '"',
  "{",
  "}",
  "[",
  "]",
  ",",
  ":",
  "\\",
  "\\u",
  "\\ud800",
  '"__proto__":',
  '"constructor":{},',
  "1e999",
  "-1e999",
  "NaN",
  "-",
  "\n",
  "\r",
  "\t",
  ";",
  "|",
  "0",
  "9".repeat(40),
  "\u0000",
  "\ufeff",
  "[".repeat(300),
  '{"a":'.repeat(120),
];

/** Changes a text once: cut, doubled, flipped, spliced. */
export function mutateText(text: string, chance: Chance): string {
  const at = chance.below(text.length + 1);
  switch (chance.below(8)) {
    case 0:
      return text.slice(0, at);
    case 1:
      return text.slice(at);
    case 2:
      return text.slice(0, at) + text.slice(at + 1 + chance.below(20));
    case 3:
      return text.slice(0, at) + text.slice(chance.below(at + 1), at) + text.slice(at);
    case 4:
      return text.slice(0, at) + chance.pick(texts) + text.slice(at);
    case 5:
      return text.slice(0, at) + String.fromCharCode(chance.below(0x10000)) + text.slice(at + 1);
    default:
      return text.slice(0, at) + chance.pick(pieces) + text.slice(at + chance.below(3));
  }
}

/** Changes bytes once. */
export function mutateBytes(bytes: Uint8Array, chance: Chance): Uint8Array {
  const at = chance.below(bytes.length + 1);
  switch (chance.below(5)) {
    case 0:
      return bytes.slice(0, at);
    case 1: {
      const changed = bytes.slice();
      if (changed.length > 0) {
        const place = at % changed.length;
        changed[place] = (changed[place] as number) ^ (1 << chance.below(8));
      }
      return changed;
    }
    case 2:
      return Uint8Array.from([...bytes.slice(0, at), ...chance.bytes(chance.below(8))]);
    case 3:
      return Uint8Array.from([...bytes.slice(0, at), ...bytes.slice(at + 1)]);
    default: {
      const changed = bytes.slice();
      if (changed.length > 0) changed[at % changed.length] = chance.pick([0, 1, 0x7f, 0x80, 0xff]);
      return changed;
    }
  }
}

/** Text of no meaning: any code units, or letters of the inputs' own alphabet. */
export function randomText(chance: Chance, most: number): string {
  const length = chance.below(most);
  const any = chance.once(2);
  const alphabet = '{}[]",:0123456789.eE+-abcdefnul \n;\t';
  let text = "";
  for (let index = 0; index < length; index++) {
    text += any
      ? String.fromCharCode(chance.below(0x10000))
      : alphabet[chance.below(alphabet.length)];
  }
  return text;
}
