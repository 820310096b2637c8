import { type Outcome, succeed } from "../physics/outcome.ts";
import { type ListedCheck, listedCheck } from "../records/check/listedCheck.ts";
import { copyStored, newId, type StoredCheck } from "../records/check/storedCheck.ts";
import { isFarAhead } from "../records/text/moment.ts";
import type { SayName } from "../words/message.ts";
import { askBeforeLeaving } from "./askBeforeLeaving.ts";
import { AwayTexts } from "./awayTexts.ts";
import { deletePictures, openRow, putCheck, type RowSetAside } from "./checkRow.ts";
import { DatabaseHandle, databaseName, transact, type WriteTransaction } from "./database.ts";
import { afterClockOf, currentOf, joinedWith, type Lineage, whatWaits } from "./joinedRows.ts";
import { fetchJoining } from "./joining.ts";
import { RowsReader } from "./rowsReader.ts";
import { contentOf, isSame } from "./sameContent.ts";
import { storeFault } from "./storeFault.ts";
import type { Join, TakenIn } from "./takeIn.ts";

export interface StoreChange {
  readonly id: string;
  readonly kind: "kept" | "removed" | "purged";
}

/**
 * The checks on this phone. Nothing is thrown: whatever the browser's storage does comes back as an
 * outcome whose sentence says that it was not kept, and why.
 */
export interface CheckStore {
  /** Newest change first, without pictures; deleted checks only where asked for. */
  list(which?: "present" | "deleted"): Promise<Outcome<ListedCheck[]>>;
  get(id: string): Promise<Outcome<StoredCheck | null>>;
  /** Rows that are no check that can be shown: kept until a person has saved or deleted them. */
  setAside(): Promise<Outcome<readonly RowSetAside[]>>;
  /** Such a row as a text to be saved. */
  rowText(key: IDBValidKey): Promise<Outcome<string>>;
  /** Deletes a row for good, whatever it holds. */
  discard(key: IDBValidKey): Promise<Outcome<null>>;
  /**
   * Keeps a check. Where another tab has written it since, the two are joined field by field, the
   * newer winning where both changed one field; where they have no common past, both are kept, this
   * one as a copy. The outcome is what is now stored.
   */
  put(stored: StoredCheck): Promise<Outcome<StoredCheck>>;
  /** Keeps a check only where none of its id is there yet, not even a deleted one. */
  add(stored: StoredCheck): Promise<Outcome<boolean>>;
  /** Adds a backup's check, or where one of its id is here stores what `join` makes of the two. */
  takeIn(backup: StoredCheck, join: Join): Promise<Outcome<TakenIn>>;
  /**
   * Checks whose last write failed, as they were handed in: held while the page is open, given by `get`
   * and `list` in place of what is stored, and no longer held once a write has gone through.
   */
  unkept(): readonly StoredCheck[];
  /** Changes what is stored, whatever its version: for renaming from the list. */
  update(id: string, change: (stored: StoredCheck) => StoredCheck): Promise<Outcome<StoredCheck>>;
  copy(id: string, name: string): Promise<Outcome<StoredCheck>>;
  /** Marks a check as deleted; `restore` undoes it until `purge`. */
  remove(id: string): Promise<Outcome<StoredCheck>>;
  restore(id: string): Promise<Outcome<StoredCheck>>;
  /** Takes checks deleted before this moment away for good; how many. */
  purge(before: Date): Promise<Outcome<number>>;
  /** Puts a check away within this very turn, for a page that is about to go. */
  putAway(stored: StoredCheck): void;
  /** Called for changes made by other tabs, not by this one. */
  subscribe(listener: (change: StoreChange) => void): () => void;
  /** Called when a newer version in another tab wants the storage: the last moment to put away. */
  onClosing(listener: () => void): () => void;
  close(): void;
}

const rememberedLineages = 500;

class IndexedCheckStore implements CheckStore {
  private readonly handle: DatabaseHandle;
  private readonly texts: AwayTexts;
  private readonly rows: RowsReader;
  private readonly lineages = new Map<string, Lineage>();
  private readonly listeners = new Set<(change: StoreChange) => void>();
  private readonly notKept = new Map<string, StoredCheck>();
  private channel: BroadcastChannel | null;
  private readonly tab = newId();

  constructor(
    private readonly say: SayName,
    name: string,
  ) {
    this.texts = new AwayTexts(name);
    this.handle = new DatabaseHandle(name);
    this.rows = new RowsReader(this.handle);
    this.channel = typeof BroadcastChannel === "undefined" ? null : new BroadcastChannel(name);
    if (this.channel !== null) {
      this.channel.onmessage = ({ data }: MessageEvent<StoreChange>) => {
        for (const listener of this.listeners) listener(data);
      };
    }
  }

