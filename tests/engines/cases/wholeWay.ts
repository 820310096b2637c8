import { mkdirSync, mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { expect, it } from "vitest";
import { version } from "../../../package.json";
import { AnswerPage } from "../../browser/support/answerPage.ts";
import { assessFile } from "../../browser/support/assess.ts";
import { CheckList } from "../../browser/support/checkList.ts";
import { CheckSteps } from "../../browser/support/checkSteps.ts";
import { pick } from "../../browser/support/controls.ts";
import { demoRecord } from "../../browser/support/everyStep.ts";
import { inInches } from "../../browser/support/typist.ts";
import { saveCodePictures } from "../support/codePicture.ts";
import type { Stage } from "../support/onEngine.ts";
import { savedTexts } from "../support/savedTexts.ts";

const folder = mkdtempSync(join(tmpdir(), "stopfit-engines-"));
mkdirSync("tests/screenshots", { recursive: true });

async function typeIn(page: Page, list: CheckList): Promise<AnswerPage> {
  await list.newCheck.click();
  const steps = new CheckSteps(page, inInches());
  await steps.field("Vehicle").waitFor();
  await steps.fillUpTo("answer", demoRecord("arm-fits"), "pack");
  const answer = new AnswerPage(page);
  await answer.complete();
  return answer;
}

export function wholeWayCases(stage: Stage): void {
  it("a whole check, the server gone in between, sent on by file, link and code", async () => {
    const window = await stage.open();
    const { page } = window;
    const { site } = stage;
    const list = await new CheckList(page).open(site.address);
    await list.ready(version).waitFor();
    await site.close();
    await list.useInches();
    const answer = await typeIn(page, list);

    await page.screenshot({
      caret: "initial",
      path: `tests/screenshots/${stage.engine.name}-answer.png`,
    });
    const texts = await savedTexts(page);
    await page.getByRole("button", { name: "Send", exact: true }).click();
    await page.getByRole("button", { name: "Save the file" }).click();
    const file = join(folder, `${stage.engine.name}.json`);
    writeFileSync(file, await texts.next());
    await pick(page.getByRole("radio", { name: "Link" }));
    await page.getByText("Show the link").click();
    const link = await page.getByLabel("Link to this check").inputValue();
    await pick(page.getByRole("radio", { name: "Code" }));
    const pictures = await saveCodePictures(page, join(folder, stage.engine.name));
    await page.getByRole("button", { name: "Close", exact: true }).click();
    expect(await answer.differencesFrom(await assessFile(file), "in")).toEqual([]);

    await page.reload();
    await answer.complete();
    expect(await answer.verdict.textContent()).toBe("It fits");
    expect(await window.errors()).toEqual([]);

    await site.publish(stage.dist);
    const other = await stage.open();
    await other.page.goto(link);
    await other.page.getByRole("heading", { name: "A check was sent to you" }).waitFor();
    await other.page.goto(`${site.address}#/scan`);
    // What was sent waits for its answer as long as the page is open.
    await other.page.reload();
    for (const picture of pictures) {
      await other.page.getByLabel("Pictures of codes").setInputFiles(picture);
    }
    await other.page.getByRole("heading", { name: "A check was sent to you" }).waitFor();
    expect(await other.errors()).toEqual([]);
  });

  it("what is stored goes elsewhere by a backup", async () => {
    const window = await stage.open({ demo: true });
    const { page } = window;
    const list = await new CheckList(page).open(stage.site.address);
    await list.check("Tern van, loaded").waitFor();
    await list.act("Tern van, loaded", "Copy");
    await list.check("Tern van, loaded (copy)").first().waitFor();
    await page.goto(`${stage.site.address}#/saved`);
    const texts = await savedTexts(page);
    await page.getByRole("button", { name: "Save a backup" }).first().click();
    const file = join(folder, `${stage.engine.name}-backup.txt`);
    writeFileSync(file, await texts.next());
    expect(await window.errors()).toEqual([]);

    const other = await stage.open();
    await other.page.goto(`${stage.site.address}#/saved`);
    await other.page.getByLabel("Backup to restore").setInputFiles(file);
    await other.page.getByRole("button", { name: "Restore", exact: true }).click();
    await other.page.getByText(/Restored: \d+ added/).waitFor();
    const restored = await new CheckList(other.page).open(stage.site.address);
    await restored.check("Tern van, loaded (copy)").waitFor();
    expect(await other.errors()).toEqual([]);
  });
}
