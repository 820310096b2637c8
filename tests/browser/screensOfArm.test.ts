import type { Browser } from "playwright-core";
import { afterAll, afterEach, beforeAll, beforeEach, expect, inject, it } from "vitest";
import { openEverything } from "./support/controls.ts";
import { demoRecord, everyStep } from "./support/everyStep.ts";
import { launchChromium, Phone } from "./support/phone.ts";
import { ScreenLook } from "./support/screenLook.ts";
import { Site } from "./support/site.ts";

let browser: Browser;
let site: Site;
let phone: Phone;
let screens: ScreenLook;

beforeAll(async () => {
  browser = await launchChromium();
  site = new Site();
  await site.publish(inject("dist"));
});

afterAll(async () => {
  await browser.close();
  await site.close();
});

beforeEach(() => {
  screens = new ScreenLook();
});

afterEach(async () => {
  await phone.close();
});

it("every step of a check on an arm, and its answer, by day", async () => {
  phone = await Phone.open(browser, { bypassCSP: true });
  const page = await everyStep(phone, site.address, demoRecord("arm-needs-taller"), screens.look);
  await screens.look(page, "arm answer");
  await openEverything(page);
  await screens.look(page, "arm answer opened");
  expect(screens.seen.length).toBeGreaterThan(30);
  expect(screens.wrong).toEqual([]);
  phone.expectNoTrouble();
}, 300_000);
