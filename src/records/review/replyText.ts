import type { ReadingId } from "../../physics/readings/index.ts";
import { capital, type Sentence } from "../../physics/sentence.ts";
import { meanOf } from "../../physics/uncertainty/index.ts";
import type { CheckRecord, TypedReading } from "../check/checkRecord.ts";
import {
  quantityText,
  sentenceText,
  withoutRanges,
  withPlainSpaces,
} from "../entry/quantityText.ts";
import { sourceOf } from "../entry/readingSource.ts";
import type { LengthUnit } from "../entry/units.ts";
import { quantityKindOf } from "./oddReadings.ts";

/** One reading to take again, in the words of the person who will take it. */
export interface AskedReading {
  readonly id: ReadingId;
  readonly name: string;
  readonly reading: TypedReading | null;
  readonly why: Sentence | null;
  readonly how: string;
}

export interface ReplyContent {
  readonly record: CheckRecord;
  /** The unit that person works in. */
  readonly unit: LengthUnit;
  readonly from: string;
  readonly note: string;
}

const screens = "This is a screening check, not a certification.";
const beforeWork =
  "Before you go under the vehicle: level, firm ground, wheels chocked, never under a vehicle held by a jack alone.";
const beforeDriving =
  "Before driving with a changed stop: have the whole travel checked by hand by a qualified person. Never take out a spring that locates the axle. Springs and gas shocks hold energy. Local rules and the vehicle maker's instructions come first.";

/** What was read, as it was typed where that is known; what the person did not read is not said as read. */
function readText({ id, reading }: AskedReading, unit: LengthUnit): string {
  if (reading === null) return "";
  const source = sourceOf(reading);
  if (source !== "measured") {
    const value = { kind: quantityKindOf(id), value: meanOf(reading) };
    const text = quantityText(value, unit, { fractions: true });
    return source === "pack" ? `The parts library has ${text}.` : `It was estimated as ${text}.`;
  }
  const typed = reading.typed?.filter((text) => text.trim() !== "") ?? [];
  if (typed.length === reading.values.length && typed.length > 0) {
    return `You read ${listed(typed)}.`;
  }
  const quantity = { kind: quantityKindOf(id), value: meanOf(reading) };
  return `You read ${quantityText(quantity, unit, { fractions: true })}.`;
}

function listed(words: readonly string[]): string {
  return words.length < 2 ? words.join("") : `${words.slice(0, -1).join(", ")} and ${words.at(-1)}`;
}

function dayText(iso: string): string {
  const date = new Date(iso);
  return Number.isNaN(date.getTime())
    ? ""
    : date.toLocaleDateString("en-GB", { day: "numeric", month: "long", year: "numeric" });
}

function letter({ record, from, note }: ReplyContent, middle: readonly string[]): string {
  const { author, vehicle, axle, createdAt } = record;
  const name = author.name?.trim();
  const paragraphs = [
    name ? `Hello ${name},` : "Hello,",
    `Thank you for the check of your ${vehicle.label.trim()}, ${axle} axle, started on ${dayText(createdAt)}.`,
    ...middle,
    note.trim(),
    screens,
    from.trim(),
  ];
  return withPlainSpaces(`${paragraphs.filter((text) => text !== "").join("\n\n")}\n`);
}

/** Asks for readings again: which, what was read, why, and how to take them. */
export function askAgainText(content: ReplyContent, asked: readonly AskedReading[]): string {
  const { unit } = content;
  const list = asked.map((each, index) =>
    [
      `${asked.length > 1 ? `${index + 1}. ` : ""}${capital(each.name)}.`,
      readText(each, unit),
      each.why === null ? "" : sentenceText(each.why, unit, { fractions: true }),
      each.how === "" ? "" : `How to take it: ${each.how}`,
    ]
      .filter((text) => text !== "")
      .join(" "),
  );
  return letter(content, [
    asked.length === 1
      ? "For a sure answer, please take this reading again, twice if you can:"
      : `For a sure answer, please take these ${asked.length} readings again, each twice if you can:`,
    ...list,
    "Open this reply in Stopfit on the phone that made the check, by its link or as a file. It leads you to exactly these readings. Then send the check again.",
    beforeWork,
  ]);
}

/** The answer as it was computed: the verdict is never softened. */
export interface ToldAnswer {
  readonly words: string;
  readonly reason: Sentence;
  readonly advice: readonly Sentence[];
}

function answerText({ words, reason }: ToldAnswer, unit: LengthUnit): string {
  return `${words}. ${sentenceText(withoutRanges(reason), unit, { coarse: true })}`;
}

export function acceptText(content: ReplyContent, answer: ToldAnswer): string {
  const { unit } = content;
  const advice = answer.advice.map((sentence) => sentenceText(sentence, unit, { coarse: true }));
  return letter(content, [
    "The readings: accepted as you sent them.",
    `The part, computed with these readings: ${answerText(answer, unit)}`,
    ...(advice.length === 0 ? [] : [`What to do: ${[...new Set(advice)].join(" ")}`]),
    ...(answer.words === "It fits" ? [] : [beforeDriving]),
  ]);
}

/** Another part of the pack, and what was computed with it on this person's readings. */
export interface AdvisedPart {
  readonly name: string;
  /** As it is ordered: "HL-1060, revision B"; null where it has no number. */
  readonly part: string | null;
  readonly heightMm: number;
  readonly rateNPerMm: number | null;
  readonly answer: ToldAnswer;
}

export function otherPartText(content: ReplyContent, part: AdvisedPart): string {
  const { unit, record } = content;
  const height = quantityText({ kind: "length", value: part.heightMm }, unit);
  const rate =
    part.rateNPerMm === null
      ? ""
      : `, ${quantityText({ kind: "rate", value: part.rateNPerMm }, unit)}`;
  const ordered = part.part === null ? "" : `part number ${part.part}; `;
  return letter(content, [
    `Instead of the stop “${record.stop.name}” we advise “${part.name}” (${ordered}${height} high${rate}).`,
    `Computed with it on your readings: ${answerText(part.answer, unit)}`,
    beforeWork,
    beforeDriving,
  ]);
}
