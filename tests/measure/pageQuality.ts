import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type Browser, type BrowserContext, chromium, type Page } from "playwright-core";
import { ensureChromium, findChromium } from "../../src/tooling/chromium.mjs";
import { runTool } from "../../src/tooling/run.mjs";
import { inEveryAppearance } from "../browser/support/appearances.ts";
import { axeViolations } from "../browser/support/axe.ts";
import { openEverything } from "../browser/support/controls.ts";
import { everyScreen, goToScreen } from "../browser/support/everyScreen.ts";
import { demoRecord, everyStep } from "../browser/support/everyStep.ts";
import { launchChromium } from "../browser/support/phone.ts";
import { Site } from "../browser/support/site.ts";
import { measuredPhone } from "./measuredPhone.ts";
import { ownBlockingMs } from "./ownBlocking.ts";
import {
  Complaints,
  measuresOf,
  midRangePhone,
  type PageMeasures,
  practiceFaults,
  processorMs,
  slowPage,
  watchPage,
} from "./pageMeasures.ts";
import { measureStarts, type Start } from "./startUp.ts";

/* npm run page-quality: loading as on a mid-range phone, good practice, axe in every theme, cold start.
   npm run page-quality -- start: in Firefox and WebKit as well; likewise loading, cold, practice, axe. */

const rounds = Number(process.env.STOPFIT_ROUNDS ?? 5);
const gap = `#/check/${demoRecord("arm-fits").id}/left.gap`;
const answer = `#/check/${demoRecord("arm-fits").id}/answer`;

function say(what: string, figure: string): void {
  console.log(`${what.padEnd(56)} ${figure}`);
}

function middle(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? Number.NaN;
}

function rangeOf(values: readonly number[], digits = 0): string {
  return `${Math.min(...values).toFixed(digits)} … ${Math.max(...values).toFixed(digits)}`;
}

function sayTimes(what: string, values: readonly number[]): void {
  say(what, `${middle(values).toFixed(0)}  (${rangeOf(values)})`);
}

function sayAgainst(what: string, values: readonly number[], goal: number, digits: number): void {
  const value = middle(values);
  const range = rangeOf(values, digits);
  const verdict = value <= goal ? "within" : "PAST";
  say(what, `${value.toFixed(digits)}  (${range}; ${verdict} ${goal})`);
}

async function build(dist: string): Promise<void> {
  const env = { ...process.env, NODE_ENV: "production", VITE_DEMO: "1" };
  const args = ["build", "--logLevel", "error", "--outDir", dist];
  if ((await runTool("vite/bin/vite.js", args, { env })) !== 0)
    throw new Error("The build failed.");
}

/** Loads a page for the first time on a phone that has nothing yet. */
async function firstLoad(browser: Browser, address: string): Promise<PageMeasures> {
  const phone = await measuredPhone(browser);
  try {
    phone.context.setDefaultTimeout(120_000);
    await phone.context.addInitScript(watchPage);
    const page = await phone.newPage();
    await slowPage(page, true);
    await page.goto(address, { waitUntil: "load" });
    await page.locator("h1").first().waitFor();
    return await measuresOf(page);
  } finally {
    await phone.close();
  }
}

async function sayLoading(browser: Browser, site: Site): Promise<void> {
  const { processorSlowdown, latencyMs, downBytesPerS } = midRangePhone;
  console.log(
    `First load, processor slowed ${processorSlowdown} times, ${latencyMs} ms and ${Math.round(downBytesPerS / 1024)} KiB/s of network, ${rounds} times:`,
  );
  for (const [name, address] of [
    ["list", "#/"],
    ["taller stop", "#/taller"],
  ] as const) {
    const all: PageMeasures[] = [];
    for (let round = 0; round < rounds; round++) {
      all.push(await firstLoad(browser, `${site.address}${address}`));
    }
    const each = (figure: keyof PageMeasures) => all.map((measures) => measures[figure]);
    sayAgainst(`  ${name}: first contentful paint, ms`, each("firstPaintMs"), 1800, 0);
    sayAgainst(`  ${name}: largest contentful paint, ms`, each("largestPaintMs"), 2500, 0);
    sayAgainst(`  ${name}: total blocking time, ms`, each("blockingMs"), 200, 0);
    const own: number[] = [];
    for (let round = 0; round < rounds; round++) {
      own.push(await ownBlockingMs(browser, `${site.address}${address}`, processorSlowdown));
    }
    sayAgainst(
      `  ${name}: the same of ${processorSlowdown} times the thread's own time`,
      own,
      200,
      0,
    );
    sayAgainst(`  ${name}: layout shift`, each("layoutShift"), 0.1, 3);
  }
}

