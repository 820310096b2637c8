import { type ChildProcess, spawn } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { deflateSync } from "node:zlib";
import { backupLineText } from "../../src/records/backup/backupLine.ts";
import { storedFromRecord } from "../../src/records/filling/storedFromRecord.ts";
import { Site } from "../browser/support/site.ts";
import {
  type Engine,
  type EngineWindow,
  engines,
  openChromium,
} from "../engines/support/engines.ts";
import { generateRecords, randomFrom } from "../support/generateRecords.ts";
import { pngChunk } from "../support/pictures.ts";

/* npm run page-quality -- start: how soon a list of many checks can be used, in each engine. */

const checks = 200;
const photosEach = 2;
const slowness = 4;
/** A start that takes longer is none, ms. */
const patienceMs = 60_000;
const screen = { width: 360, height: 740 };

export interface Start {
  /** First contentful paint, ms after the navigation began. */
  readonly paintMs: number;
  /** All rows are drawn, painted, and the main thread takes a task again, ms. */
  readonly usableMs: number;
}

export interface StartsIn {
  readonly engine: string;
  /** The app was here before, its server is there. */
  readonly again: readonly Start[];
  /** A new page, the server gone. */
  readonly offline: readonly Start[];
}

/** A grey picture of noise, as large as a phone's photo is once it was made small. */
function noise(random: () => number): string {
  const side = 300;
  const header = Buffer.alloc(13);
  header.writeUInt32BE(side, 0);
  header.writeUInt32BE(side, 4);
  header.set([8, 0, 0, 0, 0], 8);
  const rows = Buffer.alloc(side * (side + 1));
  for (let at = 0; at < rows.length; at++) {
    rows[at] = at % (side + 1) === 0 ? 0 : Math.floor(256 * random());
  }
  return Buffer.concat([
    Buffer.from("\u0089PNG\r\n\u001a\n", "latin1"),
    pngChunk("IHDR", header),
    pngChunk("IDAT", deflateSync(rows)),
    pngChunk("IEND", Buffer.alloc(0)),
  ]).toString("base64");
}

function writeBackup(file: string): void {
  const random = randomFrom(7);
  const lines = [backupLineText({ kind: "header", createdAt: "2026-05-02T10:00:00.000Z" })];
  for (const record of generateRecords(checks)) {
    const photos = Array.from({ length: photosEach }, () => ({
      type: "image/png" as const,
      data: noise(random),
    }));
    const check = { ...storedFromRecord({ ...record, photos }), lastVerdict: "ok" as const };
    lines.push(backupLineText({ kind: "check", check }));
  }
  lines.push(backupLineText({ kind: "end", lines: checks }));
  writeFileSync(file, lines.join(""));
}

/** In the page, from as early as can be: when its list can be used. */
const untilUsable = `new Promise((done) => {
  const look = () => {
    if (document.querySelectorAll(".check-link").length < ${checks}) return setTimeout(look, 4);
    requestAnimationFrame(() => requestAnimationFrame(() => {
      const { port1, port2 } = new MessageChannel();
      port1.onmessage = () => done({
        usableMs: performance.now(),
        paintMs: performance.getEntriesByName("first-contentful-paint")[0]?.startTime ?? NaN,
      });
      port2.postMessage(null);
    }));
  };
  look();
})`;

async function start({ page }: EngineWindow, address: string): Promise<Start> {
  await page.goto("about:blank");
  await page.waitForTimeout(500);
  // Begun from the page itself, so that the next look is at the new one from its first moment on.
  await page.evaluate((to) => setTimeout(() => location.assign(to), 0), address);
  const latest = performance.now() + patienceMs;
  for (;;) {
    try {
      const here = (await page.evaluate("location.href")) as string;
      if (here !== "about:blank") return (await page.evaluate(untilUsable)) as Start;
    } catch (error) {
      // The page went while it was asked.
      if (performance.now() > latest) throw error;
    }
    await page.waitForTimeout(5);
  }
}

/** All programs that this process has started are slowed, and what they start. */
async function whileSlowed<Value>(work: () => Promise<Value>): Promise<Value> {
  const program = fileURLToPath(new URL("./dutyCycle.mjs", import.meta.url));
  const slower: ChildProcess = spawn(process.execPath, [
    program,
    `${slowness}`,
    "--below",
    `${process.pid}`,
  ]);
  try {
    await new Promise((done) => setTimeout(done, 300));
    return await work();
  } finally {
    const ended = new Promise((done) => slower.once("exit", done));
    slower.kill("SIGTERM");
    await ended;
  }
}

async function startsIn(
  engine: Pick<Engine, "name" | "open" | "quit">,
  dist: string,
  backup: string,
  rounds: number,
): Promise<StartsIn> {
  const site = new Site();
  await site.publish(dist);
  const window = await engine.open(screen);
  const { page } = window;
  try {
    await page.goto(`${site.address}#/saved`);
    await page.getByLabel("Backup to restore").setInputFiles(backup);
    await page.getByRole("button", { name: "Restore", exact: true }).click({ timeout: 120_000 });
    await page.getByText(/Restored: \d+ added/).waitFor({ timeout: 300_000 });
    await page.goto(site.address);
    await page.reload();
    await page.getByText("Ready offline").waitFor({ timeout: 60_000 });
    const times = async (): Promise<Start[]> => {
      const all: Start[] = [];
      for (let round = 0; round < rounds; round++) {
        all.push(await whileSlowed(() => start(window, site.address)));
      }
      return all;
    };
    const again = await times();
    await site.close();
    return { engine: engine.name, again, offline: await times() };
  } finally {
    await window.close();
    await engine.quit();
    await site.close();
  }
}

/** Each engine that is here, all of its processes slowed alike by letting them run for a part of each period. */
export async function measureStarts(
  dist: string,
  rounds: number,
  only?: string,
): Promise<StartsIn[]> {
  const folder = mkdtempSync(join(tmpdir(), "stopfit-start-"));
  try {
    const backup = join(folder, "backup.txt");
    writeBackup(backup);
    const here = [
      { name: "Chromium", open: openChromium, quit: async () => undefined },
      ...engines.filter(({ missing }) => missing.length === 0),
    ];
    const all: StartsIn[] = [];
    for (const engine of here) {
      if (only === undefined || only === engine.name) {
        all.push(await startsIn(engine, dist, backup, rounds));
      }
    }
    return all;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
