import type { Page } from "playwright-core";
import type { CheckRecord } from "../../../src/records/check/checkRecord.ts";
import type { StoredCheck } from "../../../src/records/check/storedCheck.ts";
import { storedFromRecord } from "../../../src/records/filling/storedFromRecord.ts";
import { CheckList } from "./checkList.ts";
import { putStored } from "./storage.ts";

/** The list of a phone that has these checks, each as its file has it, by the ways of no screen. */
export async function openListWith(
  page: Page,
  address: string,
  records: readonly CheckRecord[],
): Promise<CheckList> {
  const list = await new CheckList(page).open(address);
  for (const record of records) {
    const stored: StoredCheck = { ...storedFromRecord(record), revision: 1 };
    await putStored(page, stored);
  }
  await page.reload();
  for (const record of records) await list.checkOf(record).waitFor();
  return list;
}