async function sayPractice(browser: Browser, site: Site): Promise<void> {
  const phone = await measuredPhone(browser);
  const page = await phone.newPage();
  const complaints = await Complaints.of(page);
  const wrong: string[] = [];
  for (const address of ["#/", "#/looks", "#/desk", "#/pack", gap, answer]) {
    await goToScreen(page, site.address, address);
    for (const fault of await practiceFaults(page)) wrong.push(`${address} ${fault}`);
  }
  await complaints.ofManifest();
  wrong.push(...complaints.found, ...phone.troubles, ...phone.strangers(site.origin));
  await phone.close();
  for (const line of wrong) console.log(`  ${line}`);
  say("good practice: faults found on 6 screens", `${wrong.length}`);
}

async function sayAxe(browser: Browser, site: Site): Promise<void> {
  const phone = await measuredPhone(browser, { bypassCSP: true });
  const wrong: string[] = [];
  let looks = 0;
  const look = async (page: Page, screen: string) => {
    await inEveryAppearance(page, async ({ theme, text }) => {
      looks += 1;
      for (const line of await axeViolations(page)) {
        wrong.push(`${screen}, ${theme}, ${text} words: ${line}`);
      }
    });
  };
  const page = await phone.newPage();
  await page.goto(site.address);
  await page.getByText("Tern compact hatch").first().waitFor();
  let screens = 0;
  for (const [name, address] of everyScreen) {
    await goToScreen(page, site.address, address);
    await look(page, name);
    screens += 1;
  }
  for (const name of ["arm-needs-taller", "damper-shaft"]) {
    const last = await everyStep(phone, site.address, demoRecord(name), async (step, screen) => {
      screens += 1;
      await look(step, screen);
    });
    await openEverything(last);
    await look(last, `${name}, answer opened`);
    screens += 1;
  }
  await phone.close();
  for (const line of wrong) console.log(`  ${line}`);
  say(
    "axe violations",
    `${wrong.length} on ${screens} screens, ${looks} looks in five appearances`,
  );
}

async function openProfile(folder: string): Promise<BrowserContext> {
  const executablePath = findChromium();
  if (!executablePath) throw new Error("No Chromium found: install it or set CHROMIUM_PATH.");
  return chromium.launchPersistentContext(folder, {
    executablePath,
    headless: true,
    viewport: { width: 360, height: 740 },
    deviceScaleFactor: 2,
    hasTouch: true,
    isMobile: true,
    args: ["--no-sandbox", "--disable-gpu", "--no-first-run"],
  });
}

interface ColdStart {
  readonly elapsedMs: number;
  readonly processorMs: number;
}

/** Time that a browser just opened has for its own start, which is no matter of the app, ms. */
const browserStartMs = 2000;

/** Notes when the page's first field for a reading is painted. */
const watchField = `
  new MutationObserver((_, observer) => {
    if (!document.querySelector("main input")) return;
    observer.disconnect();
    requestAnimationFrame(() => {
      const { port1, port2 } = new MessageChannel();
      port1.onmessage = () => { globalThis.fieldPaintedMs = performance.now(); };
      port2.postMessage(null);
    });
  }).observe(document, { childList: true, subtree: true });
`;

