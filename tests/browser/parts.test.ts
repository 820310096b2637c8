import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import type { Pack } from "../../src/records/pack/pack.ts";
import { type PackTables, packOfTables } from "../../src/records/packTables/packOfTables.ts";
import { inModelUnits } from "../../src/saying/modelUnits.ts";
import { runTool } from "../../src/tooling/run.mjs";
import { axeViolations } from "./support/axe.ts";
import { pick, textOf } from "./support/controls.ts";
import { demoRecord } from "./support/everyStep.ts";
import { writeFilm } from "./support/fakeCamera.ts";
import { launchShell, Phone } from "./support/phone.ts";
import { openListWith } from "./support/recordsOnPhone.ts";
import { Site } from "./support/site.ts";

const folder = mkdtempSync(join(tmpdir(), "stopfit-parts-"));
const site = new Site();
let browser: Browser;

beforeAll(async () => {
  browser = await launchShell();
  await site.publish(inject("dist"));
});

afterAll(async () => {
  await browser.close();
  await site.close();
  rmSync(folder, { recursive: true, force: true });
});

const check = demoRecord("arm-fits");
const at = (place: string) => `${site.address}#/check/${check.id}/${place}`;

async function withCheck(phone: Phone): Promise<Page> {
  const page = await phone.newPage();
  await openListWith(page, site.address, [check]);
  return page;
}

/** A sheet with the label of one part, and the film of a camera that is held before it. */
async function filmOfLabel(): Promise<string> {
  const phone = await Phone.open(browser);
  const page = await phone.newPage();
  await page.goto(`${site.address}#/labels`);
  await page.getByLabel("Batch").fill("2611");
  await page.getByLabel("Search").fill("HL-1052, revision B");
  await pick(page.getByRole("checkbox", { name: /HL-1052, revision B/ }));
  await page.getByRole("button", { name: "Print 1 label" }).waitFor();
  const code = page.getByRole("img", { name: /^Code of HL-1052.*batch 2611/ });
  const film = join(folder, "label.y4m");
  const projector = await phone.newPage();
  await writeFilm(projector, film, [{ png: await code.screenshot(), codePixels: 330 }]);
  phone.expectNoTrouble();
  await phone.close();
  return film;
}

it("a label of the printed sheet chooses the stop in a check by the camera, after one tap", async () => {
  const watching = await launchShell([
    "--use-fake-ui-for-media-stream",
    "--use-fake-device-for-media-stream",
    `--use-file-for-fake-video-capture=${await filmOfLabel()}`,
  ]);
  const phone = await Phone.open(watching);
  await phone.context.grantPermissions(["camera"]);
  const page = await withCheck(phone);
  await page.goto(at("stop"));
  await page.getByRole("button", { name: "Scan the label" }).tap();
  await page.getByText("Arm block, HL-1052, revision B, batch 2611").waitFor();
  await page.goto(at("fitted"));
  await page.getByRole("button", { name: "Scan the label" }).tap();
  await page.getByText(/Fitted:/).waitFor();
  expect(await textOf(page.locator("main"))).toContain("HL-1052, revision B, batch 2611");
  await page.goto(`${site.address}#/taller`);
  await page.getByLabel("Which vehicle and axle?").selectOption({ index: 1 });
  await page.getByText("Is there a label or a part number?").tap();
  await page.getByRole("button", { name: "Scan the label" }).tap();
  await page.getByText("Which stop: Arm block").waitFor();
  phone.expectNoTrouble();
  await phone.close();
  await watching.close();
});

