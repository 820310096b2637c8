import * as messages from "../words/compiled/physics.ts";
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
 * Words and numbers kept apart, so that a screen can show the numbers in the person's own unit.
 * A reading is named in plain words by the words themselves, never by its id.
 */
export type Sentence = readonly (string | Quantity)[];

export function length(value: number): Quantity {
  return { kind: "length", value };
}

/** The height of a spacer that can be bought, mm. */
export function spacer(value: number): Quantity {
  return { kind: "spacer", value };
}

/** A margin, mm, in words: what it is to spare, or short by. */
export function margin(value: number): Sentence {
  return sentenceOf(messages.short, { value: length(Math.abs(value)), isValue: value < 0 });
}

/** The 95 % range of a margin, in brackets; each end says its side where one is short. Empty where there is none. */
export function marginRange(range: readonly [number, number] | null): Sentence {
  if (range === null) return [];
  const [least, greatest] = range;
  const end = least < 0 ? margin : (value: number): Sentence => [length(value)];
  return sentenceOf(messages.n95To, { end: end(least), end2: end(greatest) });
}

const modelUnits: { readonly [Kind in QuantityKind]: (value: number) => string } = {
  length: (mm) => `${mm.toFixed(1)} mm`,
  spacer: (mm) => `${Number(mm.toFixed(1))} mm`,
  angle: (degrees) => `${degrees.toFixed(1)}°`,
  rate: (rate) => `${Number(rate.toPrecision(3))} N/mm`,
  damping: (damping) => `${Number(damping.toPrecision(3))} N·s/mm`,
  stiffnessClass: (rate) => `${rate} N/mm`,
  force: (newtons) => `${newtons.toFixed(0)} N`,
  mass: (kilograms) => `${kilograms.toFixed(0)} kg`,
  energy: (joules) => `${joules.toFixed(1)} J`,
  speed: (speed) => `${speed.toFixed(0)} mm/s`,
  roadSpeed: (speed) => `${Number(speed.toPrecision(3))} km/h`,
  contactRate: (rate) => messages.perKm({ number: Number(rate.toPrecision(3)) }),
  acceleration: (acceleration) => `${acceleration.toFixed(2)} g`,
  share: (share) => `${(100 * share).toFixed(0)} %`,
  ratio: (ratio) => `${ratio.toFixed(2)} : 1`,
  count: (count) => `${Number(count.toPrecision(3))}`,
};

/** Whether a sentence that was stored, perhaps by a later version, holds only what this one can show. */
export function isKnownSentence(sentence: Sentence): boolean {
  return sentence.every((part) => typeof part === "string" || Object.hasOwn(modelUnits, part.kind));
}

/** The sentence as plain text in the model's own units. */
export function inModelUnits(sentence: Sentence): string {
  return sentence
    .map((part) => (typeof part === "string" ? part : modelUnits[part.kind](part.value)))
    .join("");
}

/** Stand in a message for what is no text; they are taken out of texts that hold them. */
const [placeStart, placeEnd] = ["\uE000", "\uE001"];
const places = new RegExp(`[${placeStart}${placeEnd}]`, "g");

/** The message in parts: its words, and in their places the values that are no words. */
export function parted<Values extends object, Part>(
  message: (values: Values) => string,
  values: { readonly [Name in keyof Values]: unknown },
  isPart: (value: unknown) => value is Part,
): (string | Part)[] {
  const parts: Part[] = [];
  const marked = Object.fromEntries(
    Object.entries(values).map(([name, value]) => {
      if (typeof value === "string") return [name, value.replace(places, "")];
      if (!isPart(value)) return [name, value ?? ""];
      parts.push(value);
      return [name, `${placeStart}${parts.length - 1}${placeEnd}`];
    }),
  ) as Values;
  return message(marked)
    .split(new RegExp(`${placeStart}(\\d+)${placeEnd}`))
    .map((text, index) => (index % 2 === 0 ? text : (parts[Number(text)] ?? "")))
    .filter((part) => part !== "");
}

/** A message as a sentence: its quantities stay quantities, to be shown in the person's own unit. */
export function sentenceOf<Values extends object>(
  message: (values: Values) => string,
  values: { readonly [Name in keyof Values]: Values[Name] | Quantity | Sentence },
): Sentence {
  const isPart = (value: unknown): value is Quantity | Sentence =>
    typeof value === "object" && value !== null;
  return parted(message, values, isPart).flatMap(
    (part): Sentence => (typeof part === "string" || "kind" in part ? [part] : part),
  );
}

/** The text with a capital at its start. */
export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
