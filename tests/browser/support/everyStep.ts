import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import type { CheckRecord } from "../../../src/records/check/checkRecord.ts";
import { AnswerPage } from "./answerPage.ts";
import { CheckList } from "./checkList.ts";
import { CheckSteps } from "./checkSteps.ts";
import type { Phone } from "./phone.ts";
import { inMillimetres } from "./typist.ts";

export function demoRecord(name: string): CheckRecord {
  return JSON.parse(readFileSync(`demo-data/checks/${name}.json`, "utf8")) as CheckRecord;
}

/** A new check filled in from a record, to its answer; every step is looked at once it is filled in. */
export async function everyStep(
  phone: Phone,
  address: string,
  record: CheckRecord,
  look: (page: Page, screen: string) => Promise<void>,
): Promise<Page> {
  const page = await phone.newPage();
  const list = await new CheckList(page).open(address);
  await list.newCheck.click();
  const steps = new CheckSteps(page, inMillimetres);
  await steps.field("Vehicle").waitFor();
  await steps.fillUpTo("answer", record, "hand", (step) =>
    look(page, `${record.layout.kind} ${step}`),
  );
  await new AnswerPage(page).complete();
  return page;
}
