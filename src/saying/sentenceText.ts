import {
  isRange,
  type MessageValue,
  type Quantity,
  type Sentence,
  type Words,
} from "../physics/sentence.ts";
import type { LengthUnit } from "../records/entry/units.ts";
import { noBreak, quantityText, type TextOptions } from "./quantityText.ts";
import { worded } from "./texts.ts";

/** A message, or several of them, in words and in the person's own units. */
export function sentenceText(
  said: Words | Quantity | Sentence,
  unit: LengthUnit,
  options: TextOptions = {},
): string {
  return worded(said)
    .map((part) => (typeof part === "string" ? part : quantityText(part, unit, options)))
    .join("")
    .replaceAll("± ", `±${noBreak}`);
}

/**
 * A sentence as the first look needs it: without the 95 % ranges in brackets, which stand with the
 * figures themselves.
 */
export function withoutRanges(sentence: Sentence): Sentence {
  const without = (value: MessageValue): MessageValue => {
    if (Array.isArray(value)) return value.map(without) as Sentence;
    if (typeof value !== "object" || !("code" in value)) return value;
    if (isRange(value)) return "";
    const values = Object.entries(value.values ?? {}).map(([name, each]) => [name, without(each)]);
    return { ...value, values: Object.fromEntries(values) };
  };
  return without(sentence) as Sentence;
}

/** Of several sentences the first alone. */
export function firstSentence(said: Words | Sentence): Sentence {
  const first: (string | Quantity)[] = [];
  const parts = worded(said);
  for (const [index, part] of parts.entries()) {
    const next = parts[index + 1];
    const text = typeof part === "string" && typeof next === "string" ? part + next : part;
    const end = typeof text === "string" ? text.search(/\.(?= )/) : -1;
    if (typeof part === "string" && end >= 0 && end < part.length) {
      return [...first, part.slice(0, end + 1)];
    }
    first.push(part);
  }
  return parts;
}
