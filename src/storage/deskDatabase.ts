import type { DBSchema } from "idb";
import type { Assessment } from "../physics/fitment.ts";
import type { Decision } from "../records/decision.ts";
import type { Reply } from "../records/reply.ts";
import type { Submission } from "../records/submission.ts";
import type { Migration } from "./databaseHandle.ts";

/** The very text that was sent, by the key of its submission. */
export interface SubmittedText {
  readonly key: string;
  readonly text: string;
}

export interface KeptAssessment {
  readonly key: string;
  readonly assessment: Assessment;
}

/** An import that has begun; it goes once it has ended. */
export interface BegunImport {
  readonly key: string;
  readonly startedAt: string;
  readonly taken: number;
}

/** A reply that reached this device, and what was typed of the readings it asks for when it did. */
export interface KeptReply {
  readonly id: string;
  /** The check on this device that it is about. */
  readonly storedId: string;
  readonly reply: Reply;
  readonly before: { readonly [id: string]: string };
  /** Readings that were taken again and came out the very same. */
  readonly same: readonly string[];
  readonly closed: 0 | 1;
}

/**
 * All submissions as one text, which is read far sooner than as many entries; and under "revision" the
 * count of changes by which it is known whether the text is still true.
 */
export interface ListSnapshot {
  readonly key: "list" | "revision";
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
  replies: { key: string; value: KeptReply; indexes: { storedId: string } };
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
];
