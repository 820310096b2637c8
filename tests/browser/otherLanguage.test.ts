import { readdirSync } from "node:fs";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import { shareLink } from "../../src/sharing/shareLink.ts";
import { demoRecord } from "../support/demoRecords.ts";
import { reply } from "../support/sampleReply.ts";
import { ensurePseudoDist } from "./support/build.ts";
import { inInches, inMillimeters } from "./support/everyPseudoScreen.ts";
import { OtherLanguage, said } from "./support/otherLanguage.ts";
import { launchShell, Phone } from "./support/phone.ts";
import { Site } from "./support/site.ts";

// The app in the language for tests, longer by two fifths, on a narrow phone: no text is cut, nothing sticks
// out of its box, and every word is the catalogue's or a person's own.

let browser: Browser;
let site: Site;
let metric: OtherLanguage;
let customary: OtherLanguage;

beforeAll(async () => {
  const dist = await ensurePseudoDist(inject("pseudoDist"));
  browser = await launchShell();
  site = new Site();
  await site.publish(dist);
  [metric, customary] = await Promise.all([phoneIn("mm"), phoneIn("in")]);
});

afterAll(async () => {
  await browser.close();
  await site.close();
});

async function phoneIn(length: "mm" | "in"): Promise<OtherLanguage> {
  const phone = await Phone.open(browser, { bypassCSP: true, demo: true });
  const page = await phone.newPage();
  await page.addInitScript((kept) => {
    // Pages that are still empty have no storage.
    if (location.protocol !== "about:") localStorage.setItem("stopfit.preferences", kept);
  }, JSON.stringify({ length }));
  const language = new OtherLanguage(page, site.address);
  await page.goto(site.address);
  await page.locator("a.check-link").nth(16).waitFor();
  return language;
}

const jsonFile = (name: string, value: unknown) => ({
  name,
  mimeType: "application/json",
  buffer: Buffer.from(JSON.stringify(value)),
});

it("finds a text of no catalogue, a text that is cut and what is too wide", async () => {
  const { page } = metric;
  await metric.goTo("#/scan");
  expect(await metric.look()).toEqual([]);
  await page.evaluate(
    (whole) => {
      const add = (className: string, style: string, text: string) => {
        const element = document.createElement("p");
        element.className = className;
        element.style.cssText = style;
        element.textContent = text;
        document.querySelector("main")?.append(element);
        return element;
      };
      add("plain", "", "Measure again");
      add("named", "", "").setAttribute("aria-label", "Close");
      add("cut", "width: 60px; overflow: hidden; white-space: nowrap", whole);
      add("low", "height: 12px; overflow: hidden", `${whole} ${whole} ${whole}`);
      add("half", "", whole.slice(0, -1));
      add("button", "width: 30px; min-width: 0", whole);
      add("wide", "width: 500px", whole);
      const field = document.createElement("input");
      field.className = "field-of-text";
      field.placeholder = whole;
      field.style.width = "50px";
      document.querySelector("main")?.append(field);
    },
    said("screens/parts", "oneMoment"),
  );
  const found = (await metric.look()).join("\n");
  expect(found).toContain("text not of the catalogue, Measure again: “Measure again” in p.plain");
  expect(found).toContain("aria-label not of the catalogue, Close: “Close” in p.named");
  expect(found).toMatch(/cut by \d+ px at its side: .* in p\.cut/);
  expect(found).toMatch(/cut by \d+ px below: .* in p\.low/);
  expect(found).toMatch(/its end or its start is missing: .* in p\.half/);
  expect(found).toMatch(/\d+ px beside p\.button: /);
  expect(found).toMatch(/\d+ px wider than the screen/);
  expect(found).toMatch(/cut by \d+ px: .* in input\.field-of-text/);
  await page.reload();
});

describe.concurrent("every address", () => {
  it.each(inMillimeters)("%s, in mm", async (_, address) => {
    expect(await metric.lookAt(address)).toEqual([]);
  });
  it.each(inInches)("%s, in inches", async (_, address) => {
    expect(await customary.lookAt(address)).toEqual([]);
  });
});

