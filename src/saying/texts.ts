import * as messages from "../words/compiled/saying.ts";
import { texts as first } from "../words/compiled/texts/first.ts";
import {
  isQuantity,
  type Message,
  type MessageTexts,
  type MessageValue,
  type Quantity,
  type Sentence,
  type Words,
  withStart,
} from "../words/message.ts";
import { inPlaces, placeFor, withoutPlaces } from "./places.ts";

/** What the first screen may say, and whatever is added. */
const texts: { [code: string]: MessageTexts[string] } = { ...first };

/** Messages that can be said from now on. */
export function addTexts(more: MessageTexts): void {
  Object.assign(texts, more);
}

/** A message, or several of them, in words, its quantities apart from them. */
export function worded(said: Words | Quantity | Sentence): readonly (string | Quantity)[] {
  const quantities: Quantity[] = [];
  return inPlaces(String(textOf(said, quantities)), quantities);
}

/** Words that hold no quantity, as a text. */
export function said(words: Words): string {
  if (typeof words === "string") return words;
  return worded(words)
    .filter((part) => typeof part === "string")
    .join("");
}

function textOf(value: MessageValue, quantities: Quantity[]): unknown {
  if (typeof value === "string") return withoutPlaces(value);
  if (typeof value !== "object") return value ?? "";
  if (isSentence(value)) return value.map((part) => textOf(part, quantities)).join("");
  return isQuantity(value) ? placeFor(value, quantities) : messageText(value, quantities);
}

function isSentence(value: Message | Quantity | Sentence): value is Sentence {
  return Array.isArray(value);
}

function messageText(message: Message, quantities: Quantity[]): string {
  const { code, values = {}, start } = message;
  const text = texts[code] ?? messages.notKnownHere;
  const told =
    typeof text === "string"
      ? text
      : text(
          Object.fromEntries(
            Object.entries(values).map(([name, value]) => [name, textOf(value, quantities)]),
          ),
        );
  return start === undefined ? told : withStart(told, start);
}

/** A message of those who say them, as a sentence: its quantities stay quantities, to be shown in the person's own unit. */
export function sentenceOf<Values extends object>(
  message: (values: Values) => string,
  values: { readonly [Name in keyof Values]: Values[Name] | Message | Quantity | Sentence },
): Sentence {
  const quantities: Quantity[] = [];
  const told = Object.entries<MessageValue>(values as Record<string, MessageValue>).map(
    ([name, value]) => [name, textOf(value, quantities)],
  );
  return inPlaces(message(Object.fromEntries(told)), quantities);
}
