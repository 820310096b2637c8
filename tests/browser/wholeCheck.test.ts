import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { beforeEach, expect, it } from "vitest";
import { version } from "../../package.json";
import type { CheckRecord } from "../../src/records/check/checkRecord.ts";
import { type ComparedCorner, compareWithVectors } from "../vectors/vectors.ts";
import { AnswerPage } from "./support/answerPage.ts";
import { assessFile } from "./support/assess.ts";
import { CheckList, downloadedRecord } from "./support/checkList.ts";
import { CheckSteps } from "./support/checkSteps.ts";
import type { Phone } from "./support/phone.ts";
import { phoneOnSite } from "./support/phoneOnSite.ts";
import type { Site } from "./support/site.ts";
import { inInches, inMillimetres, type Typist } from "./support/typist.ts";

const stage = phoneOnSite({ offlineCopy: true, wholeBrowser: true });
let site: Site;
let phone: Phone;

beforeEach(() => {
  ({ site, phone } = stage);
});

function demoRecord(name: string): CheckRecord {
  return JSON.parse(readFileSync(`demo-data/checks/${name}.json`, "utf8")) as CheckRecord;
}

/** First visit with a signal; once it is ready, no signal and no server any more. */
async function firstVisitThenNoSignal(): Promise<Page> {
  const page = await phone.newPage();
  const list = await new CheckList(page).open(site.address);
  await list.ready(version).waitFor();
  await phone.goOffline();
  await site.close();
  return page;
}

async function typeWholeCheck(
  page: Page,
  record: CheckRecord,
  typist: Typist,
  stopFrom: "hand" | "pack",
) {
  const list = new CheckList(page);
  if (typist.unit === "in") await list.useInches();
  await list.newCheck.click();
  const steps = new CheckSteps(page, typist);
  await steps.field("Vehicle").waitFor();
  await steps.fillUpTo("answer", record, stopFrom);
  const answer = new AnswerPage(page);
  await answer.complete();
  const saved = await downloadedRecord(await answer.saveFile());
  return { answer, saved, assessed: await assessFile(saved.file) };
}

it("a whole arm check typed in inches without a signal gives the answer that assess gives", async () => {
  const record = demoRecord("arm-fits");
  const page = await firstVisitThenNoSignal();
  const { answer, saved, assessed } = await typeWholeCheck(page, record, inInches(), "pack");

  expect(saved.record.layout.kind).toBe("arm");
  const typed = saved.record.corners[0]?.gap?.typed;
  expect(typed).toHaveLength(2);
  expect(await answer.differencesFrom(assessed, "in")).toEqual([]);
  expect(assessed.verdict).toBe("ok");
  // 21 mm is 53/64 in to the nearest graduation: at most 1/128 in off.
  expect(Math.abs((saved.record.corners[1]?.gap?.values[0] ?? 0) - 22)).toBeLessThan(0.2);
  phone.expectNoTrouble();
  expect(phone.strangers(site.origin)).toEqual([]);
});

it("a whole axle check typed in mm without a signal gives the vectors' figures", async () => {
  const record = demoRecord("axle-towing-early");
  const page = await firstVisitThenNoSignal();
  const { answer, saved, assessed } = await typeWholeCheck(page, record, inMillimetres, "hand");

  expect(await answer.differencesFrom(assessed, "mm")).toEqual([]);
  const corners = assessed.corners as readonly ComparedCorner[];
  expect(compareWithVectors(record.id, corners).disagreements).toEqual([]);
  expect(assessed.verdict).toBe("care");
  expect(saved.record.id).not.toBe(record.id);
  phone.expectNoTrouble();
  expect(phone.strangers(site.origin)).toEqual([]);
});
