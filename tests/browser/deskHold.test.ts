import { openSync, readFileSync, truncateSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { deflateRawSync } from "node:zlib";
import type { Page } from "playwright-core";
import { beforeEach, expect, it } from "vitest";
import { backupLineText } from "../../src/records/backup/backupLine.ts";
import { payloadText } from "../../src/sharing/payload.ts";
import { demoRecord } from "../support/demoRecords.ts";
import { generateRecords } from "../support/generateRecords.ts";
import { kept } from "./support/deskKept.ts";
import { DeskPage } from "./support/deskPage.ts";
import { deskWithFolder } from "./support/deskWithFolder.ts";
import { Phone } from "./support/phone.ts";
import type { Site } from "./support/site.ts";

const demo = demoRecord("arm-fits");

const stage = deskWithFolder();
let site: Site;
let office: Phone;
let folder: string;

beforeEach(() => {
  ({ site, phone: office, folder } = stage);
});

/** What the page holds in memory, in megabytes, without what only waits to be collected. */
async function heapOf(page: Page): Promise<() => Promise<number>> {
  const session = await page.context().newCDPSession(page);
  await session.send("Performance.enable");
  return async () => {
    await session.send("HeapProfiler.collectGarbage");
    const { metrics } = await session.send("Performance.getMetrics");
    return (metrics.find(({ name }) => name === "JSHeapUsedSize")?.value ?? Number.NaN) / 1e6;
  };
}

it("takes 10 000 records in without a dropped one, holds none of them in memory, and lists them by keys", async () => {
  const file = join(folder, "ten-thousand.txt");
  const lines = [backupLineText({ kind: "header", createdAt: "2026-05-02T10:00:00.000Z" })];
  for (const record of generateRecords(10_000)) {
    lines.push(
      backupLineText({
        kind: "submission",
        text: JSON.stringify(record),
        receivedAt: "2026-05-02T10:00:00.000Z",
        way: "file",
        photosLeftOut: 0,
      }),
    );
  }
  lines.push(backupLineText({ kind: "end", lines: 10_000 }));
  writeFileSync(file, lines.join(""));
  const desk = await stage.open();
  const heapMegabytes = await heapOf(desk.page);
  const before = await heapMegabytes();
  const restored = desk.restore(file);
  let most = 0;
  const ended = desk.page.getByText(/^Restored: /);
  while ((await ended.count()) === 0) {
    most = Math.max(most, await heapMegabytes());
    await desk.page.waitForTimeout(1000);
  }
  expect(await restored).toBe("Restored: 10000 added.");
  await desk.open(site.address);
  const { submissions, texts } = await kept(desk.page);
  expect(new Set(submissions.map(({ checkId }) => checkId)).size).toBe(10_000);
  expect(new Set(texts).size).toBe(10_000);
  // The texts alone are over 25 MB; what is in hand at once is a few records and the list's rows.
  expect(most - before).toBeLessThan(20);

  await desk.list.focus();
  await desk.page.keyboard.press("End");
  await desk.page.locator('.desk-row[aria-posinset="10000"][aria-selected="true"]').waitFor();
  expect(await desk.rows.count()).toBeLessThan(60);
  await desk.page.keyboard.press("/");
  await desk.page.keyboard.type("osprey");
  await desk.page.getByText(/^[\d,]+ of 10,000 checks\./).waitFor();
  await desk.page.keyboard.press("Escape");
  await desk.page.keyboard.press("ArrowDown");
  await desk.page.keyboard.press("Enter");
  await desk.computed();
  await desk.page.keyboard.press("Escape");
  await desk.heading.waitFor();
  office.expectNoTrouble();
}, 400_000);

it("what is no sound check gets a sentence each and harms nothing", async () => {
  const file = (name: string, content: string) => {
    const path = join(folder, name);
    writeFileSync(path, content);
    return path;
  };
  const huge = join(folder, "huge.json");
  openSync(huge, "w");
  truncateSync(huge, 1_000_000_000);
  const limit = { kind: "metal", at: "wheel", reading: { values: [90], tol: 1 } };
  const crowded = {
    ...demo,
    corners: demo.corners.map((corner) => ({
      ...corner,
      limits: Array.from({ length: 10_000 }, () => limit),
    })),
  };
  const label = '<img src=x onerror="document.title=1"><script>document.title=2</script>';
  const scripted = { ...demo, vehicle: { ...demo.vehicle, label } };
  // 25 MB of zeros as a link: it unpacks to far more than a check.
  const body = new Uint8Array(deflateRawSync(Buffer.alloc(25_000_000), { level: 9 }));
  const bomb = payloadText({ photosLeftOut: 0, parts: 1, part: 0, mark: 0, body }, "letters");
  const desk = await stage.open();
  const title = await desk.page.title();
  const said = await desk.takeFiles([
    huge,
    file("truncated.json", JSON.stringify(demo).slice(0, 900)),
    file("crowded.json", JSON.stringify(crowded)),
    file("archive.zip", "PK\u0003\u0004rest"),
    file("empty.json", ""),
    file("words.txt", "Dear desk, the check follows."),
    file("bomb.txt", `Here is my check: https://stopfit.example/#/open/${bomb}`),
    file("reply.txt", '{"format":"stopfit-reply","version":1}'),
    file("scripted.json", JSON.stringify(scripted)),
  ]);
  expect(said).toBe("Taken in: 1 check added, 8 not taken in.");
  await desk.page.getByText("What was not taken in, and why").click();
  const told = new Map(
    (await desk.refused.allTextContents()).map((text) => {
      const [name = "", ...words] = text.split(": ");
      return [name, words.join(": ")] as const;
    }),
  );
  expect(told.get("huge.json")).toMatch(/1000 MB.* It was not read\.$/);
  expect(told.get("truncated.json")).toMatch(/is cut off/);
  expect(told.get("crowded.json")).toMatch(/clearances/);
  expect(told.get("archive.zip")).toMatch(/holds no check/);
  expect(told.get("empty.json")).toMatch(/empty/);
  expect(told.get("words.txt")).toMatch(/holds no check/);
  expect(told.get("bomb.txt")).toMatch(/unpacks to more than 1 MB/);
  expect(told.get("reply.txt")).toMatch(/is not a whole reply/);
  await desk.openCheck("<img src=x");
  expect(await desk.page.getByRole("heading", { level: 1 }).first().textContent()).toContain(label);
  expect(await desk.page.title()).toBe(title);
  expect(await desk.page.locator("img").count()).toBe(0);
  office.expectNoTrouble();
});

it("two desk tabs lose no decision, also where neither knows of the other", async () => {
  stage.writeRecords(2, 9);
  const one = await stage.open();
  await one.page.getByLabel("Folder to take in").setInputFiles(folder);
  await one.ended();
  const [first] = (await kept(one.page)).submissions;
  const address = `${site.address}#/desk/check/${encodeURIComponent(first?.key ?? "")}`;
  const unaware = new DeskPage(await office.newPage());
  await unaware.page.addInitScript(() => {
    Reflect.deleteProperty(globalThis, "BroadcastChannel");
  });
  const accept = (desk: DeskPage) =>
    desk.page.getByRole("button", { name: "Accept", exact: true }).last().click();
  for (const [desk, name] of [
    [one, "M. Lind"],
    [unaware, "A. Sato"],
  ] as const) {
    await desk.page.goto(address);
    await desk.computed();
    await desk.choose("Accept");
    await desk.name(name);
  }
  await accept(one);
  await one.decided("accept").waitFor();
  await accept(unaware);
  await unaware.decided("accept").waitFor();
  const by = (await kept(one.page)).decisions.map((decision) => decision.by);
  expect(by.sort()).toEqual(["A. Sato", "M. Lind"]);

  await one.page.reload();
  await one.page.getByText("Accepted, M. Lind, version 1").waitFor();
  await one.page.getByText("Accepted, A. Sato, version 1").waitFor();
  const third = new DeskPage(await office.newPage());
  await third.page.goto(address);
  await third.decided("accept").waitFor();
  await one.page.getByRole("button", { name: "Take the decision back" }).click();
  await third.page.getByText("Accepted (taken back), A. Sato, version 1").waitFor();
  await third.page.getByText("by M. Lind").waitFor();
  office.expectNoTrouble();
});

it("a backup brings everything to another machine, twice as well as once, and the table has every side", async () => {
  stage.writeRecords(4, 11);
  writeFileSync(
    join(folder, "formula.json"),
    JSON.stringify({ ...demo, vehicle: { ...demo.vehicle, label: '=HYPERLINK("http://x")' } }),
  );
  const desk = await stage.open();
  await desk.page.getByLabel("Folder to take in").setInputFiles(folder);
  await desk.ended();
  await desk.page.getByText(/^Computing/).waitFor({ state: "detached", timeout: 60_000 });
  await desk.openCheck("=HYPERLINK");
  await desk.choose("Accept");
  await desk.name("M. Lind");
  await desk.page.getByRole("button", { name: "Accept", exact: true }).last().click();
  await desk.decided("accept").waitFor();
  await desk.page.keyboard.press("Escape");
  await desk.heading.waitFor();

  const table = readFileSync(await desk.saved("Save a table (CSV)"), "utf8");
  expect(table.startsWith("\ufeffcheck id,version,")).toBe(true);
  expect(table).toContain('"\'=HYPERLINK(""http://x"")"');
  const sides = table.trimEnd().split("\r\n").length - 1;
  const before = await kept(desk.page);
  const [first] = await desk.page.evaluate(
    () =>
      new Promise<number[]>((done) => {
        const opening = indexedDB.open("stopfit-desk");
        opening.onsuccess = () => {
          const all = opening.result.transaction("submissions").objectStore("submissions").getAll();
          all.onsuccess = () =>
            done([all.result.reduce((sum: number, each) => sum + each.sides.length, 0)]);
        };
      }),
  );
  expect(sides).toBe(first);

  const backup = await desk.saved("Save a backup");
  const machine = await Phone.open(stage.browser, { width: 1280, height: 800 });
  const other = await new DeskPage(await machine.newPage()).open(site.address);
  const asFile = (name: string, buffer: Buffer) => ({ name, mimeType: "text/plain", buffer });
  const whole = asFile("backup.txt", readFileSync(backup));
  await other.restore(whole, { withDecisions: true });
  const after = await kept(other.page);
  expect(after.texts).toEqual(before.texts);
  expect(after.decisions.map(({ fromBackup: _, ...decision }) => decision)).toEqual(
    before.decisions,
  );
  expect(after.decisions.every(({ fromBackup }) => fromBackup !== undefined)).toBe(true);
  await other.open(site.address);
  await other.row("Accepted").waitFor();
  await other.lookInto(whole);
  await other.page.getByText("Nothing in it is new here.").waitFor();
  const cut = readFileSync(backup, "utf8").split("\n").slice(0, 3).join("\n");
  await other.open(site.address);
  await other.lookInto(asFile("cut.txt", Buffer.from(cut)));
  await other.page.getByText(/cut short/).waitFor();
  machine.expectNoTrouble();
  await machine.close();
  office.expectNoTrouble();
});
