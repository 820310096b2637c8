import { mkdirSync, mkdtempSync, readdirSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Locator, Page } from "playwright-core";
import { runTool } from "../../src/tooling/run.mjs";
import { AnswerPage } from "../browser/support/answerPage.ts";
import { CheckList } from "../browser/support/checkList.ts";
import { CheckSteps } from "../browser/support/checkSteps.ts";
import { DeskPage } from "../browser/support/deskPage.ts";
import { demoRecord } from "../browser/support/everyStep.ts";
import { launchChromium } from "../browser/support/phone.ts";
import { Site } from "../browser/support/site.ts";
import { inMillimetres } from "../browser/support/typist.ts";
import { measuredPhone } from "./measuredPhone.ts";

/* The pictures of README.md, taken from the app as it is. */
const folder = "demo-data/screenshots";

async function take(page: Page, name: string): Promise<void> {
  await page.evaluate(() => document.fonts.ready);
  await page.screenshot({ path: join(folder, `${name}.png`), scale: "css" });
}

async function takeAt(page: Page, name: string, place: Locator): Promise<void> {
  await place.evaluate((element) => element.scrollIntoView({ block: "start" }));
  await page.waitForTimeout(300);
  await take(page, name);
}

const dist = process.env.STOPFIT_DIST ?? mkdtempSync(join(tmpdir(), "stopfit-screenshots-"));
if (process.env.STOPFIT_DIST === undefined) {
  const env = { ...process.env, NODE_ENV: "production", VITE_DEMO: "1" };
  const args = ["build", "--logLevel", "error", "--outDir", dist];
  if ((await runTool("vite/bin/vite.js", args, { env })) !== 0) throw new Error("No build.");
}
mkdirSync(folder, { recursive: true });
const site = new Site();
await site.publish(dist);
const browser = await launchChromium();
try {
  const phone = await measuredPhone(browser);
  const page = await phone.newPage();
  const list = await new CheckList(page).open(site.address);
  await page.getByText("Ready offline").waitFor();
  await page.waitForFunction(() => !document.body.textContent?.includes("No answer yet"));
  await take(page, "list");

  const record = demoRecord("arm-needs-taller");
  await list.newCheck.click();
  const steps = new CheckSteps(page, inMillimetres);
  await steps.field("Vehicle").waitFor();
  await steps.fillUpTo("left.gap", record, "pack");
  await steps.reading().fill("1 9/16 in");
  await steps.kept.waitFor();
  await take(page, "reading");

  await new CheckList(page).open(site.address);
  await list.checkOf(record).click();
  await new AnswerPage(page).complete();
  await page.locator(".prescription").first().waitFor();
  await take(page, "answer");
  await takeAt(page, "travel", page.getByRole("heading", { name: "Travel, to scale" }));
  await takeAt(page, "ladder", page.getByRole("heading", { name: "Travel ladder" }));
  const map = page.getByText("Left: extra height and stiffness");
  await map.scrollIntoViewIfNeeded();
  await page.waitForTimeout(3000);
  await takeAt(page, "map", map);

  await page.goto(`${site.address}#/check/${record.id}/stops`);
  await page
    .getByText(/of \d+ stops/)
    .first()
    .waitFor();
  await page.waitForTimeout(4000);
  await take(page, "stops");
  await page.goto(`${site.address}#/taller`);
  await page.locator("h1").waitFor();
  await page.waitForTimeout(500);
  await take(page, "taller");

  const wide = await measuredPhone(browser, { width: 1280, height: 800 });
  const desk = await new DeskPage(await wide.newPage()).open(site.address);
  await desk.takeFiles(
    readdirSync("demo-data/checks").map((name) => join("demo-data/checks", name)),
  );
  await desk.closeImport();
  await desk.page.locator(".desk-progress").waitFor({ state: "detached", timeout: 120_000 });
  await take(desk.page, "desk");
} finally {
  await browser.close();
  await site.close();
  if (process.env.STOPFIT_DIST === undefined) rmSync(dist, { recursive: true, force: true });
}
