import { fail, type Outcome, succeed } from "../../physics/outcome.ts";
import type { ValueDefinition } from "../../physics/readings/index.ts";
import * as messages from "../../words/compiled/records/entry.ts";
import type { Message } from "../../words/message.ts";
import type { LengthUnit, TypedUnit } from "./units.ts";
import { toModel } from "./units.ts";

/** What was typed, understood: the value in the model's unit and the text with its unit. */
export interface ParsedEntry<Unit extends string = string> {
  readonly value: number;
  readonly unit: Unit;
  readonly typed: string;
}

export interface ParsedLength {
  readonly mm: number;
  readonly unit: LengthUnit;
  /** As typed, with its unit: "2 5/16 in", "58,7 mm", "5.87 cm". */
  readonly typed: string;
}

export type AllowedSign = ValueDefinition["allowed"];

const lengthUnits: readonly (readonly [RegExp, TypedUnit])[] = [
  [/^mm$/, "mm"],
  [/^cm$/, "cm"],
  [/^(?:in|in\.|inch|inches|")$/, "in"],
];
const massUnits: readonly (readonly [RegExp, TypedUnit])[] = [
  [/^(?:kg|kgs)$/, "kg"],
  [/^(?:lb|lbs|lb\.|lbs\.)$/, "lb"],
];
const rateUnits: readonly (readonly [RegExp, TypedUnit])[] = [
  [/^n\/mm$/, "N/mm"],
  [/^(?:lbf?\/in|lbs\/in)$/, "lbf/in"],
];
const dampingUnits: readonly (readonly [RegExp, TypedUnit])[] = [
  [/^(?:n[·*]?s\/mm)$/, "N·s/mm"],
  [/^(?:lbf?[·*]?s\/in)$/, "lbf·s/in"],
];
const forceUnits: readonly (readonly [RegExp, TypedUnit])[] = [
  [/^n$/, "N"],
  [/^lbf?$/, "lbf"],
];
const roadSpeedUnits: readonly (readonly [RegExp, TypedUnit])[] = [
  [/^(?:km\/h|kph|kmh)$/, "km/h"],
  [/^(?:mph|mi\/h)$/, "mph"],
];
const contactRateUnits: readonly (readonly [RegExp, TypedUnit])[] = [
  [/^perkm$/, "per km"],
  [/^per(?:mile|mi)$/, "per mile"],
];
const angleUnits: readonly (readonly [RegExp, TypedUnit])[] = [[/^(?:°|deg|degrees?)$/, "deg"]];

const vulgarFractions: { readonly [character: string]: string } = {
  "½": "1/2",
  "¼": "1/4",
  "¾": "3/4",
  "⅛": "1/8",
  "⅜": "3/8",
  "⅝": "5/8",
  "⅞": "7/8",
  "⅓": "1/3",
  "⅔": "2/3",
};

/** Room for the longest decimal that a number can need; people type far less. */
const longestEntry = 400;

function plainCharacters(text: string): string {
  return text
    .replace(/[½¼¾⅛⅜⅝⅞⅓⅔]/g, (character) => ` ${vulgarFractions[character] ?? ""}`)
    .replace(/⁄|∕/g, "/")
    .replace(/[−–—‐‑]/g, "-")
    .replace(/″|”|“|''|′′|’’/g, '"')
    .replace(/º|˚/g, "°")
    .replace(/⋅|∙/g, "·")
    .replace(/\u2060/g, "")
    .replace(/\s+/g, " ")
    .trim();
}

const howToType = messages.typeNumberSuchAs;

/**
 * A number as people write it on a workshop sheet: whole, decimal with point or comma, a fraction, or
 * a whole number with a fraction after a space or a hyphen. Anything that could be read in two ways
 * is refused with the two ways named.
 */
export function parseNumber(text: string, sign: AllowedSign = "any"): Outcome<number> {
  if (text.length > longestEntry)
    return fail("entryTooLong", [messages.thisIsTooLong({ howToType })]);
  const plain = plainCharacters(text);
  const shown = `“${text.trim()}”`;
  if (plain === "") return fail("entryEmpty", [messages.nothingIsEnteredYet]);
  const negative = /^-/.test(plain);
  const body = plain.replace(/^[+-]\s?/, "");
  const magnitude = parseMagnitude(body, shown);
  if (!magnitude.ok) return magnitude;
  const value = negative && magnitude.value !== 0 ? -magnitude.value : magnitude.value;
  if (sign !== "any" && negative) {
    return fail("entryNegative", [messages.isBelow0And({ shown })]);
  }
  if (sign === "aboveZero" && value === 0) {
    return fail("entryZero", [messages.thisMustBeMore]);
  }
  return succeed(value);
}

function parseMagnitude(body: string, shown: string): Outcome<number> {
  if (/[.,].*[.,]/.test(body)) {
    return fail("entryAmbiguous", [messages.hasMoreThanOne({ shown })]);
  }
  const [, thousands, rest] = /^([1-9]\d{0,2}),(\d{3})$/.exec(body) ?? [];
  if (thousands !== undefined && rest !== undefined) {
    return fail("entryAmbiguous", [messages.canBeReadTwo({ shown, thousands, rest })]);
  }
  if (/^(?:\d{1,9}(?:[.,]\d*)?|[.,]\d+)$/.test(body)) {
    return succeed(Number(body.replace(",", ".")));
  }
  const fraction = /^(?:(\d{1,9})(?: ?- ?| ))?(\d{1,4}) ?\/ ?(\d{1,4})$/.exec(body);
  if (fraction !== null) {
    const whole = fraction[1] === undefined ? 0 : Number(fraction[1]);
    const numerator = Number(fraction[2]);
    const denominator = Number(fraction[3]);
    if (denominator === 0) {
      return fail("entryFraction", [messages.dividesBy0Type({ shown })]);
    }
    if (fraction[1] !== undefined && numerator >= denominator) {
      return fail("entryFraction", [messages.inFractionIsNot({ shown })]);
    }
    return succeed((whole * denominator + numerator) / denominator);
  }
  if (/^\d{10,}/.test(body)) {
    return fail("entryTooLarge", [messages.isFarTooLarge({ shown, howToType })]);
  }
  return fail("entryUnreadable", [messages.isNotNumberThat({ shown, howToType })]);
}

function parseWithUnit(
  text: string,
  units: readonly (readonly [RegExp, TypedUnit])[],
  given: TypedUnit,
  sign: AllowedSign,
  names: Message,
): Outcome<ParsedEntry<TypedUnit>> {
  if (text.length > longestEntry)
    return fail("entryTooLong", [messages.thisIsTooLong({ howToType })]);
  const plain = plainCharacters(text);
  const match = /^(.*?)\s*((?:°|")|[a-zA-Z][a-zA-Z./·* ]*)?$/.exec(plain);
  const body = match?.[1] ?? plain;
  const suffix = match?.[2]?.toLowerCase().replace(/\s/g, "");
  let unit = given;
  if (suffix !== undefined) {
    const known = units.find(([pattern]) => pattern.test(suffix));
    if (known === undefined) {
      return fail("entryUnit", [messages.unitIsNotKnown({ text: text.trim(), names })]);
    }
    unit = known[1];
  }
  const number = parseNumber(body, sign);
  if (!number.ok) return number;
  return succeed({
    value: toModel(number.value, unit),
    unit,
    typed: `${body} ${unitSuffix(unit)}`.trim(),
  });
}

/** How a unit is written after a typed number. */
function unitSuffix(unit: TypedUnit): string {
  return unit === "deg" ? "°" : unit;
}

/** A length in mm from what was typed; `unit` holds where the text names none. */
export function parseLength(
  text: string,
  unit: LengthUnit,
  sign: AllowedSign = "aboveZero",
): Outcome<ParsedLength> {
  const parsed = parseWithUnit(text, lengthUnits, unit, sign, messages.mmCmOrInches);
  if (!parsed.ok) return parsed;
  const { value, typed } = parsed.value;
  return succeed({ mm: value, unit: parsed.value.unit === "in" ? "in" : "mm", typed });
}

/** An angle in degrees, of either sign: "8", "8,5°", "-3 deg". */
export function parseAngle(text: string): Outcome<ParsedEntry<"deg">> {
  const parsed = parseWithUnit(text, angleUnits, "deg", "any", messages.degrees);
  if (!parsed.ok) return parsed;
  if (Math.abs(parsed.value.value) >= 90) {
    return fail("entryAngle", [messages.angleHereIsLess]);
  }
  return succeed({ ...parsed.value, unit: "deg" });
}

/** A mass in kg from kilograms or pounds. */
export function parseMass(
  text: string,
  unit: "kg" | "lb",
  sign: AllowedSign = "aboveZero",
): Outcome<ParsedEntry<TypedUnit>> {
  return parseWithUnit(text, massUnits, unit, sign, messages.kgOrLb);
}

/** A rate in N/mm from N/mm or lb/in. */
export function parseRate(
  text: string,
  unit: "N/mm" | "lbf/in",
  sign: AllowedSign = "aboveZero",
): Outcome<ParsedEntry<TypedUnit>> {
  return parseWithUnit(text, rateUnits, unit, sign, messages.nMmOrLb);
}

/** A damping coefficient in N·s/mm from N·s/mm or lbf·s/in. */
export function parseDamping(
  text: string,
  unit: "N·s/mm" | "lbf·s/in",
  sign: AllowedSign = "zeroOrMore",
): Outcome<ParsedEntry<TypedUnit>> {
  return parseWithUnit(text, dampingUnits, unit, sign, messages.nSMmOr);
}

/** A force in N from newtons or pounds-force. */
export function parseForce(
  text: string,
  unit: "N" | "lbf",
  sign: AllowedSign = "aboveZero",
): Outcome<ParsedEntry<TypedUnit>> {
  return parseWithUnit(text, forceUnits, unit, sign, messages.nOrLbf);
}

/** A speed on the road in km/h from km/h or mph. */
export function parseRoadSpeed(
  text: string,
  unit: "km/h" | "mph",
  sign: AllowedSign = "aboveZero",
): Outcome<ParsedEntry<TypedUnit>> {
  return parseWithUnit(text, roadSpeedUnits, unit, sign, messages.kmHOrMph);
}

/** Contacts per km from contacts per km or per mile. */
export function parseContactRate(
  text: string,
  unit: "per km" | "per mile",
  sign: AllowedSign = "aboveZero",
): Outcome<ParsedEntry<TypedUnit>> {
  return parseWithUnit(text, contactRateUnits, unit, sign, messages.perKmOrPer);
}
