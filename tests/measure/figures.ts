import { execFileSync } from "node:child_process";
import { mkdtempSync, readdirSync, rmSync, statSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser } from "playwright-core";
import { ensureChromium } from "../../src/tooling/chromium.mjs";
import { assessFile } from "../browser/support/assess.ts";
import { axeViolations } from "../browser/support/axe.ts";
import { CheckList } from "../browser/support/checkList.ts";
import { openEverything } from "../browser/support/controls.ts";
import { demoRecord, everyStep } from "../browser/support/everyStep.ts";
import { firstScreenFiles, gzippedBytes } from "../browser/support/firstScreen.ts";
import { launchChromium } from "../browser/support/phone.ts";
import { Site } from "../browser/support/site.ts";
import { type ComparedCorner, compareWithVectors } from "../vectors/vectors.ts";
import { measureAnswerTimes, measureTyping } from "./answerTimes.ts";
import { buildDemoInto } from "./buildDemo.ts";
import { measureDeskTimes } from "./deskTimes.ts";
import { measuredPhone } from "./measuredPhone.ts";
import { measurePackSearch } from "./packSearch.ts";
import { type FrameTimes, measureTravelFrames } from "./travelFrames.ts";

const slowness = 4;

function say(what: string, figure: string): void {
  console.log(`${what.padEnd(58)} ${figure}`);
}

function sayTimes(what: string, times: readonly number[]): void {
  const sorted = [...times].sort((a, b) => a - b);
  const middle = sorted[Math.floor(sorted.length / 2)] ?? Number.NaN;
  const [least, greatest] = [sorted[0] ?? Number.NaN, sorted.at(-1) ?? Number.NaN];
  say(
    what,
    `${middle.toFixed(0)} ms  (${least.toFixed(0)} … ${greatest.toFixed(0)}, ${times.length} times)`,
  );
}

function saySizes(dist: string): void {
  const first = firstScreenFiles(dist);
  say("first screen, scripts and styles, gzipped", `${gzippedBytes(dist, first)} bytes`);
  const all = readdirSync(dist, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name));
  const bytes = all.reduce((sum, file) => sum + statSync(file).size, 0);
  say("everything kept offline", `${(bytes / 1024).toFixed(0)} KiB in ${all.length} files`);
}

async function sayDesk(browser: Browser, site: Site, factor: number, size: number): Promise<void> {
  const desk = await measureDeskTimes(browser, site, factor, { records: size });
  const { records, measuredFactor, byAddress, byTap, tableMs, importMs, heapMb } = desk;
  const count = records.toLocaleString("en-GB");
  const mb = heapMb.map((each) => each.toFixed(1)).join(" … ");
  console.log(
    factor === 1
      ? `Desk with ${count} checks, at the machine's own speed:`
      : `Desk with ${count} checks, its page slowed ${factor} times (measured: ${measuredFactor.toFixed(1)} times):`,
  );
  const painted = (openings: typeof byTap) => openings.map((opening) => opening.painted);
  const answered = (openings: typeof byTap) => openings.map((opening) => opening.answered);
  sayTimes("  opened by its address: first rows painted", painted(byAddress));
  sayTimes("  opened by its address: a key has moved the mark", answered(byAddress));
  sayTimes("  opened by a tap: first rows painted", painted(byTap));
  sayTimes("  opened by a tap: a key has moved the mark", answered(byTap));
  sayTimes("  table (CSV) saved, not slowed", tableMs);
  say(`  import of the ${count}, not slowed`, `${(importMs / 1000).toFixed(1)} s`);
  say("  JavaScript heap before and at most during it", `${mb} MB`);
}

async function sayTravelFrames(browser: Browser, site: Site): Promise<void> {
  const { played, moved } = await measureTravelFrames(browser, site, slowness);
  const sayFrames = (what: string, { between, tasks }: FrameTimes) => {
    sayTimes(`  ${what}: between frames`, between);
    say(
      `  ${what}: longest tasks`,
      `${tasks
        .slice(0, 3)
        .map((each) => each.toFixed(0))
        .join(", ")} ms`,
    );
  };
  console.log(`Travel view, its page slowed ${slowness} times:`);
  sayFrames("a landing played", played);
  sayFrames("moved by keys", moved);
}

