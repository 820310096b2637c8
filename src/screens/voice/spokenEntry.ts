import { parseText } from "../../records/entry/entry.ts";
import type { EntryKind } from "../../records/entry/readingCatalogue.ts";
import type { EntryUnit, TypedUnit } from "../../records/entry/units.ts";
import * as messages from "../../words/compiled/screens/voice.ts";

/** 0 to 99 in words; beyond that the figures, which a voice says as well. */
function numberWords(value: number): string {
  if (value > 99 || !Number.isInteger(value)) return String(value);
  const units = messages.numberWord({ number: `n${value < 20 ? value : value % 10}` });
  if (value < 20) return units;
  const tens = `n${Math.floor(value / 10)}`;
  return messages.tensWord({ tens, hasUnits: value % 10 !== 0, units });
}

const parts: { readonly [denominator: number]: readonly [one: string, many: string] } = {
  2: [messages.half, messages.halves],
  4: [messages.quarter, messages.quarters],
  8: [messages.eighth, messages.eighths],
  16: [messages.sixteenth, messages.sixteenths],
  32: [messages.thirtySecond, messages.thirtySeconds],
  64: [messages.sixtyFourth, messages.sixtyFourths],
};

const units: { readonly [Unit in TypedUnit]: readonly [one: string, many: string] } = {
  mm: [messages.millimeter, messages.millimeters],
  cm: [messages.centimeter, messages.centimeters],
  in: [messages.inch, messages.inches],
  kg: [messages.kilogram, messages.kilograms],
  lb: [messages.pound, messages.pounds],
  N: [messages.newton, messages.newtons],
  lbf: [messages.pound, messages.pounds],
  "N/mm": [messages.newtonPerMillimeter, messages.newtonsPerMillimeter],
  "lbf/in": [messages.poundPerInch, messages.poundsPerInch],
  "N·s/mm": [messages.newtonSecondPerMillimeter, messages.newtonSecondsPerMillimeter],
  "lbf·s/in": [messages.poundSecondPerInch, messages.poundSecondsPerInch],
  "km/h": [messages.kilometerPerHour, messages.kilometersPerHour],
  mph: [messages.milePerHour, messages.milesPerHour],
  km: [messages.kilometer, messages.kilometers],
  mi: [messages.mile, messages.miles],
  "per km": [messages.perKilometer, messages.perKilometer],
  "per mile": [messages.perMile, messages.perMile],
  deg: [messages.degree, messages.degrees],
  "": ["", ""],
};

function fractionWords(numerator: number, denominator: number): string {
  const named = parts[denominator];
  if (!named) return messages.over({ numerator, denominator });
  return `${numberWords(numerator)} ${numerator === 1 ? named[0] : named[1]}`;
}

/** What was typed, as a person would say it; null while it can't be read. */
export function spokenEntry(text: string, kind: EntryKind, unit: EntryUnit): string | null {
  const parsed = parseText(text, kind, unit, "any");
  if (!parsed.ok) return null;
  const { typed, unit: understood, value } = parsed.value;
  const typedUnit: TypedUnit = typed.endsWith(" cm") ? "cm" : understood;
  const signed = (said: string) => (value < 0 ? messages.minus({ said }) : said).trim();
  const [one, many] = units[typedUnit];
  const fraction = /^[-+]?\s*(?:(\d+)[\s-]+)?(\d+)\s*\/\s*(\d+)/.exec(typed);
  if (fraction) {
    const said = fractionWords(Number(fraction[2]), Number(fraction[3]));
    if (!fraction[1] || Number(fraction[1]) === 0) {
      return signed(`${said} ${typedUnit === "in" ? messages.ofInch : many}`);
    }
    return signed(messages.and({ number: numberWords(Number(fraction[1])), said, many }));
  }
  const figures = /\d[\d.,]*|[.,]\d+/.exec(typed)?.[0].replace(",", ".") ?? "";
  const said = Number(figures);
  if (figures === "" || !Number.isFinite(said)) return null;
  return signed(`${said} ${said === 1 ? one : many}`);
}
