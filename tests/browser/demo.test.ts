import { readdirSync, readFileSync } from "node:fs";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, inject, it } from "vitest";
import type { CheckRecord } from "../../src/records/check/checkRecord.ts";
import { type ComparedCorner, compareWithVectors, vectorIds } from "../vectors/vectors.ts";
import { AnswerPage } from "./support/answerPage.ts";
import { assessFiles, type PrintedAnswer } from "./support/assess.ts";
import { CheckList, downloadedRecord } from "./support/checkList.ts";
import { launchShell, Phone } from "./support/phone.ts";
import { Site } from "./support/site.ts";

let browser: Browser;
let site: Site;
let phone: Phone;
let page: Page;

const files = readdirSync("demo-data/checks")
  .filter((name) => name.endsWith(".json"))
  .map((name) => `demo-data/checks/${name}`);
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

it("there is a demo check for every record of the vectors", () => {
  const ids = files.map((file) => (JSON.parse(readFileSync(file, "utf8")) as CheckRecord).id);
  expect(ids).toEqual(expect.arrayContaining([...vectorIds]));
});

it.each(files)("%s opens from the list, and its answer is the vectors'", async (file) => {
  const record = JSON.parse(readFileSync(file, "utf8")) as CheckRecord;
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
  phone.expectNoTrouble();
});

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
