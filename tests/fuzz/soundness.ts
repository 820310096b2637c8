import type { Outcome } from "../../src/physics/outcome.ts";
import { inModelUnits } from "../../src/saying/modelUnits.ts";

/* What must hold of whatever an input gives: a value of finite numbers, or a sentence for a person. */

function isSound(value: unknown): boolean {
  if (typeof value === "number") return Number.isFinite(value);
  if (typeof value !== "object" || value === null) return true;
  if (Array.isArray(value)) return value.every(isSound);
  if (value instanceof Map) return [...value.values()].every(isSound);
  if (ArrayBuffer.isView(value)) {
    return (value as unknown as Float64Array).every((number) => Number.isFinite(number));
  }
  for (const name in value) if (!isSound(Reflect.get(value, name))) return false;
  return true;
}

/** The path of a number that is not finite; null where there is none. */
export function unsoundNumber(value: unknown): string | null {
  if (isSound(value)) return null;
  if (typeof value !== "object" || value === null) return "";
  const entries = value instanceof Map ? [...value] : Object.entries(value);
  for (const [name, item] of entries) {
    const found = unsoundNumber(item);
    if (found !== null) return `.${String(name).slice(0, 40)}${found}`;
  }
  return "";
}

const notForPeople = /NaN|Infinity|undefined|\[object/;

/** What is wrong with a fault's sentence, of an input that may itself hold such words; null if nothing. */
export function unsoundSentence(
  {
    code,
    sentence,
  }: { readonly code: string; readonly sentence: Parameters<typeof inModelUnits>[0] },
  input: string,
): string | null {
  if (code === "") return "a fault without a code";
  const words = inModelUnits(sentence);
  if (words.trim().length < 8) return `“${words}” is no sentence`;
  const found = notForPeople.exec(words)?.[0];
  if (found !== undefined && !input.includes(found)) return `“${words}” holds ${found}`;
  return words.length > 3000 ? `a sentence of ${words.length} characters` : null;
}

export type Fault = string | null;

/** What is wrong with an outcome; null if nothing. */
export function unsoundOutcome(outcome: Outcome<unknown>, input: string): Fault {
  if (!outcome.ok) return unsoundSentence(outcome.fault, input);
  const path = unsoundNumber(outcome.value);
  return path === null ? null : `the value has no number at ${path}`;
}
