import { afterEach, beforeEach, describe, expect, inject, it } from "vitest";
import { AnswerPage } from "../browser/support/answerPage.ts";
import { CheckList } from "../browser/support/checkList.ts";
import { CheckSteps } from "../browser/support/checkSteps.ts";
import { demoRecord } from "../browser/support/everyStep.ts";
import { Site } from "../browser/support/site.ts";
import { inInches } from "../browser/support/typist.ts";
import { type EngineWindow, engines, missingPrograms } from "./support/engines.ts";

describe.each(engines)("$name", (engine) => {
  const missing = missingPrograms(engine);
  let site: Site;
  let window: EngineWindow;
  beforeEach(async () => {
    if (missing.length > 0) return;
    site = new Site();
    await site.publish(inject("dist"));
    window = await engine.open({ width: 360, height: 740 });
  });
  afterEach(async () => {
    await window?.close();
    await site?.close();
  });

  it.skipIf(missing.length > 0)("takes a whole check", async () => {
    const { page } = window;
    const list = await new CheckList(page).open(site.address);
    await list.useInches();
    await list.newCheck.click();
    const steps = new CheckSteps(page, inInches());
    await steps.field("Vehicle").waitFor();
    await steps.fillUpTo("answer", demoRecord("arm-fits"), "pack");
    const answer = new AnswerPage(page);
    await answer.complete();
    await page.screenshot({ path: `/tmp/plan/${engine.name}.png` });
    expect(await answer.verdict.textContent()).toBe("It fits");
    expect((await answer.shownFigures()).get("leverRatio")).toBe(1);
    expect(await window.errors()).toEqual([]);
  });
});
