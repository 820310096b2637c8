import type { Quantity, QuantityKind } from "../physics/sentence.ts";
import {
  fromModel,
  joulesPerFootPoundForce,
  type LengthUnit,
  mmPerInch,
  newtonsPerPoundForce,
  plainDecimal,
} from "../records/entry/units.ts";
import * as messages from "../words/compiled/saying.ts";
import { language } from "../words/language.ts";
import { unitText } from "./unitText.ts";

export interface TextOptions {
  /** Inches as whole numbers and sixteenths, as a tape shows them. */
  readonly fractions?: boolean;
  /** Whole millimetres and sixteenths, as a tape is read; below 2 mm a tenth more. */
  readonly coarse?: boolean;
}

/** Inches to the nearest sixteenth as a tape shows them: "2 5/16", "3/8", "-1 1/2", "0". */
export function sixteenths(inches: number): string {
  if (!Number.isFinite(inches)) return messages.unknown;
  const total = Math.round(Math.abs(inches) * 16);
  const whole = Math.floor(total / 16);
  let numerator = total % 16;
  let denominator = 16;
  while (numerator > 0 && numerator % 2 === 0) {
    numerator /= 2;
    denominator /= 2;
  }
  const sign = inches < 0 && total > 0 ? "-" : "";
  if (numerator === 0) return `${sign}${whole}`;
  return whole === 0
    ? `${sign}${numerator}/${denominator}`
    : `${sign}${whole} ${numerator}/${denominator}`;
}

/** `decimals` places, without a minus before a rounded zero. */
function fixed(value: number, decimals: number): string {
  const text = value.toFixed(decimals);
  return /^-[0.]+$/.test(text) ? text.slice(1) : text;
}

/** At least three figures without an exponent: 0.0123, 1.23, 12.3, 123, 1234. */
function threeFigures(value: number): string {
  if (value === 0) return "0";
  const places = 2 - Math.floor(Math.log10(Math.abs(value)));
  return fixed(value, Math.min(6, Math.max(0, places)));
}

/** A preferred number is written as it is, without zeros behind it. */
function preferredNumber(value: number): string {
  return plainDecimal(Number(value.toPrecision(6)));
}

type Writer = (value: number, options: TextOptions) => string;

const metric: { readonly [Kind in QuantityKind]: Writer } = {
  length: (mm, { coarse = false }) => `${fixed(mm, coarse && Math.abs(mm) >= 2 ? 0 : 1)} mm`,
  spacer: (mm) => `${plainDecimal(Number(mm.toFixed(1)))} mm`,
  angle: (degrees) => `${fixed(degrees, 1)}°`,
  rate: (rate) => `${threeFigures(rate)} N/mm`,
  damping: (damping) => `${threeFigures(damping)} N·s/mm`,
  stiffnessClass: (rate) => `${preferredNumber(rate)} N/mm`,
  force: (newtons) => `${fixed(newtons, 0)} N`,
  mass: (kilograms) => `${fixed(kilograms, 0)} kg`,
  energy: (joules) => `${fixed(joules, 1)} J`,
  speed: (speed) => `${fixed(speed, 0)} mm/s`,
  roadSpeed: (speed) => `${Number(speed.toPrecision(3))} km/h`,
  contactRate: (perKm) => contactsText(perKm, "km"),
  acceleration: (acceleration) => `${fixed(acceleration, 2)} g`,
  share: (share) => `${fixed(100 * share, 0)} %`,
  ratio: (ratio) => `${fixed(ratio, 2)} : 1`,
  count: (count) => {
    if (Number.isInteger(count)) return String(count);
    return count > 0 && count < 0.001 ? messages.under0001 : threeFigures(count);
  },
};

const imperial: { readonly [Kind in QuantityKind]: Writer } = {
  ...metric,
  length: (mm, { fractions = false, coarse = false }) => {
    const inches = mm / mmPerInch;
    if (!fractions && !coarse) return `${fixed(inches, 2)} in`;
    const text = sixteenths(inches);
    return coarse && text === "0" && mm !== 0 ? messages.lessThan116 : `${text} in`;
  },
  // Sold in mm it is asked for in mm.
  spacer: (mm) => {
    const sixteenth = mmPerInch / 16;
    const onTape = Math.abs(mm - sixteenth * Math.round(mm / sixteenth)) < 0.05;
    return onTape
      ? `${sixteenths(mm / mmPerInch)} in`
      : `${fixed(mm / mmPerInch, 2)} in (${metric.spacer(mm, {})})`;
  },
  rate: (rate) => `${threeFigures(fromModel(rate, "lbf/in"))} ${unitText("lbf/in")}`,
  // The class is a round number in N/mm only, which stays beside the person's own unit.
  stiffnessClass: (rate) =>
    `${fixed(fromModel(rate, "lbf/in"), 0)} ${unitText("lbf/in")} (${preferredNumber(rate)} N/mm)`,
  force: (newtons) => `${fixed(newtons / newtonsPerPoundForce, 0)} lbf`,
  mass: (kilograms) => `${fixed(fromModel(kilograms, "lb"), 0)} lb`,
  energy: (joules) => `${fixed(joules / joulesPerFootPoundForce, 1)} ft·lbf`,
  speed: (speed) => `${fixed(speed / mmPerInch, 1)} in/s`,
  damping: (damping) => `${threeFigures(fromModel(damping, "lbf·s/in"))} lbf·s/in`,
  roadSpeed: (speed) => `${fixed(fromModel(speed, "mph"), 0)} mph`,
  contactRate: (perKm) => contactsText(fromModel(perKm, "per mile"), "mile"),
};

/** How often on the road: "12.3 per km", "once in 850 miles", "less than once in a million km". */
function contactsText(often: number, road: "km" | "mile"): string {
  if (often >= 0.995) return messages.per({ number: Number(often.toPrecision(3)), road });
  if (often < 1e-6) return messages.lessThanOnceIn({ road });
  const seldom = Number((1 / often).toPrecision(2));
  return messages.onceIn({
    seldom: seldom.toLocaleString(language).replace(/,/g, "\u202f"),
    road: road === "mile" && seldom === 1 ? "one" : road,
  });
}

export const noBreak = "\u00a0";
/** As wide as nothing: some browsers end a line after the stroke of "N/mm". */
const joiner = "\u2060";

/** A number and its unit stay on one line. */
export function unbroken(text: string): string {
  return text.replaceAll(" ", noBreak).replaceAll(/\/(?=\p{L})/gu, `/${joiner}`);
}

/** For text that leaves the screens, to where spaces that do not break, with a width or without, may be unknown. */
export function withPlainSpaces(text: string): string {
  return text.replaceAll(noBreak, " ").replaceAll(joiner, "");
}

/** Beyond this nothing is a measurement, in any unit. */
const greatestShown = 1e12;

/** One number with its unit in the person's own units, with a true minus before it. What is not a usable number is "unknown". */
export function quantityText(
  quantity: Quantity,
  unit: LengthUnit,
  options: TextOptions = {},
): string {
  // Written so that NaN fails it too.
  if (!(Math.abs(quantity.value) <= greatestShown)) return messages.unknown;
  const written = (unit === "in" ? imperial : metric)[quantity.kind](quantity.value, options);
  const text = written.replace(/^-/, "−");
  // "once in 850 miles" is words: only its number and unit stay together.
  if (quantity.kind === "contactRate") return text.replace(/ \S+$/, unbroken);
  return unbroken(text).replaceAll(`${noBreak}(`, " (");
}
