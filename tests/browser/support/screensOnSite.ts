import type { Browser } from "playwright-core";
import { afterAll, afterEach, beforeAll, beforeEach, inject } from "vitest";
import { launchShell, Phone, type PhoneOptions } from "./phone.ts";
import { ScreenLook } from "./screenLook.ts";
import { Site } from "./site.ts";

/** What a file works with that looks at screens; `screens` is anew before each of its tests. */
export interface ScreensOnSite {
  readonly address: string;
  readonly screens: ScreenLook;
  /** The test's one phone, in whose pages axe may run. */
  openPhone(options?: PhoneOptions): Promise<Phone>;
  /** A phone that all tests of the file go on with. */
  keepPhone(options?: PhoneOptions): Promise<Phone>;
}

/** One Chromium and one site a file, both open to every look; the phone is closed after each test. */
export function screensOnSite(): ScreensOnSite {
  let browser: Browser;
  let site: Site;
  let screens: ScreenLook;
  let phone: Phone | null = null;
  beforeAll(async () => {
    browser = await launchShell();
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
    await phone?.close();
    phone = null;
  });
  return {
    get address() {
      return site.address;
    },
    get screens() {
      return screens;
    },
    async openPhone(options = {}) {
      phone = await Phone.open(browser, { bypassCSP: true, ...options });
      return phone;
    },
    keepPhone: (options = {}) => Phone.open(browser, { bypassCSP: true, ...options }),
  };
}
