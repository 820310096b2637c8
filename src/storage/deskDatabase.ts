import type { DBSchema, IDBPTransaction } from "idb";
import type { Assessment } from "../physics/fitment.ts";
import type { Outcome } from "../physics/outcome.ts";
import type { Photo } from "../records/check/checkRecord.ts";
import type { PersonalTexts } from "../records/exchanged/personalParts.ts";
import type { Decision } from "../records/review/decision.ts";
import type { Reply } from "../records/review/reply.ts";
import type { Submission, Way } from "../records/review/submission.ts";
import type { StoredSentence } from "../words/message.ts";
import type { Migration, SchemaHandle } from "./databaseHandle.ts";

/** The very text that was sent, by the key of its submission. */
interface SubmittedText {
  readonly key: string;
  readonly text: string;
}

interface KeptAssessment {
  readonly key: string;
  readonly assessment: Assessment;
}

/** What an import has done so far. */
export interface ImportCounts {
  readonly taken: number;
  readonly added: number;
  readonly present: number;
  readonly refusedCount: number;
  /** The first of those refused. */
  readonly refused: readonly { readonly name: string; readonly sentence: StoredSentence }[];
}

/**
 * An import that has begun; it goes once it has ended. While "reading", what was chosen is put into the
 * inbox; while "taking", everything is there and is taken in from it, whichever page does so.
 */
export interface BegunImport {
  readonly key: string;
  readonly startedAt: string;
  readonly stage: "reading" | "taking";
  /** How many entries were put into the inbox. */
  readonly total: number;
  readonly counts: ImportCounts;
}

/** One text of an import that is not taken in yet. */
export interface InboxEntry {
  readonly importKey: string;
  /** The how manyth it is. */
  readonly place: number;
  readonly name: string;
  /** How a sentence names it. */
  readonly what: string;
  readonly way: Way;
  readonly sentAt?: string;
  /** Whom the mail is from in which it came. */
  readonly from?: string;
  /** What is long stays bytes. Absent: an earlier version put a backup there, which is restored elsewhere now. */
  readonly text?: string | Blob;
}

/** A reply that reached this device, and what was typed of the readings it asks for when it did. */
export interface StoredReply {
  readonly id: string;
  /** The check on this device that it is about. */
  readonly storedId: string;
  readonly reply: Reply;
  readonly before: { readonly [id: string]: string };
  /** Readings that were taken again and came out the very same. */
  readonly same: readonly string[];
  readonly closed: 0 | 1;
  /** When it was kept, by this device's clock; absent in those kept before that was noted. */
  readonly keptAt?: string;
  /** Fetched from the desk itself; absent: by a file or a link, whose writer can't be verified. */
  readonly fromDesk?: boolean;
}

/**
 * rows: all submissions as one text, which is read far sooner than as many entries. revision: the count of
 * changes by which it is known whether the text is still true. first: the top of the list as it was seen last.
 * demands: those that all results were computed by.
 */
interface ListSnapshot {
  readonly key: "rows" | "revision" | "first" | "demands";
  readonly revision: number;
  readonly text: string;
}

/** Where a version came from that a phone sent to the shared desk, and what of it comes apart. */
export interface SentBy {
  /** Of its submission. */
  readonly key: string;
  readonly checkId: string;
  /** The phone's public key: replies go to it. */
  readonly sender: string;
  readonly personal: string | null;
  readonly photos: readonly string[];
  readonly sequence: number;
}

/** A name, a way to answer, a note or a photo of a check; it goes by age, and when it is erased. */
export interface PersonalPart {
  readonly hash: string;
  readonly checkId: string;
  readonly at: string;
  readonly texts?: PersonalTexts;
  readonly photo?: Photo;
}

/** A reply that is at the shared desk, for its phone to fetch. */
export interface ReplyAtDesk {
  /** The key of its decision. */
  readonly id: string;
  readonly checkId: string;
  readonly sender: string;
  readonly from: string;
  /** When the engine took it. */
  readonly at: string;
  readonly fetchedAt?: string;
}

