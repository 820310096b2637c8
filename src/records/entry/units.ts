/**
 * Exact conversions (NIST Special Publication 811, Appendix B.8). Records and physics hold mm, kg, N,
 * N/mm, N·s/mm and degrees; these turn them into what a person reads and types, and back.
 */

/** The unit a person works in: millimetres, or inches with the pound units that go with them. */
export type LengthUnit = "mm" | "in";

export const mmPerInch = 25.4;
export const mmPerCentimetre = 10;
const kgPerPound = 0.45359237;
/** The pound-force, from the pound and standard gravity 9.80665 m/s². */
export const newtonsPerPoundForce = 4.4482216152605;
/** 0.175126835246476…: one lbf/in in N/mm; the same factor turns lbf·s/in into N·s/mm. */
const newtonsPerMmPerPoundForcePerInch = newtonsPerPoundForce / mmPerInch;
export const joulesPerFootPoundForce = (newtonsPerPoundForce * 12 * mmPerInch) / 1000;
/** The international mile, exactly. */
const kilometresPerMile = 1.609344;
export const pascalsPerPoundForcePerSquareInch = newtonsPerPoundForce / (mmPerInch / 1000) ** 2;

/** A quantity and the units it is typed and shown in, with the factor to the model's unit. */
const factors = {
  mm: 1,
  cm: mmPerCentimetre,
  in: mmPerInch,
  kg: 1,
  lb: kgPerPound,
  N: 1,
  lbf: newtonsPerPoundForce,
  "N/mm": 1,
  "lbf/in": newtonsPerMmPerPoundForcePerInch,
  "N·s/mm": 1,
  "lbf·s/in": newtonsPerMmPerPoundForcePerInch,
  "km/h": 1,
  mph: kilometresPerMile,
  km: 1,
  mi: kilometresPerMile,
  "per km": 1,
  "per mile": 1 / kilometresPerMile,
  deg: 1,
  "": 1,
} as const;

/** Every unit something can be typed in. "" is a plain number. */
export type EntryUnit = Exclude<keyof typeof factors, "cm" | "km" | "mi">;
export type TypedUnit = keyof typeof factors;

/** A value in `unit` turned into the model's unit of the same quantity. */
export function toModel(value: number, unit: TypedUnit): number {
  return value * factors[unit];
}

/** A value in the model's unit turned into `unit`. */
export function fromModel(value: number, unit: TypedUnit): number {
  return value / factors[unit];
}

/**
 * The shortest plain decimal that reads back as exactly this number: no exponent, a point for the
 * decimal mark. Finite numbers only.
 */
export function plainDecimal(value: number): string {
  const text = String(value);
  const match = /^(-?)(\d+)(?:\.(\d+))?e([+-]\d+)$/.exec(text);
  if (match === null) return Object.is(value, -0) ? "0" : text;
  const sign = match[1] ?? "";
  const whole = match[2] ?? "";
  const decimals = match[3] ?? "";
  const exponent = Number(match[4]);
  const digits = whole + decimals;
  const point = whole.length + exponent;
  if (point <= 0) return `${sign}0.${"0".repeat(-point)}${digits}`;
  return `${sign}${digits.padEnd(point, "0")}`;
}
