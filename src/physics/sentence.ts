import * as messages from "../words/compiled/physics.ts";
import type { Message, MessageValue, Quantity, Words } from "../words/message.ts";
import { withStart } from "../words/message.ts";

export type {
  Message,
  MessageValue,
  Quantity,
  QuantityKind,
  Say,
  Sentence,
  Words,
} from "../words/message.ts";

export function length(value: number): Quantity {
  return { kind: "length", value };
}

/** The height of a spacer that can be bought, mm. */
export function spacer(value: number): Quantity {
  return { kind: "spacer", value };
}

/** A margin, mm, in words: what it is to spare, or short by. */
export function margin(value: number): Message {
  return messages.short({ value: length(Math.abs(value)), isValue: value < 0 });
}

/** A 95 % range in brackets, to stand behind a figure. */
export function range95(least: Quantity | Message, greatest: Quantity | Message): Message {
  return messages.n95To({ end: least, end2: greatest });
}

/** Whether a message is a 95 % range in brackets. */
export function isRange({ code }: Message): boolean {
  return code === range95(length(0), length(0)).code;
}

/** The 95 % range of a margin, in brackets; each end says its side where one is short. Empty where there is none. */
export function marginRange(range: readonly [number, number] | null): Words {
  if (range === null) return "";
  const [least, greatest] = range;
  const end = least < 0 ? margin : length;
  return range95(end(least), end(greatest));
}

type Join = (values: { first: MessageValue; rest: MessageValue }) => Message;

/** Words one after the other, joined by a message of two. */
function joined(words: readonly Words[], join: Join): Words {
  return words.length === 0
    ? ""
    : words.slice(0, -1).reduceRight((rest, first) => join({ first, rest }), words.at(-1) ?? "");
}

/** "a, b, c". */
export function commaList(words: readonly Words[]): Words {
  return joined(words, messages.commas);
}

/** "a, b and c". */
export function andList(words: readonly Words[]): Words {
  return listEnding(words, messages.commasAnd);
}

/** "a, or b, or c". */
export function orList(words: readonly Words[]): Words {
  return joined(words, messages.commasOr);
}

/** "a; b; c". */
export function semicolonList(words: readonly Words[]): Words {
  return joined(words, messages.semicolons);
}

function listEnding(words: readonly Words[], join: Join): Words {
  const [last, ...before] = [...words].reverse();
  if (last === undefined || before.length === 0) return last ?? "";
  return join({ first: commaList(before.reverse()), rest: last });
}

/** "a · b · c". */
export function dotList(words: readonly Words[]): Words {
  return joined(words, messages.dots);
}

/** Each words once, at its first place. */
export function distinctWords<Said extends Words>(words: readonly Said[]): readonly Said[] {
  return [...new Map(words.map((each) => [JSON.stringify(each), each])).values()];
}

/** The words as they stand at the start of a sentence. */
export function capital<Said extends Words>(words: Said): Said {
  return started(words, "capital");
}

/** The words as they stand within a sentence. */
export function small<Said extends Words>(words: Said): Said {
  return started(words, "small");
}

function started<Said extends Words>(words: Said, start: "capital" | "small"): Said {
  if (typeof words !== "string") return { ...(words as Message), start } as Said;
  return withStart(words, start) as Said;
}
