import type { Locator, Page } from "playwright-core";
import { withPlainSpaces } from "../../../src/saying/quantityText.ts";

/** Chooses a radio button or ticks a box as a finger does: on the words beside it. */
export async function pick(control: Locator): Promise<void> {
  await control.waitFor({ state: "attached" });
  if (await control.isChecked()) return;
  await control.locator("xpath=ancestor::label").click();
  if (!(await control.isChecked())) throw new Error(`Not chosen by a tap: ${control}`);
}

/** Unfolds everything on the page, also what only unfolding brings. */
export async function openEverything(page: Page): Promise<void> {
  for (let still = 0; still < 3; ) {
    const closed = await page.evaluate(() => {
      const found = [...document.querySelectorAll("details")].filter(({ open }) => !open);
      for (const details of found) details.open = true;
      return found.length;
    });
    still = closed === 0 ? still + 1 : 0;
    await page.waitForTimeout(60);
  }
}

/** What stands there, as it would be typed: with spaces that break. */
export async function textOf(place: Locator): Promise<string> {
  return withPlainSpaces((await place.textContent()) ?? "");
}
