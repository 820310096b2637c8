import type { Formula } from "../formula.ts";
import type { Quantity, Sentence } from "../sentence.ts";
import type { FormulaStep } from "./workedFigure.ts";

/** What is put in for a letter: a number, one as it is always written, or one with its own factor or unit. */
type Value = Quantity | string | Sentence;

/** A term that goes by another letter here; without a value it is only called so. */
interface Renamed {
  readonly letter: string;
  readonly value?: Quantity;
}

/** By the letters of the formula. */
export interface Terms {
  readonly [letter: string]: Value | Renamed;
}

/**
 * One line of a working: the formula, the same with the terms put in, and what the kernel gave for these
 * terms. `note` is told after the numbers.
 */
export function step(
  formula: string | Formula,
  terms: Terms,
  result: Quantity,
  note = "",
): FormulaStep {
  const { text, by, unit }: Formula = typeof formula === "string" ? { text: formula } : formula;
  const tail = `${unit === undefined ? "" : ` ${unit}`}${note}`;
  return {
    formula: renamed(text, terms),
    worked: joined([...putIn(by ?? rightHandSide(text), terms), tail]),
    result,
  };
}

/** A line that tells how a number was found where it is no sum of others: by simulation or by search. */
export function told(formula: string, worked: Sentence, result: Quantity): FormulaStep {
  return { formula, worked, result };
}

/** What stands behind "=", or behind the name and its colon, up to a remark. */
function rightHandSide(text: string): string {
  const [expression = ""] = split(text.slice(text.indexOf(": ") + 1), ", ");
  return (split(expression, " = ").at(-1) ?? "").trim();
}

/** Parts of a text between separators that stand in no brackets. */
function split(text: string, separator: string): string[] {
  const parts: string[] = [];
  let depth = 0;
  let start = 0;
  for (let place = 0; place < text.length; place++) {
    if ("([".includes(text.charAt(place))) depth++;
    if (")]".includes(text.charAt(place))) depth--;
    if (depth === 0 && text.startsWith(separator, place)) {
      parts.push(text.slice(start, place));
      start = place + separator.length;
    }
  }
  return [...parts, text.slice(start)];
}

const notBefore = "(?<![\\p{L}\\p{Nd}_])";
const notAfter = "(?![\\p{L}\\p{Nd}_\\u0302])";

/** The letters, the longest first, so that z_c is not taken for z. */
function lettersOf(terms: Terms): string {
  return Object.keys(terms)
    .sort((one, other) => other.length - one.length)
    .map((letter) => letter.replace(/[.*+?^${}()|[\]\\]/g, "\\$&"))
    .join("|");
}

function renamed(text: string, terms: Terms): string {
  const called = Object.fromEntries(
    Object.entries(terms).filter(([, term]) => typeof term === "object" && "letter" in term),
  ) as { readonly [letter: string]: Renamed };
  if (Object.keys(called).length === 0) return text;
  const letters = new RegExp(`${notBefore}(?:${lettersOf(called)})${notAfter}`, "gu");
  return text.replace(letters, (letter) => called[letter]?.letter ?? letter);
}

function putIn(expression: string, terms: Terms): Sentence {
  const letters = lettersOf(terms);
  if (letters === "") return [spaced(expression)];
  // 2σ² is one factor, also behind a fraction's bar.
  const factor = new RegExp(`(?<![\\p{L}\\p{Nd}_])(\\d+)((?:${letters})[²³]?)${notAfter}`, "gu");
  const written = expression.replace(factor, "($1·$2)");
  const parts: (string | Quantity)[] = [];
  let end = 0;
  for (const found of written.matchAll(new RegExp(`${notBefore}(?:${letters})${notAfter}`, "gu"))) {
    const [letter] = found;
    parts.push(spaced(written.slice(end, found.index)));
    end = found.index + letter.length;
    const isRaised = /^[²³]/.test(written.slice(end));
    parts.push(...numberOf(terms[letter], isRaised));
  }
  return [...parts, spaced(written.slice(end))];
}

function numberOf(term: Value | Renamed | undefined, isRaised: boolean): Sentence {
  if (term === undefined) return [];
  if (typeof term === "string") return [term];
  if ("letter" in term) return term.value === undefined ? [] : numberOf(term.value, isRaised);
  if (!("kind" in term)) return term;
  const isBare = term.kind === "count" && term.value >= 1e-4 && term.value < 1e6;
  return isRaised && !isBare ? ["(", term, ")"] : [term];
}

/** Room around what joins two numbers; a comma between them could be taken for a decimal one. */
function spaced(text: string): string {
  return text.replace(/\s*([·/])\s*/g, " $1 ").replace(/,\s*/g, "; ");
}

/** Neighbouring words as one. */
function joined(parts: Sentence): Sentence {
  const whole: (string | Quantity)[] = [];
  for (const part of parts) {
    const last = whole.at(-1);
    if (typeof part === "string" && typeof last === "string") whole[whole.length - 1] = last + part;
    else if (part !== "") whole.push(part);
  }
  return whole;
}
