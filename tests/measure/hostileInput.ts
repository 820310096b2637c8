import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { strToU8, zipSync } from "fflate";
import type { Page } from "playwright-core";
import { storedFromRecord } from "../../src/records/filling/storedFromRecord.ts";
import { payloadText } from "../../src/sharing/payload.ts";
import { launchChromium } from "../browser/support/phone.ts";
import { Site } from "../browser/support/site.ts";
import { backupFile, backupText, jsonFile } from "../browser/support/stranger.ts";
import { demoRecord } from "../support/demoRecords.ts";
import { plainPng } from "../support/pictures.ts";
import { measuredPhone } from "./measuredPhone.ts";
import { processorTimes } from "./processorTimes.ts";

/*
 * npm run hostile-input: the longest task of the page's main thread while it takes what would hold it up, by
 * the processor time of that thread, which another program beside it does not change, times four. STOPFIT_DIST
 * names the build.
 */

const slowness = 4;

const demo = demoRecord("arm-fits");
const many = Object.fromEntries(Array.from({ length: 490_000 }, (_, at) => [`k${at}`, 1]));
const body = new Uint8Array(30_000);
const cut = payloadText({ photosLeftOut: 0, parts: 1, part: 0, mark: 0, body }, "letters");
const links = Array.from({ length: 26_000 }, (_, at) => `#/open/${cut.slice(0, 50)}${at}\nHello\n`);
const bomb = { type: "image/png", data: plainPng(20_000, 20_000).toString("base64") };
const large = { type: "image/png", data: plainPng(5000, 4000).toString("base64") };
const points = Array.from({ length: 1000 }, (_, at) => [(60 * at) / 999, at * at * 0.02]);
const name = `Marlow ${"\u202e".repeat(50)}${"W".repeat(140)}`;
const fullest = {
  ...demo,
  vehicle: { ...demo.vehicle, label: name },
  stop: { ...demo.stop, curve: points },
  notes: "W\u0301".repeat(9000),
  photos: [large, large, large, large, large],
};
const stored = storedFromRecord(demo);
const lines = Array.from({ length: 3000 }, (_, at) => ({
  kind: "check",
  check: { ...stored, id: `planted-${at}`, name },
}));

const opened = (words: RegExp) => async (page: Page) => {
  await page.getByText(words).first().waitFor({ timeout: 300_000 });
};
const phone: readonly (readonly [
  string,
  ReturnType<typeof jsonFile>,
  (page: Page) => Promise<void>,
])[] = [
  ["31 million line ends", jsonFile("a.txt", "\n".repeat(31_000_000)), opened(/holds no check/)],
  [
    "490,000 unknown fields",
    jsonFile("b.json", { ...demo, ...many }),
    opened(/more than 2000 fields/),
  ],
  ["26,000 cut links", jsonFile("c.txt", links.join("")), opened(/Only 50 links are opened/)],
  ["a million levels", jsonFile("d.json", "[".repeat(1_000_000)), opened(/lists within lists/)],
  [
    "a picture of 20,000 × 20,000",
    jsonFile("e.json", { ...demo, photos: [bomb] }),
    opened(/One photo was left out/),
  ],
  ["a check as full as one may be", jsonFile("f.json", fullest), opened(/A check was sent to you/)],
];

const zeros = new Uint8Array(39_000_000);
const manyFiles = Object.fromEntries(
  Array.from({ length: 3000 }, (_, at) => [`${at}.json`, strToU8(`{"format":"x${at}"}`)]),
);
const largeFiles = Object.fromEntries(
  Array.from({ length: 8 }, (_, at) => [`${at}.json`, zeros] as const),
);
const mail = [
  "From: a@holt.example",
  "MIME-Version: 1.0",
  "Content-Type: application/json; name=a.json",
  "Content-Transfer-Encoding: base64",
  "Content-Disposition: attachment; filename=a.json",
  "",
  Buffer.alloc(30_000_000, "[").toString("base64").replace(/.{76}/g, "$&\r\n"),
].join("\r\n");
const packed: readonly (readonly [string, ReturnType<typeof jsonFile>])[] = [
  ["an archive of 3000 files", zipFile("many.zip", manyFiles)],
  ["an archive that unpacks to 300 MB", zipFile("large.zip", largeFiles)],
  ["a mail of 40 MB", jsonFile("large.eml", mail)],
  ["a file of 30 million brackets", jsonFile("brackets.json", "[".repeat(30_000_000))],
];

