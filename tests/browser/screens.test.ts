import { mkdirSync } from "node:fs";
import type { Browser, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, beforeEach, expect, inject, it } from "vitest";
import { axeViolations } from "./support/axe.ts";
import { CheckList } from "./support/checkList.ts";
import { CheckSteps } from "./support/checkSteps.ts";
import { openEverything } from "./support/controls.ts";
import { demoRecord, everyStep } from "./support/everyStep.ts";
import { launchChromium, Phone } from "./support/phone.ts";
import { Site } from "./support/site.ts";
import { refuseStorage } from "./support/storage.ts";
import { inMillimetres } from "./support/typist.ts";

// axe-core's own rules, all of them, WCAG 2.2 A and AA among them. A pass of each screen also looks
// for what no screen may show, and for content wider than the phone.

const pictures = "tests/screenshots";

let browser: Browser;
let site: Site;
let phone: Phone;
let seen: string[];
let wrong: string[];

beforeAll(async () => {
  browser = await launchChromium();
  site = new Site();
  await site.publish(inject("dist"));
  mkdirSync(pictures, { recursive: true });
});

afterAll(async () => {
  await browser.close();
  await site.close();
});

beforeEach(() => {
  seen = [];
  wrong = [];
});

afterEach(async () => {
  await phone.close();
});

async function look(page: Page, screen: string): Promise<void> {
  seen.push(screen);
  await page.screenshot({ path: `${pictures}/${screen.replace(/[^\w.-]+/g, "-")}.png` });
  for (const violation of await axeViolations(page)) wrong.push(`${screen}: ${violation}`);
  const text = ((await page.locator("body").textContent()) ?? "").replace(/“[^”]*”/g, "");
  if (/NaN|Infinity|undefined|\[object/.test(text)) wrong.push(`${screen}: ${text.slice(0, 200)}`);
  const spare = await page.evaluate(
    () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
  );
  if (spare > 0) wrong.push(`${screen}: ${spare} px wider than the screen`);
}

it("a picture without words and a text too pale are found", async () => {
  phone = await Phone.open(browser, { bypassCSP: true });
  const page = await phone.newPage();
  await new CheckList(page).open(site.address);
  await page.evaluate(() => {
    const picture = document.createElement("img");
    picture.src = "icon-192.png";
    const pale = document.createElement("p");
    pale.textContent = "Pale words";
    pale.style.color = "#cccccc";
    document.querySelector("main")?.append(picture, pale);
  });
  const found = await axeViolations(page);
  expect(found.some((line) => line.startsWith("image-alt"))).toBe(true);
  expect(found.some((line) => line.startsWith("color-contrast"))).toBe(true);
});

it("the list, with its menus and dialogs", async () => {
  phone = await Phone.open(browser, { bypassCSP: true });
  const page = await phone.newPage();
  const list = await new CheckList(page).open(site.address);
  const name = "Tern compact hatch";
  await list.check(name).waitFor();
  await page.getByText("Ready offline").waitFor();
  await look(page, "list");
  await openEverything(page);
  await look(page, "list opened");
  await page.getByRole("button", { name: `More for ${name}` }).click();
  await look(page, "list menu");
  await page.getByRole("button", { name: "Rename" }).click();
  await page.getByRole("dialog").waitFor();
  await look(page, "list rename");
  await page.getByRole("textbox", { name: "Name" }).fill("Tern, blue");
  await page.getByRole("dialog").getByRole("button", { name: "Rename" }).click();
  await list.act("Tern, blue", "Copy");
  await list.check("Tern, blue (copy)").waitFor();
  await list.act("Tern, blue", "Delete");
  await page.getByRole("button", { name: "Undo" }).waitFor();
  await look(page, "list deleted");
  await page.getByRole("button", { name: "Undo" }).click();
  await expect.poll(() => list.check("Tern, blue").count()).toBe(2);
  await page.goto(`${site.address}#/nowhere/at/all`);
  await page.getByRole("heading", { name: "There is nothing at this address" }).waitFor();
  await look(page, "nowhere");
  await page.goto(`${site.address}#/check/none/left.gap`);
  await page.getByRole("heading", { name: "This check is not here" }).waitFor();
  await look(page, "check not here");
  expect(wrong).toEqual([]);
  phone.expectNoTrouble();
});

/** Where the list of steps beside a step has the one that is open. */
function stepInList(page: Page): Promise<"no list" | "in sight" | "out of sight"> {
  return page.evaluate(() => {
    const list = document.querySelector(".step-aside")?.getBoundingClientRect();
    const own = document
      .querySelector('.step-aside [aria-current="step"]')
      ?.getBoundingClientRect();
    if (!list || !own) return "no list";
    return own.top >= list.top - 1 && own.bottom <= list.bottom + 1 ? "in sight" : "out of sight";
  });
}

it("every step of a check on an arm, and its answer, by day", async () => {
  phone = await Phone.open(browser, { bypassCSP: true });
  const page = await everyStep(phone, site.address, demoRecord("arm-needs-taller"), look);
  await look(page, "arm answer");
  await openEverything(page);
  await look(page, "arm answer opened");
  expect(seen.length).toBeGreaterThan(30);
  expect(wrong).toEqual([]);
  phone.expectNoTrouble();
}, 300_000);

it("every step of a check on a damper's rod, and its answer, by night on a desk", async () => {
  phone = await Phone.open(browser, {
    bypassCSP: true,
    colorScheme: "dark",
    width: 1280,
    height: 800,
  });
  let listed = 0;
  const page = await everyStep(
    phone,
    site.address,
    demoRecord("damper-shaft"),
    async (shown, name) => {
      await look(shown, name);
      const place = await stepInList(shown);
      if (place === "in sight") listed++;
      if (place === "out of sight") wrong.push(`${name}: its place in the list`);
    },
  );
  expect(listed).toBeGreaterThan(20);
  await openEverything(page);
  await look(page, "damper answer opened");
  expect(seen.length).toBeGreaterThan(20);
  expect(wrong).toEqual([]);
  phone.expectNoTrouble();
}, 300_000);

it("what is said when something is wrong", async () => {
  phone = await Phone.open(browser, { bypassCSP: true, colorScheme: "dark" });
  await refuseStorage(phone.context);
  const page = await phone.newPage();
  const list = await new CheckList(page).open(site.address);
  await list.newCheck.click();
  const steps = new CheckSteps(page, inMillimetres);
  await steps.field("Vehicle").waitFor();
  const record = demoRecord("strut-too-stiff");
  await steps.fillUpTo("left.gap", record, "pack");
  await steps.reading().fill("a thumb");
  await steps.complaint(steps.reading());
  await look(page, "not kept and unreadable");
  await page.getByRole("button", { name: "All steps" }).click();
  await page.getByRole("dialog").waitFor();
  await look(page, "all steps");
  await page.getByRole("button", { name: "Back to this step" }).click();
  await steps.leaveBy(steps.button("Go on, put right later"));
  while (steps.step !== "finish") {
    await steps.leaveBy(page.getByRole("button", { name: /^(Skip|Skip for now|Next)$/ }));
  }
  await look(page, "not complete");
  expect(wrong).toEqual([]);
});