it("what was fitted is kept, and the vehicle is checked again with the same geometry", async () => {
  const phone = await Phone.open(browser);
  const page = await withCheck(phone);
  await page.goto(at("answer"));
  await page.getByRole("button", { name: "Fitted", exact: true }).tap();
  await page.getByLabel("Part number", { exact: true }).fill("HL-9999");
  await page.getByRole("button", { name: "Find the part" }).tap();
  await page.getByText(/“HL-9999” is not in the parts library/).waitFor();
  await page.getByLabel("Part number", { exact: true }).fill("hl 1052");
  await page.getByRole("button", { name: "Find the part" }).tap();
  await page.getByRole("textbox", { name: /^Spacer/ }).fill("10");
  await page.getByLabel("Who fitted it").fill("Ada");
  await page.getByLabel(/^Odometer/).fill("82 340");
  await page
    .getByRole("status")
    .filter({ hasText: /^\s*Saved$/ })
    .waitFor();
  await page.reload();
  expect(await page.getByLabel("Who fitted it").inputValue()).toBe("Ada");
  expect(await axeViolations(page)).toEqual([]);
  await page.getByRole("button", { name: "Check again after the change" }).tap();
  await page.waitForURL((url) => !url.hash.includes(check.id));
  await page.getByRole("heading", { level: 1 }).waitFor();
  await page.goto(at("answer"));
  await page.getByText(/HL-1052, revision B, spacer 10\smm, by Ada/).waitFor();
  await page.getByText(/Checked before the change/).waitFor();
  phone.expectNoTrouble();
  await phone.close();
});

it("a second person sees none of the first numbers; the customer is told without jargon", async () => {
  const phone = await Phone.open(browser);
  const page = await withCheck(phone);
  await page.goto(at("second"));
  await page.getByLabel("Your name").fill("Bo");
  await page.getByRole("button", { name: "Begin" }).tap();
  const field = page.locator(".reading-entry").getByRole("textbox").first();
  await field.waitFor();
  expect(await field.inputValue()).toBe("");
  const first = check.layout.readings as { readonly pivotToStop?: { values: readonly number[] } };
  expect(await textOf(page.locator("main"))).not.toContain(String(first.pivotToStop?.values[0]));
  await field.fill("151");
  for (let left = 0; left < 40; left += 1) {
    const done = page.getByRole("heading", { name: "How the two differ" });
    if (await done.isVisible()) break;
    await page.getByRole("button", { name: /^(Next|Leave out)$/ }).tap();
  }
  await page.getByText(/apart/).first().waitFor();
  await page.goto(at("explain"));
  await page.getByRole("heading", { name: "Today" }).waitFor();
  await page.getByRole("heading", { name: "What the part changes" }).waitFor();
  expect(await axeViolations(page)).toEqual([]);
  phone.expectNoTrouble();
  await phone.close();
});

/** Two builds are made on the way, each as long as the whole machine needs for one. */
const buildsMs = 600_000;

