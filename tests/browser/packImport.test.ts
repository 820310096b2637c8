import { rmSync } from "node:fs";
import { dirname } from "node:path";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, inject, it } from "vitest";
import type { PackStop } from "../../src/records/pack/pack.ts";
import { axeViolations } from "./support/axe.ts";
import { launchShell, Phone } from "./support/phone.ts";
import { Site } from "./support/site.ts";
import { knownStop, writeTestFile } from "./support/testFile.ts";

let browser: Browser;
let site: Site;

beforeAll(async () => {
  browser = await launchShell();
  site = new Site();
  await site.publish(inject("dist"));
});

afterAll(async () => {
  await browser.close();
  await site.close();
});

/** The stop as the phone's database has it. */
function keptStop(page: Page, id: string): Promise<PackStop | null> {
  return page.evaluate(
    (wanted) =>
      new Promise<PackStop | null>((done, failed) => {
        const opening = indexedDB.open("stopfit");
        opening.onerror = () => failed(opening.error);
        opening.onsuccess = () => {
          const database = opening.result;
          const request = database.transaction("packs").objectStore("packs").get("current");
          request.onerror = () => failed(request.error);
          request.onsuccess = () => {
            database.close();
            const stops: PackStop[] = request.result?.pack.stops ?? [];
            done(stops.find((stop) => stop.id === wanted) ?? null);
          };
        };
      }),
    id,
  );
}

/** Nothing is kept while a remark stands unread. */
async function markRemarks(page: Page): Promise<void> {
  const marks = page.getByRole("checkbox", { name: /^I have read|^It is right as it is/ });
  for (const mark of await marks.all()) await mark.check();
}

interface Watched {
  frames: number;
  longestMs: number;
  rows: Set<string>;
}

/** Counts the frames that the page paints, and what progress it shows meanwhile. */
async function watchFrames(
  page: Page,
): Promise<() => Promise<{ frames: number; longestMs: number; shown: number }>> {
  await page.evaluate(() => {
    const watched: Watched = { frames: 0, longestMs: 0, rows: new Set() };
    Object.assign(globalThis, { watched });
    let last = performance.now();
    const frame = (now: number) => {
      watched.longestMs = Math.max(watched.longestMs, now - last);
      last = now;
      const progress = document.querySelector("progress");
      if (progress) {
        watched.frames += 1;
        watched.rows.add(document.querySelector(".progress-line p")?.textContent ?? "");
      }
      requestAnimationFrame(frame);
    };
    requestAnimationFrame(frame);
  });
  return () =>
    page.evaluate(() => {
      const { watched } = globalThis as unknown as { watched: Watched };
      return {
        frames: watched.frames,
        longestMs: Math.round(watched.longestMs),
        shown: watched.rows.size,
      };
    });
}

it("a file of 1 000 000 rows is read beside the screen, with progress, and gives the damping it was made with", async () => {
  const rows = 1_000_000;
  const file = writeTestFile(rows);
  const phone = await Phone.open(browser);
  try {
    const page = await phone.newPage();
    await page.goto(`${site.address}#/pack/tests/tall-firm`);
    await page.getByRole("heading", { level: 1, name: "Import a test" }).waitFor();
    const watched = await watchFrames(page);
    await page.getByLabel("Test file").setInputFiles(file);
    await page.getByText(/rows, \d+ % of the file/).waitFor();
    // The page takes what is typed while the file is read.
    await page.getByLabel("Rows up to this speed are static").fill("6");
    await expect
      .poll(() => page.getByLabel("Rows up to this speed are static").inputValue())
      .toBe("6");
    await page.getByRole("heading", { name: "bench.csv" }).waitFor({ timeout: 110_000 });
    const { frames, longestMs, shown } = await watched();
    console.log(
      `1 000 000 rows: ${frames} frames, ${shown} states of progress, longest frame ${longestMs} ms`,
    );
    expect(shown).toBeGreaterThan(3);
    expect(frames).toBeGreaterThan(shown);
    await page.getByText("1,000,000 rows; columns").waitFor();

    await markRemarks(page);
    await page.getByRole("button", { name: "Save", exact: true }).click();
    await page.getByRole("heading", { level: 1, name: "Tall firm" }).waitFor();
    const stop = await keptStop(page, "tall-firm");
    expect(stop?.testedAtSpeed).toBe(true);
    const test = stop?.tests?.[0];
    expect(test?.rows).toBe(rows);
    for (const [depth, force] of stop?.curve ?? []) {
      // Noise of ±5 N even over 10 000 rows: the mean is good to 5/√3/√10 000 N = 0.03 N.
      expect(Math.abs(force - knownStop.force(depth))).toBeLessThan(0.3);
    }
    for (const { depthMm, compressing, rebounding } of test?.damping ?? []) {
      // Shallower, the stop lifts off as it comes back at 400 mm/s: no force is left to fit.
      if (knownStop.force(depthMm) < 400 * knownStop.rebounding + knownStop.noiseN) continue;
      for (const [value, expected] of [
        [compressing, knownStop.compressing],
        [rebounding, knownStop.rebounding],
      ] as const) {
        expect(value).not.toBeNull();
        // Five of its own standard errors, and 0.001 for the digits of the file.
        expect(Math.abs((value?.[0] ?? 0) - expected)).toBeLessThan(5 * (value?.[1] ?? 0) + 0.001);
      }
    }
    phone.expectNoTrouble();
  } finally {
    await phone.close();
    rmSync(dirname(file), { recursive: true });
  }
});

