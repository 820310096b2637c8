import { type IDBPDatabase, openDB, unwrap } from "idb";
import { type Outcome, succeed } from "../physics/outcome.ts";
import { followTransactions, pageGoesOn, timesPageLeft } from "./leftPage.ts";
import { faultOf, isClosedHandle, isRefusedOpening, storeFault } from "./storeFault.ts";

/** One step of a database's history: brings it one version further. */
export type Migration<Schema> = (database: IDBPDatabase<Schema>) => void;

/** How long an opening may take before it counts as blocked, or as unanswered. */
const patience = { blockedMs: 1500, silentMs: 8000 } as const;

/** One database, opened when first needed and opened again when its handle has died. */
export class SchemaHandle<Schema> {
  private database: IDBPDatabase<Schema> | null = null;
  private opening: Promise<Outcome<IDBPDatabase<Schema>>> | null = null;
  private readonly closing = new Set<() => void>();

  /** Each migration brings the database one version further; migrations are only ever added. */
  constructor(
    private readonly name: string,
    private readonly migrations: readonly Migration<Schema>[],
  ) {}

  /** The open database, where there is one at this very moment. */
  get current(): IDBPDatabase<Schema> | null {
    return this.database;
  }

  open(): Promise<Outcome<IDBPDatabase<Schema>>> {
    if (this.database !== null) return Promise.resolve(succeed(this.database));
    this.opening ??= this.openNew().finally(() => {
      this.opening = null;
    });
    return this.opening;
  }

  /**
   * Called when a newer version of the app, in another tab, wants this handle closed: what is begun on
   * `current` before the listener returns is still carried out.
   */
  onClosing(listener: () => void): () => void {
    this.closing.add(listener);
    return () => this.closing.delete(listener);
  }

  private async openNew(): Promise<Outcome<IDBPDatabase<Schema>>> {
    if (typeof indexedDB === "undefined" || indexedDB === null) {
      return { ok: false, fault: storeFault("storeRefused") };
    }
    for (let attempt = 0; ; attempt += 1) {
      try {
        return await this.openOrGiveUp();
      } catch (error) {
        if (isRefusedOpening(error)) return { ok: false, fault: storeFault("storeRefused") };
        if (attempt > 0 || !isClosedHandle(error)) return { ok: false, fault: faultOf(error) };
      }
    }
  }

  private openOrGiveUp(): Promise<Outcome<IDBPDatabase<Schema>>> {
    return new Promise((resolve, reject) => {
      let givenUp = false;
      const giveUp = (code: "storeBlocked" | "storeSilent"): void => {
        givenUp = true;
        resolve({ ok: false, fault: storeFault(code) });
      };
      let timer = setTimeout(() => giveUp("storeSilent"), patience.silentMs);
      openDB<Schema>(this.name, this.migrations.length, {
        upgrade: (database, oldVersion) => {
          for (const migrate of this.migrations.slice(oldVersion)) migrate(database);
        },
        blocked: () => {
          clearTimeout(timer);
          timer = setTimeout(() => giveUp("storeBlocked"), patience.blockedMs);
        },
        blocking: () => {
          for (const listener of this.closing) listener();
          this.close();
        },
        terminated: () => {
          this.database = null;
        },
      }).then(
        (database) => {
          clearTimeout(timer);
          followTransactions(unwrap(database));
          // One that was given up on and came after all serves whoever asks next.
          if (givenUp && this.database !== null) database.close();
          else this.database = database;
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
   * work must therefore be one transaction, which a dead handle has not carried out. What a page that is
   * left had to let go of is begun anew where it goes on.
   */
  async run<Value>(
    work: (database: IDBPDatabase<Schema>) => Promise<Value>,
  ): Promise<Outcome<Value>> {
    for (let attempt = 0; ; attempt += 1) {
      const left = pageGoesOn();
      if (left !== null) await left;
      const opened = await this.open();
      if (!opened.ok) return opened;
      const timesLeft = timesPageLeft();
      try {
        return succeed(await work(opened.value));
      } catch (error) {
        if (timesLeft !== timesPageLeft()) {
          attempt -= 1;
          continue;
        }
        if (attempt > 0 || !isClosedHandle(error)) return { ok: false, fault: faultOf(error) };
        this.close();
      }
    }
  }
}