/** What this desk still has to tell the shared one. */
export interface ToShare {
  /** "decision KEY", "reply KEY", "erase CHECK", "pack": once each. */
  readonly key: string;
  readonly kind: "decision" | "reply" | "erase" | "pack";
  /** Empty for a pack. */
  readonly checkId: string;
  /** The decision's key, or of the erasure or the offer. */
  readonly id: string;
  readonly at: string;
}

/** What another tab, or the shared desk, did: read again. */
export type DeskChange = "submissions" | "results" | "decisions" | "shared";

interface SharedValue {
  readonly key: string;
  readonly value: unknown;
}

export interface DeskSchema extends DBSchema {
  submissions: {
    key: string;
    value: Submission;
    indexes: { checkId: string; isComputed: number };
  };
  texts: { key: string; value: SubmittedText };
  assessments: { key: string; value: KeptAssessment };
  decisions: { key: string; value: Decision; indexes: { checkId: string } };
  imports: { key: string; value: BegunImport };
  inbox: { key: [string, number]; value: InboxEntry };
  replies: { key: string; value: StoredReply; indexes: { storedId: string } };
  snapshots: { key: string; value: ListSnapshot };
  sentBy: { key: string; value: SentBy; indexes: { checkId: string } };
  personal: { key: string; value: PersonalPart; indexes: { checkId: string } };
  repliesAtDesk: { key: string; value: ReplyAtDesk; indexes: { checkId: string } };
  toShare: { key: string; value: ToShare };
  /** The place reached in each stream, and this person's credential. */
  shared: { key: string; value: SharedValue };
}

export const deskDatabaseName = "stopfit-desk";

/** Entries are only ever added. */
export const deskMigrations: readonly Migration<DeskSchema>[] = [
  (database) => {
    const submissions = database.createObjectStore("submissions", { keyPath: "key" });
    submissions.createIndex("checkId", "checkId");
    submissions.createIndex("isComputed", "isComputed");
    database.createObjectStore("texts", { keyPath: "key" });
    database.createObjectStore("assessments", { keyPath: "key" });
    database.createObjectStore("decisions", { keyPath: "key" }).createIndex("checkId", "checkId");
    database.createObjectStore("imports", { keyPath: "key" });
    database.createObjectStore("replies", { keyPath: "id" }).createIndex("storedId", "storedId");
  },
  (database) => {
    database.createObjectStore("snapshots", { keyPath: "key" });
  },
  (database) => {
    database.createObjectStore("inbox", { keyPath: ["importKey", "place"] });
  },
  (database) => {
    database.createObjectStore("sentBy", { keyPath: "key" }).createIndex("checkId", "checkId");
    database.createObjectStore("personal", { keyPath: "hash" }).createIndex("checkId", "checkId");
    database
      .createObjectStore("repliesAtDesk", { keyPath: "id" })
      .createIndex("checkId", "checkId");
    database.createObjectStore("toShare", { keyPath: "key" });
    database.createObjectStore("shared", { keyPath: "key" });
  },
];

const stores = [
  "submissions",
  "texts",
  "assessments",
  "decisions",
  "imports",
  "inbox",
  "snapshots",
  "sentBy",
  "personal",
  "repliesAtDesk",
  "toShare",
  "shared",
] as const;

export type Writing = IDBPTransaction<DeskSchema, (typeof stores)[number][], "readwrite">;

/** All of `work` in one transaction, or where that fails nothing of it. */
export function writeDesk<Value>(
  handle: SchemaHandle<DeskSchema>,
  work: (transaction: Writing) => Promise<Value>,
): Promise<Outcome<Value>> {
  return handle.run(async (database) => {
    const transaction = database.transaction([...stores], "readwrite");
    const ended = transaction.done.then(
      () => null,
      (error: unknown) => ({ error }),
    );
    try {
      const value = await work(transaction);
      const end = await ended;
      if (end !== null) throw end.error;
      return value;
    } catch (error) {
      try {
        transaction.abort();
      } catch {
        // It had ended already.
      }
      await ended;
      throw transaction.error ?? error;
    }
  });
}
