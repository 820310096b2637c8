import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import type { Browser, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, inject, it } from "vitest";
import { version } from "../../package.json";
import { backupLineText } from "../../src/records/backup/backupLine.ts";
import { newStoredCheck } from "../../src/records/check/storedCheck.ts";
import { payloadText } from "../../src/sharing/payload.ts";
import { demoRecord } from "../support/demoRecords.ts";
import { plainPng } from "../support/pictures.ts";
import { launchChromium, Phone } from "./support/phone.ts";
import { Site } from "./support/site.ts";

let browser: Browser;
let site: Site;
let phone: Phone;
let stranger: Server;

beforeAll(async () => {
  browser = await launchChromium();
});

afterAll(async () => {
  await browser.close();
});

/** A page of someone else's that posts a form with this file to the app as soon as it is opened. */
let planted = "";

beforeEach(async () => {
  site = new Site();
  await site.publish(inject("dist"));
  phone = await Phone.open(browser);
  stranger = createServer((_, response) => {
    response.setHeader("content-type", "text/html; charset=utf-8");
    response.end(`<!doctype html><form method="post" enctype="multipart/form-data"
      action="${site.address}receive"><input type="file" name="check"></form><script>
      const files = new DataTransfer();
      files.items.add(new File([${JSON.stringify(planted)}], "holiday\u202etxt.gnp"));
      document.querySelector("input").files = files.files;
      document.querySelector("form").submit();
    </script>`);
  });
  await new Promise<void>((done) => stranger.listen(0, "127.0.0.1", done));
});

afterEach(async () => {
  await phone.close();
  await site.close();
  await new Promise((done) => stranger.close(done));
});

/** Names of the checks kept, past the app. */
async function kept(page: Page): Promise<string[]> {
  return page.evaluate(
    () =>
      new Promise<string[]>((done) => {
        const opening = indexedDB.open("stopfit");
        opening.onsuccess = () => {
          const rows = opening.result.transaction("checks").objectStore("checks").getAll();
          rows.onsuccess = () => {
            opening.result.close();
            done(rows.result.map(({ name }: { name: string }) => name));
          };
        };
      }),
  );
}

async function openReady(page: Page): Promise<void> {
  await page.goto(site.address);
  await page.getByText(`Ready offline · version ${version}`).waitFor();
}

describe("a page of someone else's", () => {
  it("that posts a backup changes nothing without two taps, and locks nobody out", async () => {
    const half = { ...newStoredCheck("Planted"), id: "\ud83d" };
    planted = [
      backupLineText({ kind: "header", createdAt: "2026-05-02T10:00:00.000Z" }),
      backupLineText({ kind: "check", check: half }),
      backupLineText({ kind: "end", lines: 1 }),
    ].join("");
    const page = await phone.newPage();
    await openReady(page);
    await page.goto(`http://127.0.0.1:${(stranger.address() as AddressInfo).port}/`);
    await page.getByRole("heading", { name: "Something was sent to Stopfit" }).waitFor();
    await page.getByText("holidaytxt.gnp").waitFor();
    expect(await kept(page)).not.toContain("Planted");
    await page.getByRole("button", { name: "Look at it" }).click();
    await page.getByText("What is in this backup").waitFor();
    expect(await kept(page)).not.toContain("Planted");
    await page.getByRole("button", { name: "Restore", exact: true }).click();
    await page.getByText("Restored: 1 added.").waitFor();
    expect(await kept(page)).toContain("Planted");
    await page.goto(site.address);
    await page.reload();
    await page.getByText("Planted").click();
    await page.getByRole("heading", { level: 1 }).waitFor();
    await page.getByText("This screen can't be shown").waitFor({ state: "detached" });
    phone.expectNoTrouble();
  });
});

describe("hostile input, on the built app", () => {
  it("in files is refused in words, one after another, and nothing is kept", async () => {
    const demo = demoRecord("arm-fits");
    const many = Object.fromEntries(Array.from({ length: 490_000 }, (_, at) => [`k${at}`, 1]));
    const body = new Uint8Array(30_000);
    const cut = payloadText({ photosLeftOut: 0, parts: 1, part: 0, mark: 0, body }, "letters");
    const links = Array.from(
      { length: 26_000 },
      (_, at) => `#/open/${cut.slice(0, 50)}${at}\nHello\n`,
    ).join("");
    const corpus: readonly (readonly [string, string, RegExp])[] = [
      ["newlines.txt", "\n".repeat(31_000_000), /holds no check/],
      ["keys.json", JSON.stringify({ ...demo, ...many }), /more than 2000 fields/],
      ["links.txt", links, /Only 50 links are opened at a time/],
      ["deep.json", "[".repeat(1_000_000), /lists within lists/],
      ["twice.json", '{"format":"stopfit-check","format":"x"}', /twice in one place/],
    ];
    const page = await phone.newPage();
    await page.goto(`${site.address}#/open`);
    for (const [name, text, words] of corpus) {
      await page
        .getByLabel("Files to open")
        .setInputFiles({ name, mimeType: "text/plain", buffer: Buffer.from(text) });
      await page.getByText(words).first().waitFor();
      expect([name, await kept(page)]).toEqual([name, []]);
    }
    phone.expectNoTrouble();
  });

  it("in names is shown clean and isolated, and a bomb of a picture is left out", async () => {
    const demo = demoRecord("arm-fits");
    const label = "Marlow \u202eSTIF\u202c \u0007<img src=x onerror=document.title='harmed'>";
    const bomb = { type: "image/png", data: plainPng(20_000, 20_000).toString("base64") };
    const record = { ...demo, vehicle: { ...demo.vehicle, label }, photos: [bomb] };
    const page = await phone.newPage();
    await page.goto(`${site.address}#/open`);
    await page.getByLabel("Files to open").setInputFiles({
      name: "check.json",
      mimeType: "application/json",
      buffer: Buffer.from(JSON.stringify(record)),
    });
    const shown = page.locator("dd bdi").first();
    await shown.waitFor();
    expect(await shown.textContent()).toBe(
      "Marlow STIF <img src=x onerror=document.title='harmed'>",
    );
    await page.getByText(/One photo was left out: no picture that can be opened here/).waitFor();
    expect(await page.title()).not.toContain("harmed");
    phone.expectNoTrouble();
  });
});
