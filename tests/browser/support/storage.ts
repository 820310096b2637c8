import type { BrowserContext, Page } from "playwright-core";

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

/** Leaves the site this many bytes more than nothing, by the browser's own quota. */
export async function setQuota(page: Page, origin: string, bytes: number | null): Promise<void> {
  const session = await page.context().newCDPSession(page);
  await session.send("Storage.overrideQuotaForOrigin", {
    origin,
    ...(bytes !== null && { quotaSize: bytes }),
  });
  await session.detach();
}

/** Every check in the browser's database, as it is stored. */
export async function storedChecks(page: Page): Promise<StoredCheckShape[]> {
  return page.evaluate(
    () =>
      new Promise<StoredCheckShape[]>((done, failed) => {
        const opening = indexedDB.open("stopfit");
        opening.onerror = () => failed(opening.error);
        opening.onsuccess = () => {
          const database = opening.result;
          const request = database.transaction("checks").objectStore("checks").getAll();
          request.onerror = () => failed(request.error);
          request.onsuccess = () => {
            database.close();
            done(request.result);
          };
        };
      }),
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
