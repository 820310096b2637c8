import { mkdirSync } from "node:fs";
import type { Page } from "playwright-core";
import { axeViolations } from "./axe.ts";

/** STOPFIT_PICTURES=1 keeps a picture of each screen that is looked at. */
const pictures = process.env.STOPFIT_PICTURES === undefined ? null : "tests/screenshots";

/*
 * axe-core's own rules, all of them, WCAG 2.2 A and AA among them. A pass of each screen also looks for
 * what no screen may show, and for content wider than the phone.
 */
export class ScreenLook {
  readonly seen: string[] = [];
  readonly wrong: string[] = [];

  constructor() {
    if (pictures) mkdirSync(pictures, { recursive: true });
  }

  readonly look = async (page: Page, screen: string): Promise<void> => {
    this.seen.push(screen);
    if (pictures)
      await page.screenshot({ path: `${pictures}/${screen.replace(/[^\w.-]+/g, "-")}.png` });
    for (const violation of await axeViolations(page)) this.wrong.push(`${screen}: ${violation}`);
    const text = ((await page.locator("body").textContent()) ?? "").replace(/“[^”]*”/g, "");
    if (/NaN|Infinity|undefined|\[object/.test(text))
      this.wrong.push(`${screen}: ${text.slice(0, 200)}`);
    const spare = await page.evaluate(
      () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
    );
    if (spare > 0) this.wrong.push(`${screen}: ${spare} px wider than the screen`);
  };
}
