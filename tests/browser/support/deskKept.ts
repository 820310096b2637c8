import type { Page } from "playwright-core";

export interface Kept {
  readonly submissions: readonly { readonly key: string; readonly checkId: string }[];
  readonly texts: readonly string[];
  readonly decisions: readonly {
    readonly key: string;
    readonly by: string;
    readonly fromBackup?: string;
  }[];
}

/** What the desk's database holds: submissions, the keys of texts, decisions. */
export async function kept(page: Page): Promise<Kept> {
  return page.evaluate(
    () =>
      new Promise<Kept>((done, failed) => {
        const opening = indexedDB.open("stopfit-desk");
        opening.onerror = () => failed(opening.error);
        opening.onsuccess = () => {
          const database = opening.result;
          const reading = database.transaction(["submissions", "texts", "decisions"]);
          const submissions = reading.objectStore("submissions").getAll();
          const texts = reading.objectStore("texts").getAllKeys();
          const decisions = reading.objectStore("decisions").getAll();
          reading.oncomplete = () => {
            database.close();
            done({
              submissions: submissions.result,
              texts: texts.result.map(String),
              decisions: decisions.result,
            });
          };
        };
      }),
  );
}
