import { type Outcome, succeed } from "../physics/outcome.ts";
import { entriesWithChoices } from "../records/check/choicesAmongEntries.ts";
import { type ListedCheck, listedPhoto } from "../records/check/listedCheck.ts";
import { newId } from "../records/check/storedCheck.ts";
import { canonicalText, textDigest } from "../records/text/canonicalText.ts";
import { DatabaseHandle, databaseName, type Mark } from "./database.ts";

/**
 * The content of a check in short: two with one digest need not both be saved. Opening a check, or going
 * from step to step in it, does not change it. A photo counts by its length, for they are long.
 */
export function contentDigest(check: ListedCheck): string {
  const { name, record, aside } = check;
  const photos = record.photos?.map(listedPhoto);
  // The version that the record is written in is no content, nor is where choices stand.
  const content = [name, { ...record, photos, version: 1 }, entriesWithChoices(check)];
  return textDigest(canonicalText(aside === undefined ? content : [...content, aside]));
}

const safe = "safe ";

/** What is known of the checks' safety: the last backup, and which content is elsewhere as well. */
export interface Safekeeping {
  readonly lastBackupAt: string | null;
  /** By the id of a check, the digest of the content that was saved or sent. */
  readonly safe: ReadonlyMap<string, string>;
  /** When the browser was last asked to keep everything for good. */
  readonly askedAt: string | null;
}

/** What this phone remembers of its own keeping, in the database of the checks. */
export class MarkStore {
  readonly #handle: DatabaseHandle;

  constructor(name: string = databaseName) {
    this.#handle = new DatabaseHandle(name);
  }

  /** Tells this phone's database from any other, and from one that was made anew. */
  phone(): Promise<Outcome<string>> {
    return this.#handle.run(async (database) => {
      const transaction = database.transaction("marks", "readwrite");
      const known = await transaction.store.get("phone");
      const mark = known ?? { key: "phone", text: newId(), at: new Date().toISOString() };
      if (known === undefined) await transaction.store.put(mark);
      await transaction.done;
      return mark.text;
    });
  }

  async safekeeping(): Promise<Outcome<Safekeeping>> {
    const marks = await this.#handle.run((database) => database.getAll("marks"));
    if (!marks.ok) return marks;
    const safeOnes = marks.value.filter(({ key }) => key.startsWith(safe));
    return succeed({
      lastBackupAt: marks.value.find(({ key }) => key === "backup")?.at ?? null,
      safe: new Map(safeOnes.map(({ key, text }) => [key.slice(safe.length), text])),
      askedAt: marks.value.find(({ key }) => key === "asked")?.at ?? null,
    });
  }

  /** These checks, as they are, were saved or sent. */
  markSafe(checks: readonly ListedCheck[]): Promise<Outcome<null>> {
    return this.#put(safeMarks(checks, new Date().toISOString()));
  }

  /** A backup was made; marks of checks that are no longer here go. */
  markBackup(at: string, checks: readonly ListedCheck[]): Promise<Outcome<null>> {
    return this.#handle.run(async (database) => {
      const { store, done } = database.transaction("marks", "readwrite");
      store.delete(IDBKeyRange.bound(safe, `${safe}\uffff`));
      for (const mark of safeMarks(checks, at)) store.put(mark);
      store.put({ key: "backup", text: "", at });
      await done;
      return null;
    });
  }

  markAsked(): Promise<Outcome<null>> {
    return this.#put([{ key: "asked", text: "", at: new Date().toISOString() }]);
  }

  close(): void {
    this.#handle.close();
  }

  #put(marks: readonly Mark[]): Promise<Outcome<null>> {
    return this.#handle.run(async (database) => {
      const { store, done } = database.transaction("marks", "readwrite");
      for (const mark of marks) store.put(mark);
      await done;
      return null;
    });
  }
}

function safeMarks(checks: readonly ListedCheck[], at: string): Mark[] {
  return checks.map((stored) => ({
    key: `${safe}${stored.id}`,
    text: contentDigest(stored),
    at,
  }));
}
