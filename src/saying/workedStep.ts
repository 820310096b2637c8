import type { Sentence, Words } from "../physics/sentence.ts";
import type { FormulaStep, Named, Renamed, Terms, TermValue } from "../physics/worked/index.ts";
import type { Quantity, StoredSentence } from "../words/message.ts";
import { said, worded } from "./texts.ts";

/** The formula of a line, in its letters. */
export function inLetters(step: FormulaStep): string {
  return "worked" in step ? said(step.formula) : renamed(said(step.formula.text), step.terms);
}

/** The same with numbers put in for the letters. */
export function inNumbers(step: FormulaStep): StoredSentence {
  if ("worked" in step) return worded(step.worked);
  const { text, by, unit } = step.formula;
  const expression = by === undefined ? rightHandSide(said(text)) : plainText(by);
  const tail = unit === undefined ? "" : ` ${unit}`;
  return worded([...putIn(expression, step.terms), tail, step.note]);
}

function plainText(words: Words | Sentence): string {
  return worded(words)
    .filter((part) => typeof part === "string")
    .join("");
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

/** Any of the letters, the longest first, so that z_c is not taken for z. */
function anyOf(letters: readonly string[]): string {
  return [...letters]
    .sort((one, other) => other.length - one.length)
    .map((letter) => letter.replace(/[.*+?^${}()|[\]\\]/g, "\\$&"))
    .join("|");
}

type Term = TermValue | Renamed | Named;

function isRenamed(term: Term): term is Renamed {
  return typeof term === "object" && "letter" in term;
}

function isNamed(term: Term): term is Named {
  return typeof term === "object" && "name" in term;
}

function renamed(text: string, terms: Terms): string {
  const called = new Map(
    Object.entries(terms).flatMap(([letter, term]) =>
      isRenamed(term) ? [[letter, said(term.letter)]] : [],
    ),
  );
  if (called.size === 0) return text;
  const letters = new RegExp(`${notBefore}(?:${anyOf([...called.keys()])})${notAfter}`, "gu");
  return text.replace(letters, (letter) => called.get(letter) ?? letter);
}

function putIn(expression: string, terms: Terms): Sentence {
  const values = new Map(
    Object.entries(terms).map(([letter, term]): [string, TermValue] => {
      if (isNamed(term)) return [said(term.name), term.value];
      return [letter, isRenamed(term) ? (term.value ?? "") : term];
    }),
  );
  const letters = anyOf([...values.keys()]);
  if (letters === "") return [spaced(expression)];
  // 2σ² is one factor, also behind a fraction's bar.
  const factor = new RegExp(`(?<![\\p{L}\\p{Nd}_])(\\d+)((?:${letters})[²³]?)${notAfter}`, "gu");
  const written = expression.replace(factor, "($1·$2)");
  const parts: (Words | Quantity)[] = [];
  let end = 0;
  for (const found of written.matchAll(new RegExp(`${notBefore}(?:${letters})${notAfter}`, "gu"))) {
    const [letter] = found;
    parts.push(spaced(written.slice(end, found.index)));
    end = found.index + letter.length;
    const isRaised = /^[²³]/.test(written.slice(end));
    parts.push(...numberOf(values.get(letter) ?? "", isRaised));
  }
  return [...parts, spaced(written.slice(end))];
}

function numberOf(value: TermValue, isRaised: boolean): Sentence {
  if (typeof value === "string" || "code" in value) return [value];
  if (!("kind" in value)) return value;
  const isBare = value.kind === "count" && value.value >= 1e-4 && value.value < 1e6;
  return isRaised && !isBare ? ["(", value, ")"] : [value];
}

/** Room around what joins two numbers; a comma between them could be taken for a decimal one. */
function spaced(text: string): string {
  return text.replace(/\s*([·/])\s*/g, " $1 ").replace(/,\s*/g, "; ");
}
