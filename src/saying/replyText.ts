import type { State } from "../physics/fitment.ts";
import type { ReadingId } from "../physics/readings/index.ts";
import { capital, type Sentence, type Words } from "../physics/sentence.ts";
import { meanOf } from "../physics/uncertainty/index.ts";
import type { CheckRecord, TypedReading } from "../records/check/checkRecord.ts";
import { sourceOf } from "../records/entry/readingSource.ts";
import type { LengthUnit } from "../records/entry/units.ts";
import { quantityKindOf } from "../records/review/oddReadings.ts";
import * as messages from "../words/compiled/saying.ts";
import { language } from "../words/language.ts";
import { quantityText, withPlainSpaces } from "./quantityText.ts";
import { sentenceText, withoutRanges } from "./sentenceText.ts";
import { said } from "./texts.ts";

/** One reading to take again, in the words of the person who will take it. */
export interface AskedReading {
  readonly id: ReadingId;
  readonly name: Words;
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

const screens = messages.thisIsScreeningCheck;
const beforeWork = messages.beforeYouGoUnder;
const beforeDriving = messages.beforeDrivingWithChanged;

/** What was read, as it was typed where that is known; what the person did not read is not said as read. */
function readText({ id, reading }: AskedReading, unit: LengthUnit): string {
  if (reading === null) return "";
  const source = sourceOf(reading);
  if (source !== "measured") {
    const value = { kind: quantityKindOf(id), value: meanOf(reading) };
    const text = quantityText(value, unit, { fractions: true });
    return source === "pack"
      ? messages.partsLibraryHas({ text })
      : messages.itWasEstimatedAs({ text });
  }
  const typed = reading.typed?.filter((text) => text.trim() !== "") ?? [];
  if (typed.length === reading.values.length && typed.length > 0) {
    return messages.youRead({ listed: listed(typed) });
  }
  const quantity = { kind: quantityKindOf(id), value: meanOf(reading) };
  return messages.youRead2({ quantity: quantityText(quantity, unit, { fractions: true }) });
}

function listed(words: readonly string[]): string {
  return words.length < 2
    ? words.join("")
    : messages.and2({ words: words.slice(0, -1).join(", "), last: words.at(-1) ?? "" });
}

function dayText(iso: string): string {
  const date = new Date(iso);
  return Number.isNaN(date.getTime())
    ? ""
    : date.toLocaleDateString(language, { day: "numeric", month: "long", year: "numeric" });
}

function letter({ record, from, note }: ReplyContent, middle: readonly string[]): string {
  const { author, vehicle, axle, createdAt } = record;
  const name = author.name?.trim();
  const paragraphs = [
    name ? messages.hello({ name }) : messages.helloThere,
    messages.thankYouForCheck({ label: vehicle.label.trim(), axle, day: dayText(createdAt) }),
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
      `${asked.length > 1 ? `${index + 1}. ` : ""}${said(capital(each.name))}.`,
      readText(each, unit),
      each.why === null ? "" : sentenceText(each.why, unit, { fractions: true }),
      each.how === "" ? "" : messages.howToTakeIt({ how: each.how }),
    ]
      .filter((text) => text !== "")
      .join(" "),
  );
  return letter(content, [
    asked.length === 1
      ? messages.forSureAnswerPlease
      : messages.forSureAnswerPleaseTake({ asked: asked.length }),
    ...list,
    messages.openThisReplyIn,
    beforeWork,
  ]);
}

/** The answer as it was computed: the verdict is never softened. */
export interface ToldAnswer {
  readonly verdict: State;
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
    messages.readingsAcceptedAsYou,
    messages.partComputedWithThese({ answer: answerText(answer, unit) }),
    ...(advice.length === 0 ? [] : [messages.whatToDo({ join: [...new Set(advice)].join(" ") })]),
    ...(answer.verdict === "ok" ? [] : [beforeDriving]),
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
  const ordered = part.part === null ? "" : messages.partNumber({ part: part.part });
  return letter(content, [
    messages.insteadOfStopWe({ name: record.stop.name, name2: part.name, ordered, height, rate }),
    messages.computedWithItOn({ answer: answerText(part.answer, unit) }),
    beforeWork,
    beforeDriving,
  ]);
}
