import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, inject, it } from "vitest";
import { inEveryAppearance } from "./support/appearances.ts";
import { axeViolations } from "./support/axe.ts";
import { demoRecord } from "./support/everyStep.ts";
import { launchShell, Phone } from "./support/phone.ts";
import { openListWith } from "./support/recordsOnPhone.ts";
import { Site } from "./support/site.ts";
import { TravelPart } from "./support/travelPart.ts";

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

/** The list, with this check on it. */
async function openList(page: Page, name: string): Promise<void> {
  await openListWith(page, site.address, [demoRecord(name)]);
}

async function openTravel(page: Page, name: string): Promise<TravelPart> {
  await page.goto(`${site.address}#/check/${demoRecord(name).id}/answer`);
  return await new TravelPart(page).ready();
}

it("the wheel is moved by thumb and keys, offline, and rests at the named places", async () => {
  const phone = await Phone.open(browser, { bypassCSP: true, offlineCopy: true });
  const page = await phone.newPage();
  await openList(page, "arm-fits");
  await page.getByText("Ready offline").waitFor();
  const travel = await openTravel(page, "arm-fits");
  await phone.goOffline();
  expect(await travel.readout("Gap")).toMatch(/^\d+ mm$/);
  expect(await travel.readout("Stop force")).toBe("0 N");
  await travel.slider.focus();
  await page.keyboard.press("PageUp");
  while (!(await travel.place()).startsWith("Stop touches")) await page.keyboard.press("PageUp");
  expect(await travel.readout("Gap")).toBe("0.0 mm");
  await travel.mark("Fully compressed").tap();
  const usable = demoRecord("arm-fits").stop.usableCompressionMm;
  expect(await travel.readout("Pressed by")).toBe(`${usable.toFixed(0)} mm`);
  expect(await travel.readout("Stop force")).not.toBe("0 N");
  await travel.mark("Shock closed").tap();
  expect(await travel.closedClashes()).toBeGreaterThan(0);
  await page.keyboard.press("Home");
  await travel.mark("Ride").tap();
  expect(await travel.closedClashes()).toBe(0);
  phone.expectNoTrouble();
  await phone.close();
});

it("an event is played; who wants less motion sees its hardest moment and moves through it", async () => {
  const phone = await Phone.open(browser, { bypassCSP: true });
  const page = await phone.newPage();
  await openList(page, "arm-fits");
  const travel = await openTravel(page, "arm-fits");
  await travel.play("landing");
  await travel.time.waitFor();
  const still = await travel.timeShown();
  expect(still).toBeGreaterThan(0);
  expect(await travel.readout("Stop force")).not.toBe("0 N");
  await page.waitForTimeout(300);
  expect(await travel.timeShown()).toBe(still);
  await page.emulateMedia({ reducedMotion: "no-preference" });
  await travel.play("landing");
  await expect.poll(() => travel.timeShown()).toBeGreaterThan(0.1);
  await travel.mark("Ride").tap();
  expect(await travel.readout("Wheel")).toBe("0.0 mm");
  phone.expectNoTrouble();
  await phone.close();
});

it("is told in words and in numbers, and has nothing against it in any theme", async () => {
  const phone = await Phone.open(browser, { bypassCSP: true });
  const page = await phone.newPage();
  await openList(page, "axle-tire-clearance");
  const travel = await openTravel(page, "axle-tire-clearance");
  await travel.mark("Stop touches").tap();
  await travel.openNumbers();
  const numbers = page.getByRole("table", { name: "The named places of the travel" });
  await expect.poll(() => numbers.getByRole("row").count()).toBe(6);
  const found: string[] = [];
  await inEveryAppearance(page, async ({ theme, text }) => {
    for (const violation of await axeViolations(page)) found.push(`${theme} ${text}: ${violation}`);
  });
  expect(found).toEqual([]);
  await phone.close();
});
