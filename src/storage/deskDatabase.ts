import type { DBSchema, IDBPTransaction } from "idb";
import type { Assessment } from "../physics/fitment.ts";
import type { Outcome } from "../physics/outcome.ts";
import type { Sentence } from "../physics/sentence.ts";
import type { Decision } from "../records/review/decision.ts";
import type { Reply } from "../records/review/reply.ts";
import type { Submission, Way } from "../records/review/submission.ts";
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
  readonly refused: readonly { readonly name: string; readonly sentence: Sentence }[];
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
  /** Absent: an earlier version put a backup there, which is restored elsewhere now. */
  readonly text?: string;
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
];

const stores = [
  "submissions",
  "texts",
  "assessments",
  "decisions",
  "imports",
  "inbox",
  "snapshots",
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
