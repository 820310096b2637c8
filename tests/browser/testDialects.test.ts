import { join } from "node:path";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, inject, it } from "vitest";
import { importFile } from "../../src/records/testRows/importFile.ts";
import { sentenceText } from "../../src/saying/sentenceText.ts";
import { trueStops } from "../support/testMachine/designs.ts";
import { dialects } from "../support/testMachine/dialects.ts";
import { ramp, sequence, triangle } from "../support/testMachine/motions.ts";
import { refusedFiles } from "../support/testMachine/refusedFiles.ts";
import { measure } from "../support/testMachine/testMachine.ts";
import { launchShell, Phone } from "./support/phone.ts";
import { Site } from "./support/site.ts";

let browser: Browser;
let site: Site;
let phone: Phone;

beforeAll(async () => {
  browser = await launchShell();
  site = new Site();
  await site.publish(inject("dist"));
  phone = await Phone.open(browser, { offlineCopy: true });
});

afterAll(async () => {
  await phone.close();
  await browser.close();
  await site.close();
});

const stop = trueStops.dashpot;
if (stop === undefined) throw new Error("no such stop");
const measured = measure(
  stop,
  sequence([...ramp(0, 44, 8), triangle(0, 40, 100, 3), triangle(0, 40, 400, 4)], 0.2),
  { samplesPerS: 200, whiteN: 5 },
);

/** A picture of each file's screen, where STOPFIT_PICTURES names a folder for them. */
async function picture(page: Page, name: string): Promise<void> {
  const folder = process.env.STOPFIT_PICTURES;
  if (folder === undefined) return;
  await page.screenshot({
    path: join(folder, `${name.replace(/[^\w]+/g, "-")}.png`),
    fullPage: true,
  });
}

/** The import screen without a connection. */
async function offlineImport(): Promise<Page> {
  const page = await phone.newPage();
  await page.goto(site.address);
  await page.getByText("Ready offline").first().waitFor();
  await phone.goOffline();
  await page.goto(`${site.address}#/pack/tests/tall-firm`);
  await page.getByRole("heading", { level: 1, name: "Import a test" }).waitFor();
  return page;
}

async function choose(page: Page, name: string, content: string | Uint8Array): Promise<void> {
  await page
    .getByLabel("Test file")
    .setInputFiles({ name, mimeType: "text/csv", buffer: Buffer.from(content) });
}

/** Nothing is cut off beside the screen. */
async function expectWhole(page: Page): Promise<void> {
  const wide = await page.evaluate(() => document.documentElement.scrollWidth);
  expect(wide).toBeLessThanOrEqual(360);
}

it("each way of writing a test is read on a phone without a connection, or refused with its cause", async () => {
  const page = await offlineImport();
  for (const [place, dialect] of dialects.entries()) {
    const content = dialect.write(measured);
    const bytes = typeof content === "string" ? content : content.slice().buffer;
    const here = await importFile(new File([bytes], "test.csv"), {}, () => undefined);
    if (!here.ok) throw new Error(`${dialect.name}: ${here.fault.code}`);
    const [{ file, analysis } = { file: null, analysis: null }] = here.value;
    if (file === null) throw new Error(dialect.name);
    const name = `test-${place}.csv`;
    await choose(page, name, content);
    const card = page.locator("section.card").filter({
      has: page.getByRole("heading", { name, exact: true }),
    });
    await card.waitFor();
    const columns = file.columns.map(({ quantity, unit }) => `${quantity} in ${unit}`).join(", ");
    await card.getByText(`columns: ${columns}`).waitFor();
    const text = (await card.textContent()) ?? "";
    for (const remark of [...file.remarks, ...analysis.remarks])
      expect(text, dialect.name).toContain(sentenceText(remark.sentence, "mm"));
    await page.getByRole("table", { name: /^Damping/ }).waitFor();
    await page.getByRole("heading", { name: "Save it with Tall firm" }).waitFor();
    await expectWhole(page);
    await picture(page, `read ${dialect.name}`);
  }
  for (const { name, file, cause } of refusedFiles) {
    await choose(page, "refused.csv", file);
    const sentence = page.getByRole("alert").or(page.locator("[role=status]")).getByText(cause);
    await sentence.waitFor();
    const bar = await page.getByRole("button", { name: "Another file" }).boundingBox();
    const box = await sentence.boundingBox();
    expect((box?.y ?? 740) + (box?.height ?? 0), name).toBeLessThan(bar?.y ?? 0);
    expect(await page.getByRole("heading", { name: /^Save it with/ }).count()).toBe(0);
    await expectWhole(page);
    await picture(page, `refused ${name}`);
  }
  phone.expectNoTrouble();
});

it("columns without headings are told by their own letters, below a long header, and then read", async () => {
  const page = await offlineImport();
  const header = Array.from({ length: 900 }, (_, line) => `Prüfung ${line}\tnach Plan`);
  const rows = Array.from(measured.timeS, (time, row) =>
    [time, measured.depthMm[row] ?? 0, measured.forceN[row] ?? 0]
      .map((value) => value.toFixed(4).replace(".", ","))
      .join("\t"),
  );
  const text = `\uFEFF${[...header, "", "Größe 1\tGröße 2\tGröße 3", ...rows].join("\r\n")}`;
  await choose(
    page,
    "columns.txt",
    new Uint8Array(Uint16Array.from(text, (c) => c.charCodeAt(0)).buffer),
  );
  await page.getByRole("heading", { name: "Say what the columns are" }).waitFor();
  await page.getByText(/nach Plan · Größe 2 · /).waitFor();
  await expectWhole(page);
  await picture(page, "columns to choose");
  for (const [column, use] of ["Time, s", "Depth or displacement, mm", "Force, N"].entries())
    await page.getByLabel(`Column ${column + 1}`).selectOption({ label: use });
  await page.getByRole("button", { name: "Read it so" }).click();
  await page.getByText(`${rows.length.toLocaleString("en")} rows; columns: time in s`).waitFor();
  await page.getByRole("table", { name: /^Damping/ }).waitFor();
  phone.expectNoTrouble();
});
