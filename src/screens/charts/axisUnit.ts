import { fromModel, type LengthUnit, type TypedUnit } from "../../records/entry/units.ts";

/** The unit of an axis: what is written beside it, and its numbers from the model's. */
export interface AxisUnit {
  readonly suffix: string;
  of(value: number): number;
}

function axisUnit(suffix: TypedUnit): AxisUnit {
  return { suffix, of: (value) => fromModel(value, suffix) };
}

export function lengthAxis(unit: LengthUnit): AxisUnit {
  return axisUnit(unit);
}

export function forceAxis(unit: LengthUnit): AxisUnit {
  return axisUnit(unit === "in" ? "lbf" : "N");
}

export const accelerationAxis: AxisUnit = { suffix: "g", of: (value) => value };
export const timeAxis: AxisUnit = { suffix: "s", of: (value) => value };

/** 12000 as "12 000" with narrow spaces, a true minus, no needless zeros. */
export function tickText(value: number): string {
  const [whole = "", decimals] = String(Math.abs(value)).split(".");
  const spaced = whole.replace(/\B(?=(\d{3})+$)/g, "\u202f");
  return `${value < 0 ? "−" : ""}${spaced}${decimals === undefined ? "" : `.${decimals}`}`;
}