/** A browser that was closed, opened anew without a network: from its address to a reading's field painted. */
async function coldStart(folder: string, address: string, slow: boolean): Promise<ColdStart> {
  const context = await openProfile(folder);
  try {
    await context.setOffline(true);
    const page = context.pages()[0] ?? (await context.newPage());
    await page.waitForTimeout(browserStartMs);
    const session = slow ? await slowPage(page, false) : await context.newCDPSession(page);
    await session.send("Performance.enable", { timeDomain: "threadTicks" });
    await session.send("Page.enable");
    await session.send("Page.addScriptToEvaluateOnNewDocument", { source: watchField });
    await page.goto(address, { waitUntil: "commit" });
    // Asked for in few words: what finds elements for a test is itself slow on a slowed page.
    for (let tries = 0; tries < 1200; tries++) {
      const { result } = await session.send("Runtime.evaluate", { expression: "fieldPaintedMs" });
      if (typeof result.value === "number") {
        return { elapsedMs: result.value, processorMs: await processorMs(session) };
      }
      await page.waitForTimeout(50);
    }
    throw new Error("No field for a reading within a minute.");
  } finally {
    await context.close();
  }
}

async function sayColdStart(site: Site): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), "stopfit-cold-"));
  try {
    const context = await openProfile(folder);
    const page = context.pages()[0] ?? (await context.newPage());
    await page.goto(`${site.address}#/`);
    await page.getByText("Ready offline").waitFor();
    await context.close();
    const { processorSlowdown } = midRangePhone;
    const slowed: ColdStart[] = [];
    const plain: ColdStart[] = [];
    for (let round = 0; round < rounds; round++) {
      slowed.push(await coldStart(folder, `${site.address}${gap}`, true));
      plain.push(await coldStart(folder, `${site.address}${gap}`, false));
    }
    console.log("Cold start offline to a reading:");
    const elapsed = (all: readonly ColdStart[]) => all.map(({ elapsedMs }) => elapsedMs);
    sayAgainst(`  slowed ${processorSlowdown} times, ms`, elapsed(slowed), 1500, 0);
    sayAgainst("  as fast as this machine is, ms", elapsed(plain), 1500, 0);
    // On a machine that does much else, the clock says more of that than of the app.
    sayAgainst(
      `  ${processorSlowdown} times the main thread's own time, ms`,
      plain.map(({ processorMs }) => processorSlowdown * processorMs),
      1500,
      0,
    );
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

async function sayStarts(folder: string): Promise<void> {
  console.log(
    "A list of 200 checks with photos, every process of the browser slowed 4 times by duty cycle:",
  );
  for (const { engine, again, offline } of await measureStarts(folder, rounds, process.argv[3])) {
    const each = (starts: readonly Start[], figure: keyof Start) =>
      starts.map((start) => start[figure]);
    sayTimes(`  ${engine}, opened again: first paint, ms`, each(again, "paintMs"));
    sayTimes(`  ${engine}, opened again: list usable, ms`, each(again, "usableMs"));
    sayTimes(`  ${engine}, server gone: first paint, ms`, each(offline, "paintMs"));
    sayTimes(`  ${engine}, server gone: list usable, ms`, each(offline, "usableMs"));
  }
}

const trouble = (await ensureChromium()).trouble;
if (trouble) throw new Error(trouble);
const dist = process.env.STOPFIT_DIST ?? mkdtempSync(join(tmpdir(), "stopfit-quality-"));
const site = new Site();
const browser = await launchChromium();
const only = process.argv[2];
try {
  if (process.env.STOPFIT_DIST === undefined) await build(dist);
  await site.publish(dist);
  if (only === undefined || only === "loading") await sayLoading(browser, site);
  if (only === undefined || only === "cold") await sayColdStart(site);
  if (only === undefined || only === "start") await sayStarts(dist);
  if (only === undefined || only === "practice") await sayPractice(browser, site);
  if (only === undefined || only === "axe") await sayAxe(browser, site);
} finally {
  await browser.close();
  await site.close();
  if (process.env.STOPFIT_DIST === undefined) rmSync(dist, { recursive: true, force: true });
}
