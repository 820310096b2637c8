import { expect, it } from "vitest";
import { inEveryAppearance, rulesOfAppearance } from "./support/appearances.ts";
import { axeViolations } from "./support/axe.ts";
import { CheckList } from "./support/checkList.ts";
import { CheckSteps } from "./support/checkSteps.ts";
import { DeskPage } from "./support/deskPage.ts";
import { demoRecord } from "./support/everyStep.ts";
import { screensOnSite } from "./support/screensOnSite.ts";
import { inMillimetres } from "./support/typist.ts";

// The list of checks beside the one that is open, in a window of a desk's size.

const stage = screensOnSite();
const desk = { width: 1280, height: 800 };
const withDemo = { ...desk, demo: true };
const first = demoRecord("arm-fits");
const second = demoRecord("arm-needs-taller");

it("list and check stand side by side; back, reload and keys keep both", async () => {
  const phone = await stage.openPhone(withDemo);
  const page = await phone.newPage();
  const list = await new CheckList(page).open(stage.address);
  await list.checkOf(first).click();
  const pane = page.getByRole("complementary", { name: "Checks on this phone" });
  const open = pane.locator("a[aria-current=page]");
  const openId = async () => (await open.getAttribute("href"))?.split("/")[2];
  await expect.poll(openId).toBe(first.id);
  const check = page.locator("main");
  await check.getByRole("heading", { level: 1 }).waitFor();
  const [left, right] = [await pane.boundingBox(), await check.boundingBox()];
  expect((left?.x ?? 1) + (left?.width ?? 0)).toBeLessThanOrEqual(right?.x ?? 0);
  expect((right?.x ?? 0) + (right?.width ?? 0)).toBeLessThanOrEqual(1280);

  // Read and left where it was: to another check and back by the browser's own button.
  await pane.evaluate((element) => {
    element.scrollTop = 150;
  });
  const row = pane.locator(`a[href^="#/check/${second.id}"]`);
  await row.focus();
  await page.keyboard.press("Enter");
  await expect.poll(openId).toBe(second.id);
  const placeOf = async () => (await row.boundingBox())?.y ?? Number.NaN;
  const before = await placeOf();
  expect(await pane.evaluate((element) => element.scrollTop)).toBeGreaterThan(0);
  await page.goBack();
  await expect.poll(openId).toBe(first.id);
  // A row above may have a line more or less, once its answer is there.
  const line = 26;
  expect(Math.abs((await placeOf()) - before)).toBeLessThanOrEqual(line);

  // In the middle of a step, of another check than the list's first.
  const steps = new CheckSteps(page, inMillimetres);
  await page.goto(`${stage.address}#/check/${first.id}/cautions`);
  await steps.acknowledge();
  await page.goto(`${stage.address}#/check/${first.id}/left.gap`);
  await steps.reading().waitFor();
  await page.reload();
  await steps.reading().waitFor();
  expect(await openId()).toBe(first.id);
  // The drawing stands beside the number.
  const [drawing, number] = [
    await page.locator(".reading-show .drawing").boundingBox(),
    await steps.reading().boundingBox(),
  ];
  expect((drawing?.x ?? 1280) + (drawing?.width ?? 0)).toBeLessThanOrEqual(number?.x ?? 0);
  phone.expectNoTrouble();
});

it.each([
  ["a step", "left.gap"],
  ["the answer", "answer"],
  ["which stop fits", "stops"],
])(
  "%s with the list beside: axe finds nothing, nothing is wider than the window",
  async (_, at) => {
    const phone = await stage.openPhone(withDemo);
    const page = await phone.newPage();
    await new CheckList(page).open(stage.address);
    await page.locator("a.check-link").first().waitFor();
    for (const width of [1280, 1100]) {
      await page.setViewportSize({ width, height: 800 });
      await page.goto(`${stage.address}#/check/${first.id}/${at}`);
      await page.locator("a[aria-current=page]").waitFor();
      await page.locator("h1").first().waitFor();
      await page.waitForFunction(() => document.querySelector('[aria-busy="true"]') === null);
      const wrong: string[] = [];
      let rules: readonly string[] | undefined;
      await inEveryAppearance(page, async ({ theme, text }) => {
        for (const violation of await axeViolations(page, rules)) {
          wrong.push(`${width}, ${theme}, ${text} words: ${violation}`);
        }
        rules = rulesOfAppearance;
        const spare = await page.evaluate(
          () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
        );
        if (spare > 0) wrong.push(`${width}, ${theme}, ${text} words: ${spare} px too wide`);
      });
      expect(wrong).toEqual([]);
    }
  },
);

it("at the review desk the list stands beside the check that is open", async () => {
  const phone = await stage.openPhone(desk);
  const office = await new DeskPage(await phone.newPage()).open(stage.address);
  const { page } = office;
  await office.takeFiles(
    ["arm-fits", "arm-needs-taller"].map((name) => `demo-data/checks/${name}.json`),
  );
  await office.closeImport();
  await office.openCheck(second.vehicle.label);
  const list = page.getByRole("complementary", { name: "Checks at this review desk" });
  const selected = list.locator('[aria-selected="true"]');
  const opened = page.locator("main h1").first();
  const heading = await opened.textContent();
  const before = await selected.getAttribute("id");
  await office.list.focus();
  await page.keyboard.press(
    (await selected.getAttribute("aria-posinset")) === "1" ? "ArrowDown" : "ArrowUp",
  );
  await page.keyboard.press("Enter");
  await expect.poll(() => opened.textContent()).not.toBe(heading);
  expect(await selected.getAttribute("id")).not.toBe(before);
  await page.goBack();
  await expect.poll(() => selected.getAttribute("id")).toBe(before);
  await office.computed();
  const wrong: string[] = [];
  await inEveryAppearance(page, async ({ theme, text }) => {
    for (const violation of await axeViolations(page, rulesOfAppearance)) {
      wrong.push(`${theme}, ${text} words: ${violation}`);
    }
    const spare = await page.evaluate(
      () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
    );
    if (spare > 0) wrong.push(`${theme}, ${text} words: ${spare} px too wide`);
  });
  wrong.push(...(await axeViolations(page)));
  expect(wrong).toEqual([]);
  phone.expectNoTrouble();
});

it("a phone has one pane and loads nothing of the other", async () => {
  const phone = await stage.openPhone({ demo: true });
  const page = await phone.newPage();
  const list = await new CheckList(page).open(stage.address);
  await list.checkOf(first).click();
  await expect.poll(() => new URL(page.url()).hash).toContain(first.id);
  await page.locator("main h1").waitFor();
  expect(await page.getByRole("complementary", { name: "Checks on this phone" }).count()).toBe(0);
  const asked = await page.evaluate(() =>
    performance.getEntriesByType("resource").filter(({ name, ...entry }) => {
      const { initiatorType } = entry as { initiatorType?: string };
      return /ChecksBeside/.test(name) && initiatorType !== "fetch";
    }),
  );
  expect(asked).toEqual([]);
});
