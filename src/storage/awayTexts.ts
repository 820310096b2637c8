import type { StoredCheck } from "../records/check/storedCheck.ts";
import { rowOf } from "./checkRow.ts";
import type { UnjoinedCheck } from "./database.ts";

/**
 * What is put away as a page is left, as texts beside the database: WebKit carries out nothing that is begun in
 * the database by then, while a text stands at once. Where the browser refuses them, the database is all.
 */
export class AwayTexts {
  /** What each begins with; the key of what was put away follows. */
  readonly mark: string;
  /** Of those that this page put away, by key: as of when. */
  private readonly own = new Map<string, string>();

  constructor(database: string) {
    this.mark = `${database}.away `;
  }

  places(): string[] {
    try {
      return Object.keys(localStorage).filter((place) => place.startsWith(this.mark));
    } catch {
      return [];
    }
  }

  /** Photos whose pictures are in the database already are named only. */
  put({ key, stored, base }: UnjoinedCheck): void {
    const content = { stored: rowOf(stored), base: base && rowOf(base) };
    try {
      localStorage.setItem(this.mark + key, JSON.stringify(content));
      this.own.set(key, stored.updatedAt);
    } catch {
      // Full or refused.
    }
  }

  /** Once a check is written; not where something newer was put away since. */
  drop(key: string, { updatedAt }: StoredCheck): void {
    const away = this.own.get(key);
    if (away === undefined || away > updatedAt) return;
    this.own.delete(key);
    localStorage.removeItem(this.mark + key);
  }
}
