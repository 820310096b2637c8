import { isPlainObject } from "../records/text/plainObject.ts";

/**
 * Check records as shorter JSON for links and codes. A reading, `{values, tol}` or
 * `{values, tol, typed}`, becomes one text: "~", the ±, and each repeat after a "|", as it was typed
 * or as a number. A text of the record that itself begins with "~" gets one more in front.
 *
 * Belongs to links of version 1 and 2, as the dictionaries do: links that were sent must be read as they were
 * written, so neither the form nor a factor here may change under it.
 */
const mark = "~";
const separator = "|";

/** Factor to the model's unit, by the unit that ends what was typed. */
const factors: { readonly [unit: string]: number } = {
  mm: 1,
  cm: 10,
  in: 25.4,
  kg: 1,
  lb: 0.45359237,
  "°": 1,
};

const decimal = /^(-?)(\d{1,9}(?:[.,]\d{0,9})?|[.,]\d{1,9}) (mm|cm|in|kg|lb|°)$/;
const fraction = /^(-?)(?:(\d{1,9})[ -])?(\d{1,4})\/(\d{1,4}) (mm|cm|in|kg|lb|°)$/;

/** The number in the model's unit that a typed text stands for; null where it is not of this form. */
function typedValue(text: string): number | null {
  const plain = decimal.exec(text);
  if (plain !== null) {
    const [, sign, number = "", unit = ""] = plain;
    return signed(sign, Number(number.replace(",", ".")) * (factors[unit] ?? 1));
  }
  const [, sign, whole = "0", numerator, denominator, unit = ""] = fraction.exec(text) ?? [];
  if (numerator === undefined) return null;
  const parts = (Number(whole) * Number(denominator) + Number(numerator)) / Number(denominator);
  return signed(sign, parts * (factors[unit] ?? 1));
}

function signed(sign: string | undefined, magnitude: number): number {
  return sign === "-" && magnitude !== 0 ? -magnitude : magnitude;
}

interface Reading {
  readonly values: readonly number[];
  readonly tol: number;
  readonly typed?: readonly string[];
}

function isNumber(value: unknown): value is number {
  return typeof value === "number" && Number.isFinite(value) && !Object.is(value, -0);
}

function isReading(value: unknown): value is Reading {
  if (!isPlainObject(value)) return false;
  const keys = Object.keys(value).join();
  if (keys !== "values,tol" && keys !== "values,tol,typed") return false;
  const { values, tol, typed } = value;
  if (!Array.isArray(values) || values.length === 0 || !values.every(isNumber)) return false;
  if (!isNumber(tol)) return false;
  if (typed === undefined) return keys === "values,tol";
  return (
    Array.isArray(typed) &&
    typed.length === values.length &&
    typed.every((text, index) => typeof text === "string" && typedValue(text) === values[index])
  );
}

function shortReading({ values, tol, typed }: Reading): string {
  return `${mark}${[tol, ...(typed ?? values)].join(separator)}`;
}

/** A number as JSON writes it, and no other spelling of it. */
function numberOf(text: string): number | null {
  const value = Number(text);
  return text === String(value) && isNumber(value) ? value : null;
}

function longReading(text: string): Reading | null {
  const [tolText = "", ...items] = text.slice(mark.length).split(separator);
  const tol = numberOf(tolText);
  if (tol === null || items.length === 0) return null;
  const plain = items.map(numberOf);
  if (plain.every((value) => value !== null)) return { values: plain, tol };
  const values = items.map(typedValue);
  return values.every(isNumber) ? { values, tol, typed: items } : null;
}

/** JSON of any plain value, its readings in short. */
export function toShortText(value: unknown): string {
  return JSON.stringify(value, (_, inner: unknown) => {
    if (isReading(inner)) return shortReading(inner);
    return typeof inner === "string" && inner.startsWith(mark) ? mark + inner : inner;
  });
}

/** JSON of the value that a short text stands for; throws as JSON.parse does where it is none. */
export function fromShortText(text: string): string {
  return JSON.stringify(
    JSON.parse(text, (_, inner: unknown) => {
      if (typeof inner !== "string" || !inner.startsWith(mark)) return inner;
      return inner.startsWith(mark + mark) ? inner.slice(1) : (longReading(inner) ?? inner);
    }),
  );
}
