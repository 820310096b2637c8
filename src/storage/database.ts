import type { DBSchema, IDBPDatabase, IDBPTransaction } from "idb";
import type { StoredCheck } from "../records/check/storedCheck.ts";
import type { Pack } from "../records/pack/pack.ts";
import { type Migration, SchemaHandle } from "./databaseHandle.ts";
import { isClosedHandle } from "./storeFault.ts";

/** A check put away as the page was hidden, before it could be joined with what is stored. */
export interface UnjoinedCheck {
  readonly key: string;
  readonly stored: StoredCheck;
  readonly base: StoredCheck | null;
}

/** The picture of one photo of a check, under the check's id and its own. */
interface StoredPicture {
  readonly key: string;
  /** Base64. */
  readonly data: string;
}

/** The parts library in use on this phone; `revision` counts up at each write. */
export interface StoredPack {
  readonly key: "current";
  readonly pack: Pack;
  readonly revision: number;
  readonly keptAt: string;
  /** The shipped pack that it grew from; absent where it was opened from a file, or began with the demo. */
  readonly shipped?: ShippedOrigin;
}

/** Which shipped pack the one in use grew from. */
export interface ShippedOrigin {
  readonly digest: string;
  /** It has been changed on this phone since. */
  readonly edited: boolean;
  /** A newer shipped one that the person does not want; absent: none was looked at. */
  readonly refused?: string;
}

/** What this phone remembers of its own keeping: who it is, and what is safe elsewhere. */
export interface Mark {
  /** "phone", "backup", "asked", or "safe" and the id of a check. */
  readonly key: string;
  readonly text: string;
  readonly at: string;
}

export interface StopfitDatabase extends DBSchema {
  /** Rows of checks, without pictures: to be read and written through checkRow.ts only. */
  checks: { key: string; value: StoredCheck; indexes: { updatedAt: string } };
  pictures: { key: string; value: StoredPicture };
  unjoined: { key: string; value: UnjoinedCheck };
  packs: { key: string; value: StoredPack };
  marks: { key: string; value: Mark };
}

export type Database = IDBPDatabase<StopfitDatabase>;

export type StoreName = "checks" | "pictures" | "unjoined";
export type WriteTransaction = IDBPTransaction<StopfitDatabase, StoreName[], "readwrite">;

/**
 * `work` in one transaction that is on disk when this is done. Throws what made it fail: a full
 * storage shows in the transaction itself, behind the errors of whatever was asked of it afterwards.
 */
export async function transact<Value>(
  database: Database,
  work: (transaction: WriteTransaction) => Promise<Value>,
): Promise<Value> {
  const names: StoreName[] = ["checks", "pictures", "unjoined"];
  const transaction = database.transaction(names, "readwrite", { durability: "strict" });
  const ended = transaction.done.then(
    () => null,
    (error: unknown) => ({ error }),
  );
  let value: Value;
  try {
    value = await work(transaction);
  } catch (error) {
    try {
      transaction.abort();
    } catch {
      // It had ended already.
    }
    const end = await ended;
    throw end === null || isClosedHandle(end.error) ? error : end.error;
  }
  const end = await ended;
  if (end !== null) throw end.error;
  return value;
}

/** Each entry brings the database one version further; entries are only ever added. */
const migrations: readonly Migration<StopfitDatabase>[] = [
  (database) => {
    const checks = database.createObjectStore("checks", { keyPath: "id" });
    checks.createIndex("updatedAt", "updatedAt");
    database.createObjectStore("unjoined", { keyPath: "key" });
  },
  (database) => {
    database.createObjectStore("packs", { keyPath: "key" });
  },
  (database) => {
    database.createObjectStore("marks", { keyPath: "key" });
  },
  (database) => {
    database.createObjectStore("pictures", { keyPath: "key" });
  },
  () => {
    // Rows of records of version 2, which no older page may write over; those before are opened as such.
  },
  () => {
    // Choices stand apart from what was typed: an older page would ask for them all again.
  },
];

export const databaseVersion = migrations.length;
export const databaseName = "stopfit";

/** The database of checks, opened when first needed. */
export class DatabaseHandle extends SchemaHandle<StopfitDatabase> {
  constructor(name: string = databaseName) {
    super(name, migrations);
  }
}
