import { evaluate } from "mathjs";
import type { FormulaStep } from "../../../src/physics/worked/step.ts";
import { inNumbers } from "../../../src/saying/workedStep.ts";

const degree = Math.PI / 180;

/** ISO 3:1973, series R5, from 10 to 1000: the number of step n, which stands for 10^(n/5). */
const preferred = [10, 16, 25, 40, 63, 100, 160, 250, 400, 630, 1000];

/** What the letters of a worked line mean; angles are in degrees, as they are written. */
const functions = {
  sin: (angle: number) => Math.sin(angle * degree),
  cos: (angle: number) => Math.cos(angle * degree),
  asin: (ratio: number) => Math.asin(ratio) / degree,
  acos: (ratio: number) => Math.acos(ratio) / degree,
  tan: (angle: number) => Math.tan(angle * degree),
  atan2: (y: number, x: number) => Math.atan2(y, x) / degree,
  ln: (value: number) => Math.log(value),
  u: (share: number) => {
    let [low, high] = [0, 100];
    for (let halving = 0; halving < 200; halving++) {
      const middle = (low + high) / 2;
      if ((1 + middle) * Math.exp(-middle) > share) low = middle;
      else high = middle;
    }
    return low;
  },
  R5: (step: number) => preferred[step - 5] ?? Number.NaN,
};

/** Lines that tell of a simulation or of draws, and are no sum of the numbers in them. */
const told = /^ms·z̈s|^static curve|over all draws$|^share of draws/;

const raised = "⁰¹²³⁴⁵⁶⁷⁸⁹";

function expressionOf(text: string): string {
  return text
    .replace(/, .*$/, "")
    .replaceAll("; ", ", ")
    .replace(/^u of /, "u")
    .replace(/ (m\/s²|m\/s|m)(?![\w(])/g, "")
    .replace(/[[{]/g, "(")
    .replace(/[\]}]/g, ")")
    .replace(/⁻?[⁰¹²³⁴⁵⁶⁷⁸⁹]+/g, (digits) => {
      const plain = [...digits].map((digit) => (digit === "⁻" ? "-" : raised.indexOf(digit)));
      return `^(${plain.join("")})`;
    })
    .replace(/√(\d+)/g, "sqrt($1)")
    .replaceAll("√", "sqrt")
    .replaceAll("2π", "(2*pi)")
    .replaceAll("π", "pi")
    .replaceAll("·", "*")
    .replaceAll("−", "-");
}

/** The sum in a worked line, its numbers whole; null where it tells how a number was found. */
function sumOf(step: FormulaStep): string | null {
  const worked = inNumbers(step);
  const words = worked.map((part) => (typeof part === "string" ? part : "")).join("");
  if (told.test(words)) return null;
  return worked.map((part) => (typeof part === "string" ? part : `(${part.value})`)).join("");
}

function evaluated(sum: string, { result }: FormulaStep): number {
  const inMetres = /m(\/s)?$/.test(sum) && (result.kind === "length" || result.kind === "speed");
  const parts = sum.split(" or ").map((part) => Number(evaluate(expressionOf(part), functions)));
  return (inMetres ? 1000 : 1) * Math.min(...parts);
}

/** What a worked line comes to by its own numbers; null where it tells how a number was found. */
export function evaluatedStep(step: FormulaStep): number | null {
  const sum = sumOf(step);
  return sum === null ? null : evaluated(sum, step);
}

/** Steps may round differently from the calculation's own order of operations: to 1e-9 of 1 mm or 1°. */
export function isOff(value: number, { result }: FormulaStep): boolean {
  const isPlace = result.kind === "length" || result.kind === "angle";
  const scale = Math.max(isPlace ? 1 : 1e-12, Math.abs(result.value));
  return !(Math.abs(value - result.value) / scale < 1e-9);
}

const wrong: Readonly<Record<string, string>> = {
  "+": "−",
  "−": "+",
  "·": "/",
  "/": "·",
  "sin ": "cos ",
  "sin(": "cos(",
  "cos ": "sin ",
  "cos(": "sin(",
};
const operators = / [+−·/] |(?<!a)(?:sin|cos)[ (]/g;

/** By its place among the operators of a line: does the line come to another result with this one wrong? */
export function noticesOperators(step: FormulaStep): readonly boolean[] {
  const sum = sumOf(step)?.replace(/, .*$/, "");
  if (sum === undefined) return [];
  return [...sum.matchAll(operators)].map((found) => {
    const [operator] = found;
    const changed = wrong[operator] ?? ` ${wrong[operator.trim()]} `;
    const end = found.index + operator.length;
    return isOff(evaluated(sum.slice(0, found.index) + changed + sum.slice(end), step), step);
  });
}