describe("a maker's own app", () => {
  const table = (name: string) => ({
    file: `${name}.csv`,
    text: readFileSync(`demo-data/tables/${name}.csv`, "utf8"),
  });
  const made = packOfTables({
    maker: table("maker"),
    stops: table("stops"),
    curves: table("curves"),
    platforms: table("platforms"),
  } satisfies PackTables);
  if (!made.ok) throw new Error(made.faults.map(inModelUnits).join("\n"));
  const logo =
    '<svg xmlns="http://www.w3.org/2000/svg" width="80" height="40"><circle cx="40" cy="20" r="18"/></svg>';
  const shipped: Pack = {
    ...made.pack,
    maker: { name: "Halden Lane Garage", ...made.pack.maker, logo: "mark.svg" },
  };

  async function built(pack: Pack, name: string): Promise<string> {
    const file = join(folder, `${name}.json`);
    writeFileSync(file, JSON.stringify(pack));
    writeFileSync(join(folder, "mark.svg"), logo);
    const out = join(folder, name);
    const env = { ...process.env, NODE_ENV: "production", STOPFIT_PACK: file };
    const args = ["build", "--logLevel", "warn", "--outDir", out];
    expect(await runTool("vite/bin/vite.js", args, { env })).toBe(0);
    return out;
  }

  it(
    "ships pack, name, logo and color, takes a newer one by a tap that says what changed, and keeps checks",
    async () => {
      const first = await built(shipped, "first");
      const own = new Site("/maker/");
      await own.publish(first);
      const phone = await Phone.open(browser, { offlineCopy: true });
      const page = await phone.newPage();
      await page.goto(own.address);
      await page.getByText("Ready offline").waitFor();
      await phone.goOffline();
      await page.reload();
      const mark = page.locator(".maker-mark");
      await mark.getByText("Halden Lane Garage").waitFor();
      const logoWidth = () =>
        mark.locator("img").evaluate((img: HTMLImageElement) => img.complete && img.naturalWidth);
      await expect.poll(logoWidth).toBe(80);
      await page.goto(`${own.address}#/pack`);
      await page.getByRole("heading", { name: "Halden Lane parts" }).waitFor();
      await page
        .getByText(/5 stops, 3 vehicles\. As it came with Stopfit\. Edition 2026-11/)
        .waitFor();
      expect(
        await page.evaluate(() =>
          getComputedStyle(document.documentElement).getPropertyValue("--accent").trim(),
        ),
      ).toBe("#5a2a6e");
      await page.goto(own.address);
      await page.getByRole("button", { name: /^Full check/ }).tap();
      await page.waitForURL(/#\/check\//);
      const id = page.url().split("/check/")[1]?.split("/")[0] ?? "";
      await page.goto(`${own.address}#/check/${id}/stop`);
      await page.getByLabel("Part number", { exact: true }).fill("HL-1060");
      await page.getByRole("button", { name: "Find the part" }).tap();
      await page.getByText("Tall block, HL-1060").waitFor();
      await page
        .getByRole("status")
        .filter({ hasText: /^\s*Saved$/ })
        .waitFor();

      const [head, ...rest] = made.pack.stops;
      if (!head) throw new Error("no stops");
      const later: Pack = {
        ...shipped,
        edition: "2026-12",
        stops: [
          ...rest,
          { ...head, replacedBy: "HL-1060" },
          { ...head, id: "new", name: "New block", partNumber: "HL-1100", revision: "A" },
        ],
      };
      // The same page, with a newer pack in place of the first: as a new build does it.
      await own.publish(await built(later, "later"));
      await phone.context.setOffline(false);
      await page.goto(own.address);
      await page.reload();
      await page.evaluate(async () => (await navigator.serviceWorker.getRegistration())?.update());
      await page.getByRole("button", { name: "Update now" }).tap();
      const ready = page.getByText(
        /A newer parts library is ready: Halden Lane parts, edition 2026-12/,
      );
      // Looked for as the list opens: on a machine that is busy taking the update, at the next opening.
      await ready.waitFor({ timeout: 10_000 }).catch(() => page.reload());
      await ready.waitFor();
      await page.getByText(/^What changes/).tap();
      await page.getByText("New stop: New block").waitFor();
      await page.getByText("Replaced: Short block, by HL-1060").waitFor();
      // What came with the update is at hand: the tap needs no signal.
      await phone.goOffline();
      await page.getByRole("button", { name: "Use the newer one" }).tap();
      await page.getByText(/A newer parts library is ready/).waitFor({ state: "hidden" });
      await page.reload();
      await page.goto(`${own.address}#/pack`);
      await page.getByText(/6 stops, 3 vehicles\..*Edition 2026-12/).waitFor();
      const stored = await page.evaluate(
        (wanted) =>
          new Promise<{ reference?: unknown }>((done) => {
            const opening = indexedDB.open("stopfit");
            opening.onsuccess = () => {
              const get = opening.result.transaction("checks").objectStore("checks").get(wanted);
              get.onsuccess = () => done(get.result.record);
            };
          }),
        decodeURIComponent(id),
      );
      expect(stored.reference).toMatchObject({ edition: "2026-11", stop: "hl-1060" });
      phone.expectNoTrouble();
      await phone.close();
      await own.close();
    },
    buildsMs,
  );
});
