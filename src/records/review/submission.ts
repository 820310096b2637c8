import type { Assessment, Side, State, Use } from "../../physics/fitment.ts";
import { cornerReadingNames } from "../../physics/readings/index.ts";
import type { Sentence } from "../../physics/sentence.ts";
import type { StoredSentence } from "../../words/message.ts";
import type { Axle, CheckRecord, Role } from "../check/checkRecord.ts";
import type { LengthUnit } from "../entry/units.ts";
import { canonicalText, textDigest } from "../text/canonicalText.ts";

/** By which way a check came to the desk. */
export const ways = ["file", "link", "code", "backup", "desk"] as const;
export type Way = (typeof ways)[number];

/** What the desk's list knows of a record without opening it. */
export interface SubmissionFacts {
  readonly checkId: string;
  readonly digest: string;
  readonly vehicle: string;
  readonly axle: Axle;
  readonly use: Use;
  readonly stop: string;
  readonly sides: readonly Side[];
  readonly who: string;
  readonly role: Role;
  readonly contact: string;
  readonly createdAt: string;
  readonly photos: number;
  /** Checks of one job have it in common. */
  readonly jobId?: string;
  /** Its name; of what earlier versions took in, with its number. Whose it is stays in the record. */
  readonly job?: string;
  readonly jobNumber?: string;
}

/** The answer computed at the desk, in short. */
export interface Computed {
  readonly verdict: State;
  readonly reason: Sentence;
  /** Readings that look odd. */
  readonly odd: number;
}

/** The same as it is kept. */
export interface KeptComputed extends Computed {
  readonly reason: StoredSentence;
}

/** One version of a check as it was sent. The text itself is kept beside it, never altered. */
export interface Submission extends SubmissionFacts {
  /** The check's id and the digest of its content. */
  readonly key: string;
  /** When the import began that brought it: one time for all that came together. */
  readonly receivedAt: string;
  /** When its file was last changed: tells which of those that came together is the newer. */
  readonly sentAt?: string;
  /** Whom the mail says that it is from, in which it came. Nobody has checked that. */
  readonly from?: string;
  /** The how manyth of its import it was. */
  readonly place?: number;
  readonly way: Way;
  /** Photos that the sender's record has and this one has not. */
  readonly photosLeftOut: number;
  /** 0 while the answer is still to be computed, then 1. */
  readonly isComputed: 0 | 1;
  readonly computed?: KeptComputed;
}

/** A sound record as it came in, before it is kept. */
export interface Incoming {
  readonly facts: SubmissionFacts;
  readonly text: string;
  readonly way: Way;
  readonly photosLeftOut: number;
  readonly receivedAt?: string;
  readonly sentAt?: string;
  readonly from?: string;
  readonly place?: number;
}

/**
 * The content of a record as a text that does not change with the version it is written in: a check that
 * a phone sends again after an update is the same check, and so is one by a code, which holds no advice.
 */
export function contentText({ advised: _, ...record }: { readonly advised?: unknown }): string {
  return canonicalText({ ...record, version: 1 });
}

export function factsOf(record: CheckRecord): SubmissionFacts {
  const { author, vehicle, job } = record;
  return {
    checkId: record.id,
    digest: textDigest(contentText(record)),
    vehicle: vehicle.label.trim(),
    axle: record.axle,
    use: vehicle.use,
    stop: record.stop.name,
    sides: record.corners.map(({ side }) => side),
    who: author.name?.trim() ?? "",
    role: author.role,
    contact: author.contact?.trim() ?? "",
    createdAt: record.createdAt,
    photos: record.photos?.length ?? 0,
    ...(job && { jobId: job.id, job: job.label.trim() }),
    ...(job?.number?.trim() && { jobNumber: job.number.trim() }),
  };
}

export function computedOf(assessment: Assessment, odd: number): Computed {
  return { verdict: assessment.verdict, reason: assessment.reason, odd };
}

/** The unit most of a record's readings were typed in; mm where nothing tells. */
export function unitOf(record: CheckRecord): LengthUnit {
  let inches = 0;
  let millimetres = 0;
  const count = (texts: readonly string[] = []): void => {
    for (const text of texts) {
      if (/\sin$/.test(text)) inches += 1;
      if (/\s(mm|cm)$/.test(text)) millimetres += 1;
    }
  };
  for (const reading of Object.values(record.layout.readings)) count(reading?.typed);
  for (const corner of record.corners) {
    for (const name of cornerReadingNames) count(corner[name]?.typed);
    for (const { reading } of corner.limits) count(reading.typed);
    for (const reading of Object.values(corner.geometry ?? {})) count(reading?.typed);
  }
  count(record.stop.freeHeight.typed);
  return inches > millimetres ? "in" : "mm";
}
