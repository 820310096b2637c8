import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, inject, it } from "vitest";
import { inEveryAppearance, rulesOfAppearance } from "./support/appearances.ts";
import { axeViolations } from "./support/axe.ts";
import { CheckList } from "./support/checkList.ts";
import { everyScreen, goToScreen } from "./support/everyScreen.ts";
import { launchShell, Phone } from "./support/phone.ts";
import { Site } from "./support/site.ts";

// Every screen by its address in light, dark and sunlight, and with the largest words: by all rules once,
// then by those that colours and sizes can break.

let browser: Browser;
let site: Site;
let phone: Phone;
let page: Page;

beforeAll(async () => {
  browser = await launchShell();
  site = new Site();
  await site.publish(inject("dist"));
  phone = await Phone.open(browser, { bypassCSP: true, offlineCopy: true, demo: true });
  page = await phone.newPage();
  const list = await new CheckList(page).open(site.address);
  await list.check("Tern van, loaded").waitFor();
});

afterAll(async () => {
  await phone.close();
  await browser.close();
  await site.close();
});

it.each(everyScreen)(
  "%s: axe finds nothing and nothing is wider than the phone",
  async (_, address) => {
    await goToScreen(page, site.address, address);
    const wrong: string[] = [];
    let first = true;
    await inEveryAppearance(page, async ({ theme, text }) => {
      const rules = first ? undefined : rulesOfAppearance;
      first = false;
      for (const violation of await axeViolations(page, rules)) {
        wrong.push(`${theme}, ${text} words: ${violation}`);
      }
      const spare = await page.evaluate(
        () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
      );
      if (spare > 0) wrong.push(`${theme}, ${text} words: ${spare} px wider than the screen`);
    });
    expect(wrong).toEqual([]);
  },
  180_000,
);

it("in a person's own colors what is chosen is still told from the rest", async () => {
  await page.emulateMedia({ forcedColors: "active" });
  await goToScreen(page, site.address, "#/looks");
  const colors = await page.evaluate(() => {
    // Without opacity: what is clear shows the same ground.
    const grounds = (selector: string) =>
      [...document.querySelectorAll(selector)].map(
        (each) => /\d+, \d+, \d+/.exec(getComputedStyle(each).backgroundColor)?.[0],
      );
    return {
      chosen: grounds(".segmented label:has(:checked)"),
      others: grounds(".segmented label:not(:has(:checked))"),
    };
  });
  expect(colors.chosen.length).toBeGreaterThan(0);
  expect(colors.others.length).toBeGreaterThan(0);
  for (const chosen of colors.chosen) expect(colors.others).not.toContain(chosen);
  await page.emulateMedia({ forcedColors: "none" });
});

it("finds words too pale in one theme alone", async () => {
  await goToScreen(page, site.address, "#/");
  const found: string[] = [];
  await page.evaluate(() => {
    const pale = document.createElement("p");
    pale.textContent = "Words for the night";
    pale.style.color = "#e8f0ee";
    document.querySelector("main")?.append(pale);
  });
  await inEveryAppearance(page, async ({ theme }) => {
    const violations = await axeViolations(page, rulesOfAppearance);
    if (violations.some((line) => line.startsWith("color-contrast"))) found.push(theme);
  });
  expect(found).toContain("light");
  expect(found).not.toContain("dark");
});
