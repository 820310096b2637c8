/** What a number in a sentence measures; its value is in the model's unit for that kind. */
export type QuantityKind =
  | "length" // mm
  | "spacer" // mm, a height that can be bought, told as it is sold
  | "angle" // deg
  | "rate" // N/mm
  | "damping" // N·s/mm
  | "stiffnessClass" // N/mm, one of the preferred numbers that name a stop's stiffness
  | "force" // N
  | "mass" // kg
  | "energy" // J
  | "speed" // mm/s
  | "roadSpeed" // km/h
  | "contactRate" // contacts per km
  | "acceleration" // g
  | "share" // 0…1, shown as a percentage
  | "ratio" // wheel per stop, shown as "2.74 : 1"
  | "count"; // plain number

export interface Quantity {
  readonly kind: QuantityKind;
  readonly value: number;
}

/**
 * What is to be said, by the code of its message in the catalogue, "physics/verdict.leftAndRightAgree", with
 * its values. Who shows it puts it into words, with the numbers in the person's own unit.
 */
export interface Message {
  readonly code: string;
  readonly values?: { readonly [name: string]: MessageValue };
  /** It stands at the start of a sentence, or within one: its first letter follows. */
  readonly start?: "capital" | "small";
}

/** A message of the catalogue, or what a person has typed. */
export type Words = string | Message;

/** Messages, quantities and typed words one after the other. */
export type Sentence = readonly (Words | Quantity)[];

/** A sentence as it is stored and sent: in words, since another version may have other messages, and in quantities. */
export type StoredSentence = readonly (string | Quantity)[];

/** Puts a name into words; it holds no quantity. */
export type SayName = (name: Words) => string;

/** Puts what is said into words, for what is stored as text. */
export type Say = (said: Words | Sentence) => string;

export type MessageValue = Words | number | boolean | undefined | Quantity | Sentence;

/** What puts messages into words: a text, or a function of the values as texts, by their codes. */
export type MessageTexts = {
  readonly [code: string]: string | ((values: { readonly [name: string]: unknown }) => string);
};

export function isQuantity(part: Words | Quantity): part is Quantity {
  return typeof part === "object" && "kind" in part;
}

/** The text with its first letter large or small. */
export function withStart(text: string, start: "capital" | "small"): string {
  const first = text.charAt(0);
  return (start === "capital" ? first.toUpperCase() : first.toLowerCase()) + text.slice(1);
}
