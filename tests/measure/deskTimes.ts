import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser, CDPSession, Page } from "playwright-core";
import { poolWork } from "../../src/compute/poolWork.ts";
import { backupLineText } from "../../src/records/backup/backupLine.ts";
import { DeskPage } from "../browser/support/deskPage.ts";
import type { Phone } from "../browser/support/phone.ts";
import type { Site } from "../browser/support/site.ts";
import { generateRecords } from "../support/generateRecords.ts";
import { measuredPhone } from "./measuredPhone.ts";
import { arithmeticMs } from "./slowChromium.ts";

/** Times of the page's own clock from the opening, ms. */
export interface Opening {
  /** The first rows of the list are painted. */
  readonly painted: number;
  /** A key pressed then has moved the mark, and that is painted. */
  readonly answered: number;
}

export interface DeskTimes {
  readonly records: number;
  readonly measuredFactor: number;
  /** By its address, the app's files from the service worker as on every later visit. */
  readonly byAddress: Opening[];
  /** By a tap in the list of checks. */
  readonly byTap: Opening[];
  /** The table of all sides, from the tap to the file, at the machine's own speed. */
  readonly tableMs: number[];
  /** The whole import, from the file being chosen, at the machine's own speed. */
  readonly importMs: number;
  /** JavaScript heap in use, MB, before the import, and the most while it ran. */
  readonly heapMb: readonly [number, number];
}

function backupOf(count: number, file: string): void {
  const receivedAt = "2026-05-02T10:00:00.000Z";
  const lines = [backupLineText({ kind: "header", createdAt: receivedAt })];
  for (const record of generateRecords(count)) {
    const text = JSON.stringify(record);
    lines.push(
      backupLineText({ kind: "submission", text, receivedAt, way: "file", photosLeftOut: 0 }),
    );
  }
  lines.push(backupLineText({ kind: "end", lines: count }));
  writeFileSync(file, lines.join(""));
}

async function heapMegabytes(session: CDPSession): Promise<number> {
  await session.send("HeapProfiler.collectGarbage");
  const { metrics } = await session.send("Performance.getMetrics");
  return (metrics.find(({ name }) => name === "JSHeapUsedSize")?.value ?? Number.NaN) / 1e6;
}

/** An answer as the desk keeps it: of one record, for all. */
function oneAssessment(): unknown {
  const [record] = generateRecords(1);
  const done = poolWork({ kind: "compute", text: JSON.stringify(record) });
  if (done.kind !== "computed" || done.assessment === null) throw new Error("no answer");
  return done.assessment;
}

/** Every submission gets a verdict and an answer, as after a night's computing. */
async function markComputed(page: Page): Promise<void> {
  await page.evaluate(
    (assessment) =>
      new Promise<void>((done, failed) => {
        const opening = indexedDB.open("stopfit-desk");
        opening.onerror = () => failed(opening.error);
        opening.onsuccess = () => {
          const database = opening.result;
          const writing = database.transaction(
            ["submissions", "snapshots", "assessments"],
            "readwrite",
          );
          const assessments = writing.objectStore("assessments");
          const submissions = writing.objectStore("submissions");
          const verdicts = ["ok", "care", "no", "unsure"];
          const reason = [
            "On the left the reserve is ",
            { kind: "length", value: 3.2 },
            ", and at least ",
            { kind: "length", value: 5 },
            " are wanted: something hard touches before the stop is fully compressed.",
          ];
          let number = 0;
          const cursor = submissions.openCursor();
          cursor.onsuccess = () => {
            const at = cursor.result;
            if (at === null) return;
            number += 1;
            const computed = { verdict: verdicts[number % 4], reason, odd: number % 3 };
            at.update({ ...at.value, computed, isComputed: 1 });
            assessments.put({ key: at.value.key, assessment });
            at.continue();
          };
          writing.objectStore("snapshots").put({ key: "revision", revision: 1e6, text: "" });
          writing.oncomplete = () => {
            database.close();
            done();
          };
        };
      }),
    oneAssessment(),
  );
}

/** In the page itself: when the first rows are painted, and when a key then has moved the mark. */
async function watchRows(): Promise<void> {
  const page = globalThis as unknown as { openedAt?: number; opening?: Promise<Opening> };
  const twoFrames = () =>
    new Promise<void>((done) => requestAnimationFrame(() => requestAnimationFrame(() => done())));
  const until = (holds: () => boolean) =>
    new Promise<void>((done) => {
      const observer = new MutationObserver(() => {
        if (!holds()) return;
        observer.disconnect();
        done();
      });
      observer.observe(document, { subtree: true, childList: true, attributes: true });
      if (holds()) {
        observer.disconnect();
        done();
      }
    });
  page.opening = (async () => {
    await until(() => document.querySelectorAll(".desk-row").length > 5);
    await twoFrames();
    const painted = performance.now() - (page.openedAt ?? 0);
    const list = document.querySelector<HTMLElement>(".desk-list");
    list?.focus();
    list?.dispatchEvent(new KeyboardEvent("keydown", { key: "ArrowDown", bubbles: true }));
    await until(
      () => document.querySelector('.desk-row[aria-posinset="2"][aria-selected="true"]') !== null,
    );
    await twoFrames();
    return { painted, answered: performance.now() - (page.openedAt ?? 0) };
  })();
}