function zipFile(file: string, files: { [name: string]: Uint8Array }) {
  return { name: file, mimeType: "application/zip", buffer: Buffer.from(zipSync(files)) };
}

const folder = mkdtempSync(join(tmpdir(), "stopfit-hostile-"));

/** From the disk, as a person chooses it: what is handed over in memory is decoded by the page itself. */
function onDisk({
  name: file,
  buffer,
}: {
  readonly name: string;
  readonly buffer: Uint8Array;
}): string {
  const path = join(folder, file);
  writeFileSync(path, buffer);
  return path;
}

async function longestTask(...asked: Parameters<typeof processorTimes>): Promise<number> {
  return (await processorTimes(...asked)).longestMs;
}

const site = new Site();
const browser = await launchChromium();
try {
  await site.publish(process.env.STOPFIT_DIST ?? "dist");
  const say = (what: string, ms: number) =>
    console.log(`${what.padEnd(56)} ${(slowness * ms).toFixed(0).padStart(6)} ms`);
  const fresh = async (address: string) => {
    const device = await measuredPhone(browser);
    const page = await device.newPage();
    page.setDefaultTimeout(300_000);
    await page.goto(`${site.address}${address}`);
    await page.getByRole("heading", { level: 1 }).waitFor();
    return { device, page };
  };
  console.log(`Longest task of the main thread, its processor time × ${slowness}:`);
  for (const [what, file, until] of phone) {
    const { device, page } = await fresh("#/open");
    const choose = page.getByLabel("Files to open");
    await choose.waitFor({ state: "attached" });
    const path = onDisk(file);
    say(
      `phone: ${what}`,
      await longestTask(browser, page, async () => {
        await choose.setInputFiles(path);
        await until(page);
      }),
    );
    await device.close();
  }
  for (const [what, file] of [
    ["3000 checks of a backup looked at", backupFile(...lines)],
    ["a line of a backup of 30 million letters", backupFile({ kind: "x".repeat(30_000_000) })],
    [
      "a backup of 30 million line ends",
      jsonFile("empty.txt", backupText().replace("\n", "\n".repeat(30_000_000))),
    ],
    [
      "a backup of a million lines that are none",
      jsonFile("spoilt.txt", backupText().replace("\n", "\nx".repeat(1_000_000))),
    ],
  ] as const) {
    const { device, page } = await fresh("#/kept");
    const choose = page.getByLabel("Backup to restore");
    await choose.waitFor({ state: "attached" });
    const path = onDisk(file);
    say(
      `phone: ${what}`,
      await longestTask(browser, page, async () => {
        await choose.setInputFiles(path);
        await page
          .locator("[data-survey]")
          .or(page.getByText("It was not read any further"))
          .waitFor();
      }),
    );
    await device.close();
  }
  {
    const { device, page } = await fresh("#/desk");
    const choose = page.getByLabel("Files to take in");
    await choose.waitFor({ state: "attached" });
    say(
      "desk: all of those files at once",
      await longestTask(browser, page, async () => {
        await choose.setInputFiles(phone.map(([, file]) => onDisk(file)));
        await page.locator('[data-import="ended"]').waitFor();
      }),
    );
    for (const [what, file] of packed) {
      const path = onDisk(file);
      await page.getByRole("button", { name: "Close", exact: true }).click();
      say(
        `desk: ${what}`,
        await longestTask(browser, page, async () => {
          await choose.setInputFiles(path);
          await page.locator('[data-import="ended"]').waitFor();
        }),
      );
    }
    say(
      "desk: the fullest check opened",
      await longestTask(browser, page, async () => {
        await page.getByRole("option").filter({ hasText: "WWW" }).first().click();
        await page.getByText("is computed.").waitFor({ state: "attached" });
      }),
    );
    await device.close();
  }
  {
    const pack = JSON.parse(readFileSync("demo-data/pack.json", "utf8")) as { stops: object[] };
    const stops = Array.from({ length: 900 }, (_, at) => ({
      ...pack.stops[0],
      id: `s${at}`,
      name,
    }));
    const path = onDisk(jsonFile("pack.json", { ...pack, stops: [...pack.stops, ...stops] }));
    const { device, page } = await fresh("#/pack");
    const choose = page.getByLabel("Library to open");
    await choose.waitFor({ state: "attached" });
    say(
      "pack: 900 stops, looked at",
      await longestTask(browser, page, async () => {
        await choose.setInputFiles(path);
        await page.getByRole("dialog").waitFor();
      }),
    );
    await device.close();
  }
} finally {
  await browser.close();
  await site.close();
  rmSync(folder, { recursive: true, force: true });
}