  async open(): Promise<Outcome<CheckStore>> {
    const found = await this.handle.run(whatWaits);
    if (!found.ok) return found;
    const { unjoined, unsound } = found.value;
    if (unjoined + unsound.length + this.texts.places().length === 0) return succeed(this);
    const fetched = await import("./waitingRows.ts").catch(() => null);
    // What can't be joined waits on for the next opening: on a full phone checks can still be read, and deleted.
    await fetched?.joinWaiting(this.texts, (work) => this.write(work), this.say);
    return succeed(this);
  }

  async list(which: "present" | "deleted" = "present"): Promise<Outcome<ListedCheck[]>> {
    const all = await this.rows.read();
    if (!all.ok && this.notKept.size === 0) return all;
    const held = [...this.notKept.values()].map(listedCheck);
    const present = all.ok ? [...all.value.listed].reverse().sort(newestFirst) : [];
    const others = present.filter(({ id }) => !this.notKept.has(id));
    return succeed(
      [...held, ...others].filter(
        ({ deletedAt }) => (deletedAt === undefined) === (which === "present"),
      ),
    );
  }

  async setAside(): Promise<Outcome<readonly RowSetAside[]>> {
    const all = await this.rows.read();
    return all.ok ? succeed(all.value.aside) : all;
  }

  rowText(key: IDBValidKey): Promise<Outcome<string>> {
    return this.handle.run(async (database) => {
      const { rowText } = await import("./damagedRow.ts");
      const reading = database.transaction(["checks", "pictures"]);
      const row: unknown = await reading.objectStore("checks").get(IDBKeyRange.only(key));
      return rowText(row, reading.objectStore("pictures"));
    });
  }

  async discard(key: IDBValidKey): Promise<Outcome<null>> {
    const gone = await this.write(async (transaction) => {
      await transaction.objectStore("checks").delete(IDBKeyRange.only(key));
      if (typeof key === "string") await deletePictures(transaction, key);
      return null;
    });
    if (gone.ok) this.announce({ id: `${key}`, kind: "purged" });
    return gone;
  }

  async get(id: string): Promise<Outcome<StoredCheck | null>> {
    const held = this.notKept.get(id);
    if (held !== undefined) return succeed(held);
    const found = await this.handle.run(async (database) => {
      const reading = database.transaction(["checks", "pictures"]);
      const row = await reading.objectStore("checks").get(id);
      return openRow(row, reading.objectStore("pictures"));
    });
    if (found.ok && found.value !== null) this.remember(found.value, found.value, found.value);
    return found;
  }

  async put(stored: StoredCheck): Promise<Outcome<StoredCheck>> {
    await fetchJoining();
    const lineage = this.lineages.get(lineageKey(stored));
    const written = await this.write((transaction) =>
      this.writeJoined(transaction, stored, lineage ?? null),
    );
    if (!written.ok) {
      this.hold(stored);
      return written;
    }
    this.letGo(stored.id);
    this.texts.drop(this.awayKey(stored), stored);
    this.remember(stored, stored, written.value);
    this.remember(written.value, written.value, written.value);
    this.announceKept(written.value);
    return written;
  }

  async add(stored: StoredCheck): Promise<Outcome<boolean>> {
    const added = await this.write(async (transaction) => {
      const checks = transaction.objectStore("checks");
      const present = (await checks.getKey(stored.id)) !== undefined;
      if (!present) await putCheck(transaction, { ...stored, revision: 1 });
      return !present;
    });
    if (added.ok && added.value) {
      this.remember(stored, stored, { ...stored, revision: 1 });
      this.announce({ id: stored.id, kind: "kept" });
    }
    return added;
  }

  async takeIn(backup: StoredCheck, join: Join): Promise<Outcome<TakenIn>> {
    const taken = await this.handle.run(async (database) => {
      const { takeInto } = await import("./takeIn.ts");
      return transact(database, (transaction) => takeInto(transaction, backup, join, this.say));
    });
    if (taken.ok && taken.value.kind !== "present") {
      this.announce({ id: backup.id, kind: "kept" });
    }
    return taken;
  }

  unkept(): readonly StoredCheck[] {
    return [...this.notKept.values()];
  }

  async update(
    id: string,
    change: (stored: StoredCheck) => StoredCheck,
  ): Promise<Outcome<StoredCheck>> {
    const held = this.notKept.get(id);
    if (held !== undefined) return this.updateHeld(held, { ...change(held), id });
    const written = await this.write(async (transaction) => {
      const current = await currentOf(transaction, id);
      if (current === null) return null;
      const next = { ...change(current), id, revision: (current.revision ?? 0) + 1 };
      await putCheck(transaction, next);
      return next;
    });
    if (!written.ok) return written;
    if (written.value === null) return { ok: false, fault: storeFault("storeGone") };
    this.announceKept(written.value);
    return succeed(written.value);
  }

  async copy(id: string, name: string): Promise<Outcome<StoredCheck>> {
    const found = await this.get(id);
    if (!found.ok) return found;
    if (found.value === null) return { ok: false, fault: storeFault("storeGone") };
    return this.put(copyStored(found.value, name));
  }

