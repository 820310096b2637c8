import { mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, it } from "vitest";
import { backupLineText } from "../../../src/records/backup/backupLine.ts";
import { storedFromRecord } from "../../../src/records/filling/storedFromRecord.ts";
import { CheckList } from "../../browser/support/checkList.ts";
import { CheckSteps } from "../../browser/support/checkSteps.ts";
import { goToScreen } from "../../browser/support/everyScreen.ts";
import { demoRecord } from "../../browser/support/everyStep.ts";
import { inInches } from "../../browser/support/typist.ts";
import { generateRecords } from "../../support/generateRecords.ts";
import type { Stage } from "../support/onEngine.ts";

const checks = 400;

function backupOfMany(): string {
  const lines = [backupLineText({ kind: "header", createdAt: "2026-05-02T10:00:00.000Z" })];
  for (const record of generateRecords(checks)) {
    lines.push(backupLineText({ kind: "check", check: storedFromRecord(record) }));
  }
  lines.push(backupLineText({ kind: "end", lines: checks }));
  const file = join(mkdtempSync(join(tmpdir(), "stopfit-left-")), "backup.txt");
  writeFileSync(file, lines.join(""));
  return file;
}

export function leftPageCases(stage: Stage): void {
  it("a page that is left while it writes keeps no other from the checks", async () => {
    const window = await stage.open({ demo: true });
    const { page } = window;
    const { address } = stage.site;
    await page.goto(`${address}#/saved`);
    await page.getByLabel("Backup to restore").setInputFiles(backupOfMany());
    const restore = page.getByRole("button", { name: "Restore", exact: true });
    await restore.waitFor({ timeout: 60_000 });
    // Left by the page itself, at the first check that is written.
    await page.evaluate((to: string) => {
      const begun = IDBDatabase.prototype.transaction;
      let writes = 0;
      IDBDatabase.prototype.transaction = function (this: IDBDatabase, ...given) {
        if (given[1] === "readwrite") writes += 1;
        if (writes === 20) location.assign(to);
        return begun.apply(this, given);
      };
    }, address);
    await restore.click();
    await page.waitForFunction(() => document.querySelectorAll(".check-link").length > 17);
    expect(await window.errors()).toEqual([]);
  });

  it("what is typed last is there again though the page is left at once", async () => {
    const window = await stage.open({ demo: true });
    const { page } = window;
    const { address } = stage.site;
    const list = await new CheckList(page).open(address);
    await list.check("Tern van, loaded").waitFor();
    const step = `#/check/${demoRecord("arm-fits").id}/vehicle`;
    const vehicle = new CheckSteps(page, inInches()).field("Vehicle");
    await goToScreen(page, address, step);
    await vehicle.waitFor();
    const before = await vehicle.inputValue();
    await page.evaluate((text: string) => {
      const field = [...document.querySelectorAll("input")].find(({ value }) => value === text);
      const value = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, "value");
      value?.set?.call(field, `${text}, gray`);
      field?.dispatchEvent(new Event("input", { bubbles: true }));
      location.assign("about:blank");
    }, before);
    await page.waitForFunction(() => location.href === "about:blank");
    await goToScreen(page, address, step);
    await vehicle.waitFor();
    expect(await vehicle.inputValue()).toBe(`${before}, gray`);
  });
}