it("reading is stopped by a tap, and a file of static rows only gives no damping", async () => {
  const phone = await Phone.open(browser);
  const file = writeTestFile(400_000);
  try {
    const page = await phone.newPage();
    await page.goto(`${site.address}#/pack/tests/tall-firm`);
    await page.getByLabel("Test file").setInputFiles(file);
    await page.getByRole("button", { name: "Stop reading" }).click();
    await page.getByRole("button", { name: "Choose a file" }).waitFor();
    expect(await page.getByRole("heading", { name: "bench.csv" }).count()).toBe(0);

    const slow = ["Depth (in);Speed (in/s);Force (lbf)"];
    for (let depth = 1; depth <= 20; depth += 1) {
      slow.push(`${depth / 10};0;${(40 * depth).toFixed(1)}`.replaceAll(".", ","));
    }
    await page.getByLabel("Test file").setInputFiles({
      name: "slow.csv",
      mimeType: "text/csv",
      buffer: Buffer.from(slow.join("\n")),
    });
    await page.getByText(/No damping\./).waitFor();
    expect(await page.getByText(/damping shows only at speed/i).count()).toBe(1);
    expect(await page.getByText("Use this loss").count()).toBe(0);
    await page.getByText("decimal comma").waitFor();
    await markRemarks(page);
    await page.getByRole("button", { name: "Save", exact: true }).click();
    await page.getByRole("heading", { level: 1, name: "Tall firm" }).waitFor();
    const stop = await keptStop(page, "tall-firm");
    expect(stop?.damping).toBeNull();
    expect(stop?.testedAtSpeed).toBe(false);
    // 1 in and 400 lbf by NIST SP 811: 25.4 mm and 1779.289 N.
    const inch = stop?.curve.find(([depth]) => Math.abs(depth - 25.4) < 0.01);
    expect(inch?.[1]).toBeCloseTo(1779.29, 1);
    phone.expectNoTrouble();
  } finally {
    await phone.close();
    rmSync(dirname(file), { recursive: true });
  }
});

it("a kept record of time, depth and force has its page to print: loss, curve, cycles, drawings", async () => {
  const phone = await Phone.open(browser, { bypassCSP: true });
  try {
    const page = await phone.newPage();
    await page.goto(`${site.address}#/pack/tests/tall-firm`);
    await page.getByLabel("Test file").setInputFiles("demo-data/tests/tall-firm-cycles.csv");
    await page.getByRole("heading", { name: "tall-firm-cycles.csv" }).waitFor();
    await markRemarks(page);
    await page.getByRole("button", { name: "Save", exact: true }).click();
    await page.getByRole("heading", { level: 1, name: "Tall firm" }).waitFor();
    const test = (await keptStop(page, "tall-firm"))?.tests?.[0];
    await page.getByRole("link", { name: /to print/i }).click();
    await page.getByRole("heading", { level: 1, name: "Test of Tall firm" }).waitFor();
    const rowsOf = (caption: RegExp) =>
      page.getByRole("table", { name: caption }).locator("tbody tr").count();
    expect(await rowsOf(/^Loss at speed/)).toBe(4 + (test?.loss?.branches.length ?? 0));
    expect(await rowsOf(/^Static curve/)).toBe(test?.curve?.length);
    expect(await rowsOf(/^Cycles, block by block/)).toBe(test?.blocks?.length);
    expect(test?.blocks?.length).toBeGreaterThan(1);
    const conditions = page.locator("dl dd").filter({ hasText: "not given" });
    expect(await conditions.count()).toBeGreaterThan(0);
    expect(await axeViolations(page)).toEqual([]);
    await page.emulateMedia({ media: "print" });
    expect(await page.getByRole("button", { name: "Print" }).isVisible()).toBe(false);
    expect(await page.locator(".test-report .chart svg, .test-report svg").count()).toBeGreaterThan(
      1,
    );
    // A page for the figures and one for the drawings, at least.
    const pages = (await page.pdf({ preferCSSPageSize: true })).toString("latin1");
    expect((pages.match(/\/Type\s*\/Page\b/g) ?? []).length).toBeGreaterThan(1);
    phone.expectNoTrouble();
  } finally {
    await phone.close();
  }
});
