import { readdirSync } from "node:fs";
import type { Page } from "playwright-core";
import { beforeAll, describe, expect, it } from "vitest";
import type { CheckRecord } from "../../src/records/check/checkRecord.ts";
import { AnswerPage } from "./support/answerPage.ts";
import { CheckList } from "./support/checkList.ts";
import { openEverything, pick } from "./support/controls.ts";
import { demoRecord } from "./support/everyStep.ts";
import { screensOnSite } from "./support/screensOnSite.ts";

// On the smallest screen no word of an answer is broken inside: in its tables, its formulas or anywhere else.

const stage = screensOnSite();
const names = readdirSync("demo-data/checks").map((file) => file.replace(/\.json$/, ""));

/** Words that begin on one line and end on another, other than at a hyphen or a slash of their own. */
function brokenWords(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    const broken: string[] = [];
    const texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    const range = document.createRange();
    for (let node = texts.nextNode(); node; node = texts.nextNode()) {
      const parent = node.parentElement;
      if (!parent || parent.closest("svg, script, style, .unseen")) continue;
      for (const word of (node.textContent ?? "").matchAll(/[\p{L}\p{N}.,]{2,}/gu)) {
        range.setStart(node, word.index);
        range.setEnd(node, word.index + word[0].length);
        const tops = [...range.getClientRects()]
          .filter(({ width, height }) => width > 0 && height > 0)
          .map(({ top }) => Math.round(top));
        if (new Set(tops).size > 1) {
          const place = parent.closest("[class]")?.className ?? parent.tagName;
          broken.push(`“${word[0]}” in ${place}`);
        }
      }
    }
    return broken;
  });
}

it("finds a word that is broken inside", async () => {
  const phone = await stage.openPhone();
  const page = await phone.newPage();
  await new CheckList(page).open(stage.address);
  expect(await brokenWords(page)).toEqual([]);
  await page.evaluate(() => {
    const narrow = document.createElement("p");
    narrow.className = "narrow";
    narrow.style.width = "40px";
    narrow.textContent = "an immeasurably long word";
    document.querySelector("main")?.append(narrow);
  });
  expect(await brokenWords(page)).toContain("“immeasurably” in narrow");
});

describe("an answer breaks no word, however large", () => {
  let page: Page;
  beforeAll(async () => {
    page = await (await stage.keepPhone({ demo: true })).newPage();
    const list = await new CheckList(page).open(stage.address);
    for (const name of names) await list.checkOf(demoRecord(name)).waitFor();
  });

  async function choose(unit: string): Promise<void> {
    await page.goto(`${stage.address}#/looks`);
    await pick(page.getByRole("radio", { name: new RegExp(`^${unit}`) }));
  }

  async function wrongIn(unit: string, record: CheckRecord): Promise<string[]> {
    await choose(unit);
    await page.goto(`${stage.address}#/check/${record.id}/answer`);
    await new AnswerPage(page).complete();
    await openEverything(page);
    const wrong: string[] = [];
    for (const text of ["usual", "large", "largest"]) {
      await page.evaluate((size) => {
        document.documentElement.dataset.text = size;
      }, text);
      for (const word of await brokenWords(page)) wrong.push(`${unit}, ${text}: ${word}`);
    }
    return wrong;
  }

  // One after the other: the second unit takes the answer that was worked out for the first.
  it.each(names)("%s, in mm and inches", async (name) => {
    const record = demoRecord(name);
    const inMillimeters = await wrongIn("Metric", record);
    const shown = await page.locator("main").textContent();
    expect(shown).toMatch(/\d mm/);
    expect([...inMillimeters, ...(await wrongIn("US", record))]).toEqual([]);
    expect(await page.locator("main").textContent()).not.toBe(shown);
  });
});