  remove(id: string): Promise<Outcome<StoredCheck>> {
    const deletedAt = new Date().toISOString();
    return this.update(id, (stored) => ({ ...stored, deletedAt }));
  }

  restore(id: string): Promise<Outcome<StoredCheck>> {
    return this.update(id, ({ deletedAt: _, ...stored }) => stored);
  }

  async purge(before: Date): Promise<Outcome<number>> {
    const limit = before.toISOString();
    const gone = await this.write(async (transaction) => {
      const ids: string[] = [];
      for await (const cursor of transaction.objectStore("checks")) {
        const { deletedAt, id } = cursor.value;
        if (deletedAt === undefined) continue;
        if (deletedAt >= limit && !isFarAhead(deletedAt)) continue;
        await cursor.delete();
        await deletePictures(transaction, id);
        ids.push(id);
      }
      return ids;
    });
    if (!gone.ok) return gone;
    for (const id of gone.value) this.announce({ id, kind: "purged" });
    return succeed(gone.value.length);
  }

  putAway(stored: StoredCheck): void {
    const database = this.handle.current;
    if (database === null) return;
    const base = this.lineages.get(lineageKey(stored))?.content ?? null;
    const away = { key: this.awayKey(stored), stored, base };
    this.texts.put(away);
    try {
      const transaction = database.transaction("unjoined", "readwrite", { durability: "strict" });
      transaction.store.put(away).catch(() => undefined);
      transaction.done.catch(() => undefined);
      transaction.commit();
    } catch {
      // The ordinary write that follows says what is wrong with the storage.
      this.handle.close();
    }
  }

  subscribe(listener: (change: StoreChange) => void): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }

  onClosing(listener: () => void): () => void {
    return this.handle.onClosing(listener);
  }

  close(): void {
    this.handle.close();
    this.channel?.close();
    // A write under way still ends, and has nobody to tell.
    this.channel = null;
    this.listeners.clear();
    this.notKept.clear();
    askBeforeLeaving(this, false);
  }

  /** What could not be written is changed as it was typed, and written with the change, or stays held as it was. */
  private async updateHeld(held: StoredCheck, next: StoredCheck): Promise<Outcome<StoredCheck>> {
    const written = await this.put(next);
    if (!written.ok) this.notKept.set(held.id, held);
    return written;
  }

  private hold(stored: StoredCheck): void {
    this.notKept.set(stored.id, stored);
    askBeforeLeaving(this, true);
  }

  private letGo(id: string): void {
    this.notKept.delete(id);
    askBeforeLeaving(this, this.notKept.size > 0);
  }

  private write<Value>(
    work: (transaction: WriteTransaction) => Promise<Value>,
  ): Promise<Outcome<Value>> {
    return this.handle.run((database) => transact(database, work));
  }

  /** Reads what is stored, joins, writes; what was put away of it is then done with. */
  private async writeJoined(
    transaction: WriteTransaction,
    stored: StoredCheck,
    lineage: Lineage | null,
  ): Promise<StoredCheck> {
    const id = lineage?.id ?? stored.id;
    const mine = id === stored.id ? stored : { ...stored, id, record: { ...stored.record, id } };
    const current = await currentOf(transaction, id, [mine, lineage?.content ?? null]);
    const next = afterClockOf(current, joinedWith(mine, current, lineage, this.say));
    await putCheck(transaction, next);
    await transaction.objectStore("unjoined").delete(this.awayKey(stored));
    return next;
  }

  private awayKey({ id }: StoredCheck): string {
    return `${id} ${this.tab}`;
  }

  private remember(handed: StoredCheck, content: StoredCheck, written: StoredCheck): void {
    const key = lineageKey(handed);
    this.lineages.delete(key);
    const joined = !isSame(contentOf(content), contentOf(written));
    this.lineages.set(key, {
      id: written.id,
      content,
      revision: written.revision ?? 0,
      joined,
    });
    const oldest = this.lineages.keys().next();
    if (this.lineages.size > rememberedLineages && !oldest.done) this.lineages.delete(oldest.value);
  }

  private announceKept({ id, deletedAt }: StoredCheck): void {
    this.announce({ id, kind: deletedAt === undefined ? "kept" : "removed" });
  }

  private announce(change: StoreChange): void {
    this.channel?.postMessage(change);
  }
}

function lineageKey({ id, revision }: StoredCheck): string {
  return `${id}@${revision ?? 0}`;
}

function newestFirst(a: ListedCheck, b: ListedCheck): number {
  return a.updatedAt === b.updatedAt ? 0 : a.updatedAt < b.updatedAt ? 1 : -1;
}

/**
 * Opens the checks on this phone; joins first what pages put away as they were closed. `say` puts the names
 * of copies into words.
 */
export function openCheckStore(
  say: SayName,
  name: string = databaseName,
): Promise<Outcome<CheckStore>> {
  return new IndexedCheckStore(say, name).open();
}
