import type { StoredCheck } from "../records/check/storedCheck.ts";
import { rowOf } from "./checkRow.ts";
import type { UnjoinedCheck } from "./database.ts";

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
    return this.places().length > 0;
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
    const away = this.read(this.#mark + key);
    if (away && away.stored.updatedAt <= written.updatedAt) this.forget([this.#mark + key]);
  }

  forget(places: readonly string[]): void {
    try {
      for (const place of places) localStorage.removeItem(place);
    } catch {
      // They are joined in once more, which changes nothing.
    }
  }

  places(): readonly string[] {
    try {
      return Object.keys(localStorage).filter((key) => key.startsWith(this.#mark));
    } catch {
      return [];
    }
  }

  keyAt(place: string): string {
    return place.slice(this.#mark.length);
  }

  /** Null where it is none. */
  read(place: string): Omit<UnjoinedCheck, "key"> | null {
    try {
      const { stored, base } = JSON.parse(localStorage.getItem(place) ?? "");
      return typeof stored?.updatedAt === "string" ? { stored, base } : null;
    } catch {
      return null;
    }
  }
}
