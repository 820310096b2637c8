import { withStart } from "../physics/sentence.ts";
import * as messages from "../words/compiled/saying.ts";
import type {
  Message,
  MessageTexts,
  MessageValue,
  Quantity,
  Sentence,
  Words,
} from "../words/message.ts";

const texts = new Map<string, MessageTexts[string]>();

/** Messages that can be said from now on. */
export function addTexts(more: MessageTexts): void {
  for (const [code, text] of Object.entries(more)) texts.set(code, text);
}

/** Stand in a message for quantities; they are taken out of texts that hold them. */
const [placeStart, placeEnd] = ["\uE000", "\uE001"];
const places = new RegExp(`[${placeStart}${placeEnd}]`, "g");

/** A message, or several of them, in words, its quantities apart from them. */
export function worded(said: Words | Quantity | Sentence): readonly (string | Quantity)[] {
  const quantities: Quantity[] = [];

  const textOf = (value: MessageValue): unknown => {
    if (typeof value === "string") return value.replace(places, "");
    if (typeof value !== "object") return value;
    if ("code" in value) return messageText(value);
    if ("kind" in value) {
      quantities.push(value);
      return `${placeStart}${quantities.length - 1}${placeEnd}`;
    }
    return value.map(textOf).join("");
  };

  const messageText = ({ code, values = {}, start }: Message): string => {
    const text = texts.get(code) ?? messages.notKnownHere;
    const told =
      typeof text === "string"
        ? text
        : text(
            Object.fromEntries(
              Object.entries(values).map(([name, value]) => [name, textOf(value)]),
            ),
          );
    return start === undefined ? told : withStart(told, start);
  };

  return String(textOf(said))
    .split(new RegExp(`${placeStart}(\\d+)${placeEnd}`))
    .map((text, index) => (index % 2 === 0 ? text : (quantities[Number(text)] ?? "")))
    .filter((part) => part !== "");
}

/** Words that hold no quantity, as a text. */
export function said(words: Words): string {
  if (typeof words === "string") return words;
  return worded(words)
    .filter((part) => typeof part === "string")
    .join("");
}
