import { readdirSync, readFileSync } from "node:fs";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, inject, it } from "vitest";
import type { CheckRecord } from "../../src/records/check/checkRecord.ts";
import { type ComparedCorner, compareWithVectors, vectorIds } from "../vectors/vectors.ts";
import { AnswerPage } from "./support/answerPage.ts";
import { type Appearance, inEveryAppearance } from "./support/appearances.ts";
import { assessFiles, type PrintedAnswer } from "./support/assess.ts";
import { brokenWords } from "./support/brokenWords.ts";
import { CheckList, downloadedRecord } from "./support/checkList.ts";
import { openEverything, pick } from "./support/controls.ts";
import { launchShell, Phone } from "./support/phone.ts";
import { Site } from "./support/site.ts";

let browser: Browser;
let site: Site;
let phone: Phone;
let page: Page;

const files = readdirSync("demo-data/checks")
  .filter((name) => name.endsWith(".json"))
  .map((name) => `demo-data/checks/${name}`);
const everySize = (["usual", "large", "largest"] as const).map((text) => ({
  theme: "light" as const,
  text,
}));
let answers: ReadonlyMap<string, PrintedAnswer>;
/** What was saved of each demo check, by the check's file. */
const saved = new Map<string, string>();

beforeAll(async () => {
  const assessing = assessFiles(files);
  browser = await launchShell();
  answers = new Map((await assessing).map((answer, index) => [files[index] ?? "", answer]));
  site = new Site();
  await site.publish(inject("dist"));
  phone = await Phone.open(browser, { demo: true });
  page = await phone.newPage();
});

afterAll(async () => {
  await browser.close();
  await site.close();
});

it("finds a word that is broken inside", async () => {
  await new CheckList(page).open(site.address);
  expect(await brokenWords(page)).toEqual([]);
  await page.evaluate(() => {
    const narrow = document.createElement("p");
    narrow.className = "narrow";
    narrow.style.width = "40px";
    narrow.textContent = "an immeasurably long word";
    document.querySelector("main")?.append(narrow);
  });
  expect(await brokenWords(page)).toContain("“immeasurably” in narrow");
  await page.reload();
});

it("there is a demo check for every record of the vectors", () => {
  const ids = files.map((file) => (JSON.parse(readFileSync(file, "utf8")) as CheckRecord).id);
  expect(ids).toEqual(expect.arrayContaining([...vectorIds]));
});

async function useUnit(name: string): Promise<void> {
  await page.goto(`${site.address}#/looks`);
  await pick(page.getByRole("radio", { name: new RegExp(`^${name}`) }));
}

/** On the smallest screen no word of an answer is broken inside: in its tables, its formulas or anywhere else. */
async function brokenInAnySize(unit: string): Promise<string[]> {
  await openEverything(page);
  const wrong: string[] = [];
  const look = async ({ text }: Appearance) => {
    for (const word of await brokenWords(page)) wrong.push(`${unit}, ${text}: ${word}`);
  };
  await inEveryAppearance(page, look, everySize);
  return wrong;
}

it.each(files)(
  "%s opens from the list, its answer is the vectors', and it breaks no word",
  async (file) => {
    const record = JSON.parse(readFileSync(file, "utf8")) as CheckRecord;
    await useUnit("Metric");
    const list = await new CheckList(page).open(site.address);
    await list.checkOf(record).click();
    const answer = new AnswerPage(page);
    await answer.complete();
    expect(await answer.outOfFirstScreenful(740)).toEqual([]);
    const assessed = answers.get(file);
    if (assessed === undefined) throw new Error(`${file} was not assessed`);
    expect(await answer.differencesFrom(assessed, "mm")).toEqual([]);
    if (vectorIds.includes(record.id)) {
      const corners = assessed.corners as readonly ComparedCorner[];
      expect(compareWithVectors(record.id, corners).disagreements).toEqual([]);
    }
    saved.set(file, (await downloadedRecord(await answer.saveFile())).file);

    const inMillimeters = await brokenInAnySize("mm");
    const shown = await page.locator("main").textContent();
    expect(shown).toMatch(/\d mm/);
    // In the other unit it takes the answer that was worked out for the first.
    await useUnit("US");
    await page.goto(`${site.address}#/check/${record.id}/answer`);
    await answer.complete();
    expect([...inMillimeters, ...(await brokenInAnySize("inches"))]).toEqual([]);
    expect(await page.locator("main").textContent()).not.toBe(shown);
    phone.expectNoTrouble();
  },
);

it("the file saved of each gives the same answer", async () => {
  expect([...saved.keys()]).toEqual(files);
  const again = await assessFiles([...saved.values()]);
  for (const [index, file] of files.entries()) {
    expect(again[index]?.corners, file).toEqual(answers.get(file)?.corners);
  }
});

it("a job has both axles and a before and an after in one place, found by its customer, offline", async () => {
  const away = await Phone.open(browser, { offlineCopy: true, demo: true });
  const page = await away.newPage();
  const list = await new CheckList(page).open(site.address);
  await page.getByText("Ready offline").waitFor();
  await away.goOffline();
  await list.search.fill("farrow");
  await expect.poll(() => list.rowsOfJob("Job 2214").then(({ length }) => length)).toBe(3);
  const rows = await list.rowsOfJob("Job 2214");
  expect(rows.map((row) => /(Front|Rear) axle[^·]*/.exec(row)?.[0].trim())).toEqual([
    "Front axle",
    "Rear axle, before",
    "Rear axle, after",
  ]);
  await list.check("Osprey wagon, stop fitted").click();
  const answer = new AnswerPage(page);
  await answer.complete();
  const sides = page.getByRole("table", { name: /^(Left|Right): before and after$/ });
  await sides.nth(1).waitFor({ timeout: 60_000 });
  const verdicts = page.locator(".compared-one .check-state");
  expect(await verdicts.allTextContents()).toEqual(["It doesn't fit", "It fits"]);
  await page.getByRole("link", { name: /^Front axle/ }).click();
  await expect.poll(() => page.url()).toContain("000000000017");
  away.expectNoTrouble();
  await away.close();
});