async function sayPackSearch(browser: Browser, site: Site): Promise<void> {
  const { fileBytes, gzippedBytes, keptBytes, searches } = await measurePackSearch(
    browser,
    site,
    slowness,
  );
  console.log(`A pack of 500 stops and 300 vehicles, its page slowed ${slowness} times:`);
  say(
    "  its file, gzipped, and what the browser keeps of it",
    `${fileBytes}, ${gzippedBytes}, ${keptBytes} bytes`,
  );
  for (const { place, keys, tasks } of searches) {
    sayTimes(`  ${place}: key to list`, keys);
    say(`  ${place}: longest task`, `${(tasks[0] ?? 0).toFixed(0)} ms`);
  }
}

async function sayAgreement(): Promise<void> {
  const files = readdirSync("demo-data/checks").filter((name) => name.endsWith(".json"));
  let agreeing = 0;
  let figures = 0;
  for (const name of files) {
    const answer = await assessFile(join("demo-data/checks", name));
    const { compared, disagreements } = compareWithVectors(
      answer.id,
      answer.corners as readonly ComparedCorner[],
    );
    figures += compared;
    if (disagreements.length === 0) agreeing += 1;
    for (const line of disagreements) console.log(`  ${name}: ${line}`);
  }
  say("records that agree with the vectors", `${agreeing} of ${files.length}, ${figures} figures`);
}

async function sayAccessibility(browser: Browser, site: Site): Promise<void> {
  let screens = 0;
  const violations: string[] = [];
  for (const colorScheme of ["light", "dark"] as const) {
    const phone = await measuredPhone(browser, { bypassCSP: true, colorScheme });
    const look = async (page: Parameters<typeof axeViolations>[0], screen: string) => {
      screens += 1;
      for (const line of await axeViolations(page)) violations.push(`${screen}: ${line}`);
    };
    const list = await phone.newPage();
    await new CheckList(list).open(site.address);
    await look(list, "list");
    const answer = await everyStep(phone, site.address, demoRecord("arm-needs-taller"), look);
    await openEverything(answer);
    await look(answer, "answer");
    await phone.close();
  }
  for (const line of violations) console.log(`  ${line}`);
  say("axe violations", `${violations.length} on ${screens} screens, light and dark`);
}

async function sayAnswers(browser: Browser, site: Site): Promise<void> {
  for (const [factor, how] of [
    [1, "all threads"],
    [slowness, "page"],
    [slowness, "all threads"],
  ] as const) {
    const times = await measureAnswerTimes(browser, site, factor, how);
    const slowed =
      how === "page" ? "Chromium's own throttling of the page" : "Page and workers alike, slowed";
    console.log(
      factor === 1
        ? "At the machine's own speed:"
        : `${slowed}, ${factor} times (measured: ${times.measuredFactor.toFixed(1)} times):`,
    );
    sayTimes("  changed reading: whole answer, in the worker", times.workerComplete);
    sayTimes("  changed reading: whole verdict beside the step, painted", times.verdictBesideStep);
    sayTimes("  then the answer opened: verdict painted", times.answerOpened);
    sayTimes("  map filled, from its request", times.map);
  }
  console.log(
    `A digit typed, to its verdict painted beside the step, the page ${slowness} times slowed:`,
  );
  for (const name of ["arm-fits", "two-arms-measured", "upper-arm-stop", "foam-stop-tested"]) {
    sayTimes(`  ${name}`, await measureTyping(browser, site, slowness, name));
  }
}

const trouble = (await ensureChromium()).trouble;
if (trouble) throw new Error(trouble);
const dist = process.env.STOPFIT_DIST ?? mkdtempSync(join(tmpdir(), "stopfit-figures-"));
const site = new Site();
const browser = await launchChromium();
try {
  if (process.env.STOPFIT_DIST === undefined) await buildDemoInto(dist);
  await site.publish(dist);
  const commit = execFileSync("git", ["rev-parse", "--short", "HEAD"]).toString().trim();
  say("measured", `${commit}, Chromium ${browser.version()}, Node ${process.versions.node}`);
  const parts: { readonly [part: string]: () => Promise<void> } = {
    sizes: async () => saySizes(dist),
    answers: () => sayAnswers(browser, site),
    travel: () => sayTravelFrames(browser, site),
    pack: () => sayPackSearch(browser, site),
    manyChecks: () => sayDesk(browser, site, slowness, 10_000),
    desk: () => sayDesk(browser, site, 1, 2000),
    agreement: sayAgreement,
    accessibility: () => sayAccessibility(browser, site),
  };
  const [, , only] = process.argv;
  for (const [part, sayIt] of Object.entries(parts)) {
    if (only === undefined || only === part) await sayIt();
  }
} finally {
  await browser.close();
  await site.close();
  if (process.env.STOPFIT_DIST === undefined) rmSync(dist, { recursive: true, force: true });
}
