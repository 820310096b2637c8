import type { Assessment, Fitment } from "../../physics/fitment.ts";
import type { Prescription } from "../../physics/prescription/index.ts";
import { parseReadingId, type ReadingId } from "../../physics/readings/index.ts";
import { missingId } from "../../physics/verdict/index.ts";
import type { CheckRecord } from "../../records/check/checkRecord.ts";
import { limitIn } from "../../records/entry/entryPath.ts";
import type { Decision } from "../../records/review/decision.ts";
import { type OddReading, readingsOf } from "../../records/review/oddReadings.ts";
import { readingsDigest } from "../../records/review/readingsDigest.ts";
import { type Reply, replyFormat, replyVersion } from "../../records/review/reply.ts";
import { mailto } from "../../records/text/mailto.ts";
import type { AskedReading, ToldAnswer } from "../../saying/replyText.ts";
import * as messages from "../../words/compiled/screens/desk.ts";
import { readingWords } from "../answer/formulas/readingById.ts";
import { verdictWords } from "../assessment/stateWords.ts";
import { readingWords as takingWords } from "../readings/readingWords.ts";

/** How a reading is taken, as the phone's own step says it. */
function howOf(record: CheckRecord, id: ReadingId): string {
  if (parseReadingId(id)?.of === "ride") return "";
  return takingWords(id, record.layout, limitIn(record, id)).how;
}

/** Readings that can be asked for: all of the record, and what its answer misses. */
export function askable(
  record: CheckRecord,
  fitment: Fitment,
  assessment: Assessment | null,
): { readonly id: ReadingId; readonly name: string }[] {
  const found = readingsOf(record).map(({ id }) => ({ id, name: readingWords(fitment, id) }));
  const ids = new Set(found.map(({ id }) => id));
  for (const { side, missing } of assessment?.corners ?? []) {
    for (const name of missing) {
      const id = missingId(name, side);
      if (!ids.has(id)) found.push({ id, name: readingWords(fitment, id) });
      ids.add(id);
    }
  }
  return found;
}

/** Why a reading is asked for again: what looks odd about it, or what the answer says of it. */
function whyOf(id: ReadingId, odd: readonly OddReading[], assessment: Assessment | null) {
  const oddity = odd.find(({ reading }) => reading === id);
  if (oddity) return oddity.sentence;
  for (const { checks } of assessment?.corners ?? []) {
    const check = checks.find(({ reading, state }) => reading === id && state === "unsure");
    if (check) return check.sentence;
  }
  return null;
}

export function askedReadings(
  ids: readonly ReadingId[],
  record: CheckRecord,
  fitment: Fitment,
  odd: readonly OddReading[],
  assessment: Assessment | null,
): AskedReading[] {
  const byId = new Map(readingsOf(record).map((each) => [each.id, each.reading]));
  return ids.map((id) => ({
    id,
    name: readingWords(fitment, id),
    reading: byId.get(id) ?? null,
    why: whyOf(id, odd, assessment),
    how: howOf(record, id),
  }));
}

/** The answer as a letter tells it, with what was prescribed, where that is to be told. */
export function toldAnswer(
  { verdict, reason }: Assessment,
  prescription: Prescription | null,
): ToldAnswer {
  const { first = [], message = [], remarks = [] } = prescription ?? {};
  return {
    verdict,
    words: verdictWords[verdict],
    reason,
    advice: [first, message, ...remarks].filter(({ length }) => length > 0),
  };
}

/** The decision as what opens on the phone of the one who sent the check. */
export function replyOf(record: CheckRecord, decision: Decision): Reply | null {
  if (decision.kind === "undo") return null;
  return {
    format: replyFormat,
    version: replyVersion,
    id: decision.key,
    checkId: record.id,
    answers: readingsDigest(record),
    createdAt: decision.at,
    from: decision.by,
    kind: decision.kind,
    vehicle: record.vehicle.label,
    axle: record.axle,
    readings: decision.readings ?? [],
    text: decision.reply ?? "",
  };
}

export function replyFile(reply: Reply): File {
  const name = `stopfit-reply-${reply.checkId.slice(0, 8)}-${reply.createdAt.slice(0, 10)}.txt`;
  return new File([`${JSON.stringify(reply, null, 2)}\n`], name, { type: "text/plain" });
}

/** The reply's words with the link under them that opens it in Stopfit. */
export function withLink(text: string, link: string | null): string {
  if (link === null) return text;
  return messages.thisReplyInStopfit({ text: text.trimEnd(), link });
}

/** A letter without a name in it, with that of the person it goes to. */
export function withGreeting({ author }: CheckRecord, text: string): string {
  const name = author.name?.trim();
  return name ? text.replace(/^Hello,/, `Hello ${name},`) : text;
}

/** A mail link with the reply in it; null where the contact is no mail address. */
export function mailLink({ author, vehicle, axle }: CheckRecord, text: string): string | null {
  return mailto(
    author.contact?.trim() ?? "",
    messages.yourCheckAxle({ label: vehicle.label, axle }),
    text,
  );
}
