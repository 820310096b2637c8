import { type DBSchema, deleteDB, type IDBPDatabase, type IDBPTransaction, openDB } from "idb";
import { type Outcome, succeed } from "../physics/outcome.ts";
import type { StoredCheck } from "../records/storedCheck.ts";
import { faultOf, isClosedHandle, storeFault } from "./storeFault.ts";

/** A check put away as the page was hidden, before it could be joined with what is stored. */
export interface UnjoinedCheck {
  readonly key: string;
  readonly stored: StoredCheck;
  readonly base: StoredCheck | null;
}

export interface StopfitDatabase extends DBSchema {
  checks: { key: string; value: StoredCheck; indexes: { updatedAt: string } };
  unjoined: { key: string; value: UnjoinedCheck };
}

export type Database = IDBPDatabase<StopfitDatabase>;

type StoreName = "checks" | "unjoined";
export type WriteTransaction = IDBPTransaction<StopfitDatabase, StoreName[], "readwrite">;

/**
 * `work` in one transaction that is on disk when this is done. Throws what made it fail: a full
 * storage shows in the transaction itself, behind the errors of whatever was asked of it afterwards.
 */
export async function transact<Value>(
  database: Database,
  work: (transaction: WriteTransaction) => Promise<Value>,
): Promise<Value> {
  const names: StoreName[] = ["checks", "unjoined"];
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
const migrations: readonly ((database: Database) => void)[] = [
  (database) => {
    const checks = database.createObjectStore("checks", { keyPath: "id" });
    checks.createIndex("updatedAt", "updatedAt");
    database.createObjectStore("unjoined", { keyPath: "key" });
  },
];

export const databaseVersion = migrations.length;
export const databaseName = "stopfit";

/** How long an opening may take before it counts as blocked, or as unanswered. */
const patience = { blockedMs: 1500, silentMs: 8000 } as const;

/** One database, opened when first needed and opened again when its handle has died. */
export class DatabaseHandle {
  private database: Database | null = null;
  private opening: Promise<Outcome<Database>> | null = null;

  constructor(private readonly name: string = databaseName) {}

  /** The open database, where there is one at this very moment. */
  get current(): Database | null {
    return this.database;
  }

  open(): Promise<Outcome<Database>> {
    if (this.database !== null) return Promise.resolve(succeed(this.database));
    this.opening ??= this.openNew().finally(() => {
      this.opening = null;
    });
    return this.opening;
  }

  private async openNew(): Promise<Outcome<Database>> {
    if (typeof indexedDB === "undefined" || indexedDB === null) {
      return { ok: false, fault: storeFault("storeRefused") };
    }
    try {
      return await this.openOrGiveUp();
    } catch (error) {
      // An opening that fails as "invalid state" is how some browsers refuse a private window.
      return {
        ok: false,
        fault: isClosedHandle(error) ? storeFault("storeRefused") : faultOf(error),
      };
    }
  }

  private openOrGiveUp(): Promise<Outcome<Database>> {
    return new Promise((resolve, reject) => {
      let givenUp = false;
      const giveUp = (code: "storeBlocked" | "storeSilent"): void => {
        givenUp = true;
        resolve({ ok: false, fault: storeFault(code) });
      };
      let timer = setTimeout(() => giveUp("storeSilent"), patience.silentMs);
      openDB<StopfitDatabase>(this.name, databaseVersion, {
        upgrade(database, oldVersion) {
          for (const migrate of migrations.slice(oldVersion)) migrate(database);
        },
        blocked: () => {
          clearTimeout(timer);
          timer = setTimeout(() => giveUp("storeBlocked"), patience.blockedMs);
        },
        blocking: () => this.close(),
        terminated: () => {
          this.database = null;
        },
      }).then(
        (database) => {
          clearTimeout(timer);
          if (givenUp) {
            database.close();
            return;
          }
          this.database = database;
          resolve(succeed(database));
        },
        (error) => {
          clearTimeout(timer);
          reject(error);
        },
      );
    });
  }

  close(): void {
    this.database?.close();
    this.database = null;
  }

  /**
   * `work` on the open database. A handle that has died is opened again and the work repeated once;
   * work must therefore be one transaction, which a dead handle has not carried out.
   */
  async run<Value>(work: (database: Database) => Promise<Value>): Promise<Outcome<Value>> {
    for (let attempt = 0; ; attempt += 1) {
      const opened = await this.open();
      if (!opened.ok) return opened;
      try {
        return succeed(await work(opened.value));
      } catch (error) {
        if (attempt > 0 || !isClosedHandle(error)) return { ok: false, fault: faultOf(error) };
        this.close();
      }
    }
  }
}

/** The whole database gone, for a fresh start. */
export async function deleteDatabase(name: string = databaseName): Promise<void> {
  await deleteDB(name);
}
