import type { Quantity, QuantityKind, Sentence, Words } from "../physics/sentence.ts";
import * as messages from "../words/compiled/saying.ts";
import type { StoredSentence } from "../words/message.ts";
import { worded } from "./texts.ts";

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
export function isKnownSentence(sentence: StoredSentence): boolean {
  return sentence.every((part) => typeof part === "string" || Object.hasOwn(modelUnits, part.kind));
}

/** A message, or several of them, in words and in the model's own units. */
export function inModelUnits(said: Words | Quantity | Sentence): string {
  return worded(said)
    .map((part) => (typeof part === "string" ? part : modelUnits[part.kind](part.value)))
    .join("");
}