async function opening(page: Page): Promise<Opening> {
  return page.evaluate(
    () => (globalThis as unknown as { opening: Promise<Opening> }).opening,
  ) as Promise<Opening>;
}

export async function openByAddress(page: Page, site: Site, session: CDPSession, factor: number) {
  await page.goto("about:blank");
  await session.send("Emulation.setCPUThrottlingRate", { rate: factor });
  await page.goto(`${site.address}#/desk`, { waitUntil: "commit" });
  const times = await opening(page);
  await session.send("Emulation.setCPUThrottlingRate", { rate: 1 });
  return times;
}

export async function openByTap(page: Page, site: Site, session: CDPSession, factor: number) {
  await page.goto("about:blank");
  await page.goto(site.address);
  await page.getByRole("link", { name: "Review desk" }).waitFor();
  await page.waitForTimeout(3000);
  await session.send("Emulation.setCPUThrottlingRate", { rate: factor });
  await page.evaluate(() => {
    const link = [...document.querySelectorAll("a")].find((each) => /^Review desk/.test(each.text));
    (globalThis as unknown as { openedAt: number }).openedAt = performance.now();
    link?.click();
  });
  const times = await opening(page);
  await session.send("Emulation.setCPUThrottlingRate", { rate: 1 });
  return times;
}

/** From the tap to the file handed over. */
async function saveTable(page: Page, site: Site): Promise<number> {
  await page.goto("about:blank");
  await page.goto(`${site.address}#/desk`);
  const button = page.getByRole("button", { name: "Save a table (CSV)" });
  await button.and(page.locator(":enabled")).waitFor();
  await page.waitForTimeout(3000);
  const started = performance.now();
  await Promise.all([page.waitForEvent("download", { timeout: 120_000 }), button.click()]);
  return performance.now() - started;
}

async function importAll(
  phone: Phone,
  site: Site,
  file: string,
): Promise<Pick<DeskTimes, "importMs" | "heapMb">> {
  const desk = await new DeskPage(await phone.newPage()).open(site.address);
  const session = await phone.context.newCDPSession(desk.page);
  await session.send("Performance.enable");
  const before = await heapMegabytes(session);
  let most = before;
  const started = performance.now();
  const restored = desk.restore(file);
  const ended = desk.page.getByText(/^Restored: /);
  while ((await ended.count()) === 0) {
    await desk.page.waitForTimeout(500);
    most = Math.max(most, await heapMegabytes(session));
  }
  await restored;
  const importMs = performance.now() - started;
  await markComputed(desk.page);
  await desk.page.close();
  return { importMs, heapMb: [before, most] };
}

interface Prepared extends Pick<DeskTimes, "importMs" | "heapMb"> {
  readonly phone: Phone;
  readonly page: Page;
  readonly session: CDPSession;
}

/** A desk with so many computed records, and a page to open it in. */
export async function prepare(browser: Browser, site: Site, records: number): Promise<Prepared> {
  const folder = mkdtempSync(join(tmpdir(), "stopfit-desk-times-"));
  const phone = await measuredPhone(browser, { width: 1280, height: 800 });
  try {
    const file = join(folder, "backup.txt");
    backupOf(records, file);
    const imported = await importAll(phone, site, file);
    const page = await phone.newPage();
    await page.addInitScript(watchRows);
    const session = await phone.context.newCDPSession(page);
    // The first visit after an import puts the list together anew; the rest is as every day.
    await openByAddress(page, site, session, 1);
    await page.waitForTimeout(6000);
    return { phone, page, session, ...imported };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Imports so many records, then opens the list several times with the page's thread slowed. */
export async function measureDeskTimes(
  browser: Browser,
  site: Site,
  factor: number,
  { records = 10_000, rounds = 7 } = {},
): Promise<DeskTimes> {
  const { phone, page, session, importMs, heapMb } = await prepare(browser, site, records);
  try {
    const plain = await arithmeticMs(page);
    await session.send("Emulation.setCPUThrottlingRate", { rate: factor });
    const measuredFactor = (await arithmeticMs(page)) / plain;
    await session.send("Emulation.setCPUThrottlingRate", { rate: 1 });
    const byAddress: Opening[] = [];
    const byTap: Opening[] = [];
    const tableMs: number[] = [];
    for (let round = 0; round < rounds; round += 1) {
      byAddress.push(await openByAddress(page, site, session, factor));
      byTap.push(await openByTap(page, site, session, factor));
    }
    for (let round = 0; round < 3; round += 1) tableMs.push(await saveTable(page, site));
    return { records, measuredFactor, byAddress, byTap, tableMs, importMs, heapMb };
  } finally {
    await phone.close();
  }
}
