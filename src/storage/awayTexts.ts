import type { StoredCheck } from "../records/check/storedCheck.ts";
import { rowOf } from "./checkRow.ts";
import type { UnjoinedCheck, WriteTransaction } from "./database.ts";

/**
 * What is put away as a page is left, as texts beside the database: WebKit carries out nothing that is begun in
 * the database by then, while a text stands at once. Where the browser refuses them, the database is all.
 */
export class AwayTexts {
  readonly #mark: string;

  constructor(database: string) {
    this.#mark = `${database}.away `;
  }

  get any(): boolean {
    return this.#places().length > 0;
  }

  /** Photos whose pictures are in the database already are named only. */
  put({ key, stored, base }: UnjoinedCheck): void {
    const content = { stored: rowOf(stored), base: base && rowOf(base) };
    try {
      localStorage.setItem(this.#mark + key, JSON.stringify(content));
    } catch {
      // Full or refused.
    }
  }

  /** Once a check is written; not where something newer was put away since. */
  drop(key: string, written: StoredCheck): void {
    const away = this.#read(this.#mark + key);
    if (away && away.stored.updatedAt <= written.updatedAt) this.forget([this.#mark + key]);
  }

  /** Hands them to the database, to be joined there; gives those to be forgotten once that is done. */
  async take(transaction: WriteTransaction): Promise<readonly string[]> {
    const unjoined = transaction.objectStore("unjoined");
    const places = this.#places();
    for (const place of places) {
      const key = place.slice(this.#mark.length);
      const away = this.#read(place);
      // Where the database has the same, it has it with all its pictures.
      if (away && (await unjoined.getKey(key)) === undefined) await unjoined.put({ ...away, key });
    }
    return places;
  }

  forget(places: readonly string[]): void {
    try {
      for (const place of places) localStorage.removeItem(place);
    } catch {
      // They are joined in once more, which changes nothing.
    }
  }

  #places(): string[] {
    try {
      return Object.keys(localStorage).filter((key) => key.startsWith(this.#mark));
    } catch {
      return [];
    }
  }

  #read(place: string): Omit<UnjoinedCheck, "key"> | null {
    try {
      const { stored, base } = JSON.parse(localStorage.getItem(place) ?? "");
      return typeof stored?.updatedAt === "string" ? { stored, base } : null;
    } catch {
      return null;
    }
  }
}
