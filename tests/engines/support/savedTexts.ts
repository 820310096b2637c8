import type { Page } from "playwright-core";
import { expect } from "vitest";

/** What the page has the browser save from now on, as text: each engine has its own way with downloads. */
export async function savedTexts(page: Page): Promise<{ next(): Promise<string> }> {
  await page.evaluate(() => {
    const saved: string[] = [];
    Object.assign(window, { stopfitSaved: saved });
    const addressOf = URL.createObjectURL.bind(URL);
    URL.createObjectURL = (object: Blob) => {
      object.text().then((text) => saved.push(text));
      return addressOf(object);
    };
  });
  let read = 0;
  return {
    next: async () => {
      const all = () =>
        page.evaluate(() => (window as unknown as { stopfitSaved: string[] }).stopfitSaved);
      await expect
        .poll(async () => (await all()).length, { timeout: 20_000 })
        .toBeGreaterThan(read);
      return (await all())[read++] ?? "";
    },
  };
}
