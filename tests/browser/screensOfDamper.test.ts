import type { Browser, Page } from "playwright-core";
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
      await screens.look(shown, name);
      const place = await stepInList(shown);
      if (place === "in sight") listed++;
      if (place === "out of sight") screens.wrong.push(`${name}: its place in the list`);
    },
  );
  expect(listed).toBeGreaterThan(20);
  await openEverything(page);
  await screens.look(page, "damper answer opened");
  expect(screens.seen.length).toBeGreaterThan(20);
  expect(screens.wrong).toEqual([]);
  phone.expectNoTrouble();
}, 300_000);