it("the list: what can be done with a check, its dialogs, a new one", async () => {
  const { page } = metric;
  await metric.goTo("#/");
  const menu = page.locator(".check-row-top button").first();
  const act = async (key: string) => {
    await menu.click();
    await page.getByRole("button", { name: said("screens/home", key), exact: true }).click();
  };
  await menu.click();
  const wrong = await metric.look("menu");
  await menu.click();
  await act("rename");
  await page.locator("dialog[open]").waitFor();
  wrong.push(...(await metric.look("rename")));
  await page.keyboard.press("Escape");
  await act("send");
  const dialog = page.locator("dialog[open]");
  for (const way of await dialog.locator(".segmented label").all()) {
    await way.click();
    wrong.push(...(await metric.look("send")));
  }
  await dialog.locator(".send-top button, .dialog-actions button").last().click();
  await act("deleteWord");
  wrong.push(...(await metric.look("deleted")));
  await page.getByRole("button", { name: said("screens/home", "undo"), exact: true }).click();
  await page.locator(".action-bar .button-main").click();
  await page.locator("[data-step=vehicle]").waitFor();
  wrong.push(...(await metric.look("a new check")));
  expect(wrong).toEqual([]);
});

it("the quick check, answered", async () => {
  const { page } = metric;
  await metric.goTo("#/taller");
  await page.locator("main select").first().selectOption("marlow-utility-front");
  const fields = page.locator("main input[data-number]");
  for (const [index, text] of ["575", "44", "42", "150"].entries())
    await fields.nth(index).fill(text);
  await page.locator("main .choice").last().click();
  const wrong = await metric.look("questions");
  await page.locator(".action-bar .button-main").click();
  await page.locator(".verdict h1").waitFor();
  wrong.push(...(await metric.look("answer")));
  expect(wrong).toEqual([]);
});

it("what is received: a check, a reply; a stop's test", async () => {
  const { page } = customary;
  const record = demoRecord("two-arms-measured");
  const link = shareLink({ ...record, id: "6f6c1c9e-0000-4000-8000-000000000077" }, site.address);
  if (!link.ok) throw new Error(link.fault.code);
  await customary.goTo(`#${link.value.address.split("#")[1]}`);
  await page.locator("[data-verdict]").waitFor();
  const wrong = await customary.look("a check");
  await customary.goTo("#/");
  await page
    .locator('input[type="file"]')
    .setInputFiles(jsonFile("reply.json", { ...reply, checkId: record.id }));
  await page.locator("[data-verdict]").waitFor();
  wrong.push(...(await customary.look("a reply")));
  await page.locator(".action-bar .button-main").click();
  await page.waitForFunction(() => location.hash.startsWith("#/reply/"));
  wrong.push(...(await customary.look("the reply, kept")));
  await customary.goTo("#/pack/tests/tall-firm");
  await page
    .locator('input[type="file"]')
    .first()
    .setInputFiles("demo-data/tests/tall-firm-rows.csv");
  await page.locator("main figure").first().waitFor();
  wrong.push(...(await customary.look("a test")));
  expect(wrong).toEqual([]);
});

it("the review desk with checks", async () => {
  const { page } = metric;
  await metric.goTo("#/desk");
  const files = readdirSync("demo-data/checks").map((name) => `demo-data/checks/${name}`);
  await page.locator('input[type="file"][multiple]').first().setInputFiles(files);
  await page.locator('[data-import="ended"]').waitFor({ timeout: 110_000 });
  const wrong = await metric.look("list");
  await page.locator("[role=option]").first().click();
  await page.waitForFunction(() => location.hash.startsWith("#/desk/check/"));
  const opened = new URL(page.url()).hash;
  for (const kind of await page.locator(".desk-decide .segmented label").all()) {
    await kind.click();
    wrong.push(...(await metric.look("check")));
  }
  for (const address of [
    opened.replace("check", "report"),
    "#/desk/findings",
    "#/desk/parts",
    "#/desk/people",
  ]) {
    wrong.push(...(await metric.lookAt(address)));
  }
  expect(wrong).toEqual([]);
});
