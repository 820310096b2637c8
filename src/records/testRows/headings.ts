import type { TestQuantity, TestUnit } from "./testFile.ts";
import { testUnitOf } from "./testUnits.ts";

/** What one heading says: quantity and unit as far as it does; `unitText` is the unit as written. */
export interface Heading {
  readonly text: string;
  readonly quantity: TestQuantity | null;
  readonly unit: TestUnit | null;
  readonly unitText: string;
}

const words: readonly (readonly [TestQuantity, RegExp])[] = [
  ["speed", /^(?:speed|spd|velocity|vel|geschwindigkeit|geschw|vitesse|velocidad|velocità|v)$/],
  ["force", /^(?:force|load|loadcell|kraft|effort|fuerza|carga|forza|carico|f)$/],
  ["time", /^(?:time|zeit|temps|tiempo|tempo|t)$/],
  [
    "depth",
    /^(?:depth|compression|comp|deflection|defl|displacement|displ|disp|travel|position|pos|stroke|crosshead|lvdt|weg|hub|einfederung|course|d[eé]placement|enfoncement|desplazamiento|spostamento|corsa|x)$/,
  ],
];
/** No heading is longer: a sentence about the test may hold the same words. */
const longestHeading = 60;
const mostWords = 6;

/** A number and its unit, as in "depth of 16 m": a statement about the test, no heading. */
const statement = /\d\s+\S+$/;

/** Quantity by the heading's words, unit in brackets, as its last word, or after "/" or "_". */
export function readHeading(cell: string): Heading {
  const text = cell.trim().replace(/^"|"$/g, "");
  const bracketed = /^(.*?)[[({]([^\])}]*)[\])}](.*)$/.exec(text);
  if (bracketed !== null) {
    return heading(text, `${bracketed[1] ?? ""} ${bracketed[3] ?? ""}`, bracketed[2] ?? "");
  }
  const last = /^(.+)\s+(\S+)$/.exec(text) ?? /^(.+?)(?:\/|_)([^_]+)$/.exec(text);
  if (last === null || testUnitOf(last[2] ?? "") === null) return heading(text, text, "");
  return statement.test(text)
    ? { text, quantity: null, unit: null, unitText: "" }
    : heading(text, last[1] ?? "", last[2] ?? "");
}

function heading(text: string, name: string, unitText: string): Heading {
  const parts = name
    .toLowerCase()
    .split(/[^\p{L}]+/u)
    .filter((part) => part !== "");
  const isHeading = text.length <= longestHeading && parts.length <= mostWords;
  const found = isHeading && words.find(([, word]) => parts.some((part) => word.test(part)));
  return {
    text,
    quantity: found ? found[0] : null,
    unit: testUnitOf(unitText),
    unitText: unitText.trim(),
  };
}
