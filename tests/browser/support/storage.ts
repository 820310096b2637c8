import type { BrowserContext, Page } from "playwright-core";
import { expect } from "vitest";

/** As in a browser whose owner forbids sites to store anything. */
export async function refuseStorage(context: BrowserContext): Promise<void> {
  await context.addInitScript(() => {
    const refuse = () => {
      throw new DOMException("Access to storage is denied.", "SecurityError");
    };
    IDBFactory.prototype.open = refuse;
    Storage.prototype.setItem = refuse;
    Storage.prototype.getItem = refuse;
  });
}

/** What a write of that many letters into a database of its own ends with: "kept", or the name of the error. */
async function trialWrite(page: Page, letters: number): Promise<string> {
  return page.evaluate(
    (count) =>
      new Promise<string>((done) => {
        const opening = indexedDB.open("trial");
        opening.onupgradeneeded = () => opening.result.createObjectStore("trial");
        opening.onerror = () => done(opening.error?.name ?? "unknown");
        opening.onsuccess = () => {
          const database = opening.result;
          const transaction = database.transaction("trial", "readwrite");
          // Noise: what repeats itself is written shorter than it is.
          const bytes = crypto.getRandomValues(new Uint8Array(60_000));
          const noise = btoa(String.fromCharCode(...bytes));
          const text = noise.repeat(Math.ceil(count / noise.length)).slice(0, count);
          transaction.objectStore("trial").put(text, 1);
          const end = (result: string) => {
            database.close();
            done(result);
          };
          transaction.oncomplete = () => end("kept");
          transaction.onabort = () => end(transaction.error?.name ?? "unknown");
        };
      }),
    letters,
  );
}

/** Room for the app and its checks, and little more. */
const littleRoom = 40_000_000;

/** Storage that can be filled up, of a page that has not been to its site yet. */
export interface SmallStorage {
  /** Fills it up, by the browser's own quota, until the function returned is called. */
  fill(): Promise<() => Promise<void>>;
}

/**
 * Gives a site little room. Chromium asks for its quota anew only every half minute, but for a write that is
 * larger than the room it last knew of: so a small room can be found full at once.
 */
export async function smallStorage(page: Page, origin: string): Promise<SmallStorage> {
  const session = await page.context().newCDPSession(page);
  await session.send("Storage.overrideQuotaForOrigin", { origin, quotaSize: littleRoom });
  return {
    fill: async () => {
      await session.send("Storage.overrideQuotaForOrigin", { origin, quotaSize: 1 });
      expect(await trialWrite(page, littleRoom)).toBe("QuotaExceededError");
      await expect
        .poll(() => trialWrite(page, 1000), { timeout: 60_000, interval: 1000 })
        .toBe("QuotaExceededError");
      return async () => {
        await session.send("Storage.overrideQuotaForOrigin", { origin });
        await session.detach();
      };
    },
  };
}

/** Every check in the browser's database, as it is stored, each picture back in its photo. */
export async function storedChecks(page: Page): Promise<StoredCheckShape[]> {
  const { rows, pictures } = await page.evaluate(
    () =>
      new Promise<{ rows: StoredCheckShape[]; pictures: StoredPicture[] }>((done, failed) => {
        const opening = indexedDB.open("stopfit");
        opening.onerror = () => failed(opening.error);
        opening.onsuccess = () => {
          const database = opening.result;
          const reading = database.transaction(["checks", "pictures"]);
          const rows = reading.objectStore("checks").getAll();
          const pictures = reading.objectStore("pictures").getAll();
          reading.onabort = () => failed(reading.error);
          reading.oncomplete = () => {
            database.close();
            done({ rows: rows.result, pictures: pictures.result });
          };
        };
      }),
  );
  const dataOf = new Map(pictures.map(({ key, data }) => [key, data]));
  return rows.map((row) => {
    const { photos, ...record } = row.record as { photos?: PhotoInRow[] };
    if (photos === undefined) return row;
    const whole = photos.map(({ picture, length: _, ...photo }) => ({
      ...photo,
      data: dataOf.get(`${row.id} ${picture}`),
    }));
    return { ...row, record: { ...record, photos: whole } };
  });
}

interface StoredPicture {
  readonly key: string;
  readonly data: string;
}

interface PhotoInRow {
  readonly picture: string;
  readonly length: number;
}

/** Puts a check into the browser's database, beside the app. */
export async function putStored(page: Page, stored: { readonly id: string }): Promise<void> {
  await page.evaluate(
    (check) =>
      new Promise<void>((done, failed) => {
        const opening = indexedDB.open("stopfit");
        opening.onerror = () => failed(opening.error);
        opening.onsuccess = () => {
          const database = opening.result;
          const writing = database.transaction("checks", "readwrite");
          writing.objectStore("checks").put(check);
          writing.onabort = () => failed(writing.error);
          writing.oncomplete = () => {
            database.close();
            done();
          };
        };
      }),
    stored,
  );
}

export interface StoredCheckShape {
  readonly id: string;
  readonly name: string;
  readonly deletedAt?: string;
  readonly record: Record<string, unknown>;
  readonly entries: Record<string, { texts: string[]; unit: string; tol: string }>;
  readonly progress: { step: string };
}
