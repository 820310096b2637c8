import { readdirSync, readFileSync } from "node:fs";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, inject, it } from "vitest";
import type { CheckRecord } from "../../src/records/check/checkRecord.ts";
import { type ComparedCorner, compareWithVectors, vectorIds } from "../vectors/vectors.ts";
import { AnswerPage } from "./support/answerPage.ts";
import { assessFile } from "./support/assess.ts";
import { CheckList, downloadedRecord } from "./support/checkList.ts";
import { launchChromium, Phone } from "./support/phone.ts";
import { Site } from "./support/site.ts";

let browser: Browser;
let site: Site;
let phone: Phone;

beforeAll(async () => {
  browser = await launchChromium();
  site = new Site();
  await site.publish(inject("dist"));
  phone = await Phone.open(browser);
});

afterAll(async () => {
  await browser.close();
  await site.close();
});

const files = readdirSync("demo-data/checks")
  .filter((name) => name.endsWith(".json"))
  .map((name) => `demo-data/checks/${name}`);

it("there is a demo check for every record of the vectors", () => {
  const ids = files.map((file) => (JSON.parse(readFileSync(file, "utf8")) as CheckRecord).id);
  expect(ids).toEqual(expect.arrayContaining([...vectorIds]));
});

it.each(files)("%s opens from the list, and its answer is the vectors'", async (file) => {
  const record = JSON.parse(readFileSync(file, "utf8")) as CheckRecord;
  const page = await phone.newPage();
  const list = await new CheckList(page).open(site.address);
  await list.checkOf(record).click();
  const answer = new AnswerPage(page);
  await answer.complete();
  const assessed = await assessFile(file);
  expect(await answer.differencesFrom(assessed, "mm")).toEqual([]);
  if (vectorIds.includes(record.id)) {
    const corners = assessed.corners as readonly ComparedCorner[];
    expect(compareWithVectors(record.id, corners).disagreements).toEqual([]);
  }
  const saved = await downloadedRecord(await answer.saveFile());
  expect((await assessFile(saved.file)).corners).toEqual(assessed.corners);
  phone.expectNoTrouble();
  await page.close();
});
