import { isQuantity, withStart } from "../physics/sentence.ts";
import * as messages from "../words/compiled/saying.ts";
import type {
  Message,
  MessageTexts,
  MessageValue,
  Quantity,
  Sentence,
  Words,
} from "../words/message.ts";
import { Places } from "./places.ts";

const texts = new Map<string, MessageTexts[string]>();

/** Messages that can be said from now on. */
export function addTexts(more: MessageTexts): void {
  for (const [code, text] of Object.entries(more)) texts.set(code, text);
}

/** A message, or several of them, in words, its quantities apart from them. */
export function worded(said: Words | Quantity | Sentence): readonly (string | Quantity)[] {
  const places = new Places<Quantity>();
  return places.split(String(textOf(said, places)));
}

/** Words that hold no quantity, as a text. */
export function said(words: Words): string {
  if (typeof words === "string") return words;
  return worded(words)
    .filter((part) => typeof part === "string")
    .join("");
}

function textOf(value: MessageValue, places: Places<Quantity>): unknown {
  if (typeof value === "string") return places.plain(value);
  if (typeof value !== "object") return value ?? "";
  if (isSentence(value)) return value.map((part) => textOf(part, places)).join("");
  return isQuantity(value) ? places.mark(value) : messageText(value, places);
}

function isSentence(value: Message | Quantity | Sentence): value is Sentence {
  return Array.isArray(value);
}

function messageText(message: Message, places: Places<Quantity>): string {
  const { code, values = {}, start } = message;
  const text = texts.get(code) ?? messages.notKnownHere;
  const told =
    typeof text === "string"
      ? text
      : text(
          Object.fromEntries(
            Object.entries(values).map(([name, value]) => [name, textOf(value, places)]),
          ),
        );
  return start === undefined ? told : withStart(told, start);
}

/** A message of those who say them, as a sentence: its quantities stay quantities, to be shown in the person's own unit. */
export function sentenceOf<Values extends object>(
  message: (values: Values) => string,
  values: { readonly [Name in keyof Values]: Values[Name] | Message | Quantity | Sentence },
): Sentence {
  const places = new Places<Quantity>();
  const told = Object.entries<MessageValue>(values as Record<string, MessageValue>).map(
    ([name, value]) => [name, textOf(value, places)],
  );
  return places.split(message(Object.fromEntries(told)));
}
