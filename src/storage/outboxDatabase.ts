import type { DBSchema } from "idb";
import type { Migration } from "./databaseHandle.ts";

/** A piece of a check, or the note that a reply was fetched, until the desk's engine has it. */
export interface WaitingPart {
  /** Counted up by the database: the order they are sent in. */
  readonly place?: number;
  readonly kind: "readings" | "personal" | "photo" | "fetched";
  readonly checkId: string;
  /** Names the piece; of "fetched" the reply. */
  readonly hash: string;
  readonly body: string;
  /** The version it belongs to, by the hash of its readings; absent with "fetched". */
  readonly version?: string;
}

/** One version of a check that was given to the outbox. */
export interface SentVersion {
  /** The hash of its readings. */
  readonly hash: string;
  readonly checkId: string;
  readonly queuedAt: string;
  /** When the engine had all of it; absent: it waits. */
  readonly receivedAt?: string;
  /** Pieces that the engine has not got yet. */
  readonly left: number;
  /** Which readings these are: as a reply names them. */
  readonly digest: string;
  /** Everything of it: names, notes and photos too. */
  readonly whole: string;
}

/** A reply that came in and was found to be one. */
export interface CameIn {
  readonly id: string;
  readonly checkId: string;
  readonly text: string;
  readonly at: string;
  /** Somebody has looked at it. */
  readonly seen: 0 | 1;
}

interface Setting {
  readonly key: "phone" | "trouble";
  readonly value: unknown;
}

export interface OutboxSchema extends DBSchema {
  waiting: { key: number; value: WaitingPart; indexes: { checkId: string } };
  versions: { key: string; value: SentVersion; indexes: { checkId: string } };
  replies: { key: string; value: CameIn; indexes: { checkId: string } };
  settings: { key: string; value: Setting };
}

export const outboxDatabaseName = "stopfit-outbox";

/** Entries are only ever added. */
export const outboxMigrations: readonly Migration<OutboxSchema>[] = [
  (database) => {
    database
      .createObjectStore("waiting", { keyPath: "place", autoIncrement: true })
      .createIndex("checkId", "checkId");
    database.createObjectStore("versions", { keyPath: "hash" }).createIndex("checkId", "checkId");
    database.createObjectStore("replies", { keyPath: "id" }).createIndex("checkId", "checkId");
    database.createObjectStore("settings", { keyPath: "key" });
  },
];
