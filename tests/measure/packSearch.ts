import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { gzipSync } from "node:zlib";
import type { Browser, Page } from "playwright-core";
import { demoRecord } from "../browser/support/everyStep.ts";
import type { Site } from "../browser/support/site.ts";
import { largePack } from "../support/largePack.ts";
import { measuredPhone } from "./measuredPhone.ts";
import { tasksDuring } from "./travelFrames.ts";

export interface SearchTimes {
  readonly place: string;
  /** From each key to the frame that shows the list it leaves, ms; Chromium tells them in steps of 8. */
  readonly keys: readonly number[];
  /** Tasks of the page meanwhile, longest first, ms. */
  readonly tasks: readonly number[];
}

export interface PackFigures {
  readonly fileBytes: number;
  readonly gzippedBytes: number;
  /** What the browser keeps more once the pack is in use. */
  readonly keptBytes: number;
  readonly searches: readonly SearchTimes[];
}

const typed = "firm 72";
/** Chromium tells of no event that took less. */
const leastTold = 16;

async function pressed(page: Page, key: string): Promise<number> {
  await page.evaluate(() => {
    const told = { longest: 0 };
    const observer = new PerformanceObserver((list) => {
      for (const { duration } of list.getEntries()) told.longest = Math.max(told.longest, duration);
    });
    observer.observe({ type: "event", durationThreshold: 16 } as PerformanceObserverInit);
    Object.assign(window, { told, observer });
  });
  await page.keyboard.press(key);
  await page.waitForTimeout(300);
  return page.evaluate(() => {
    const { told, observer } = window as unknown as {
      told: { longest: number };
      observer: PerformanceObserver;
    };
    observer.disconnect();
    return told.longest;
  });
}

/** Types a search a letter at a time, and takes it back. */
async function search(page: Page, place: string, label: string): Promise<SearchTimes> {
  const field = page.getByLabel(label, { exact: true });
  await field.waitFor();
  await field.focus();
  const keys: number[] = [];
  const tasks = await tasksDuring(page, async () => {
    for (const letter of typed) keys.push(await pressed(page, letter));
    for (const _ of typed) keys.push(await pressed(page, "Backspace"));
  });
  return { place, keys: keys.map((ms) => Math.max(ms, leastTold)), tasks };
}

async function keptBytes(page: Page): Promise<number> {
  return page.evaluate(async () => (await navigator.storage.estimate()).usage ?? 0);
}

/** A pack of 500 stops and 300 vehicles, opened by its file, and searched on a phone slowed `slowness` times. */
export async function measurePackSearch(
  browser: Browser,
  site: Site,
  slowness: number,
): Promise<PackFigures> {
  const folder = mkdtempSync(join(tmpdir(), "stopfit-pack-"));
  const file = join(folder, "large.json");
  const text = JSON.stringify(largePack());
  writeFileSync(file, text);
  const phone = await measuredPhone(browser);
  try {
    const page = await phone.newPage();
    await page.goto(site.address);
    await page.locator(".check-link").first().waitFor();
    await page.goto(`${site.address}#/pack`);
    await page.getByLabel("Library to open").waitFor({ state: "attached" });
    const before = await keptBytes(page);
    await page.getByLabel("Library to open").setInputFiles(file);
    await page.getByRole("button", { name: "Use it instead" }).click();
    await page.getByText(/500 stops, 300 vehicles/).waitFor();
    await page.waitForTimeout(1000);
    const kept = (await keptBytes(page)) - before;
    const session = await phone.context.newCDPSession(page);
    await session.send("Emulation.setCPUThrottlingRate", { rate: slowness });
    const searches = [await search(page, "parts library", "Search")];
    const { id } = demoRecord("arm-fits");
    await page.goto(`${site.address}#/check/${id}/stop`);
    await page.getByRole("radio", { name: /In the parts library/ }).check({ force: true });
    searches.push(await search(page, "stop of a check", "Search the stops"));
    await page.goto(`${site.address}#/check/${id}/vehicle`);
    searches.push(await search(page, "vehicle of a check", "Search the vehicles"));
    await page.goto(`${site.address}#/labels`);
    searches.push(await search(page, "labels", "Search"));
    return {
      fileBytes: Buffer.byteLength(text),
      gzippedBytes: gzipSync(text).length,
      keptBytes: kept,
      searches,
    };
  } finally {
    await phone.close();
    rmSync(folder, { recursive: true, force: true });
  }
}
