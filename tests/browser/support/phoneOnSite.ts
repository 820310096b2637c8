import type { Browser } from "playwright-core";
import { afterAll, afterEach, beforeAll, beforeEach, inject } from "vitest";
import { launchChromium, Phone, type PhoneOptions } from "./phone.ts";
import { Site } from "./site.ts";

/** What a test file works with; set before each of its tests. */
export interface PhoneOnSite {
  browser: Browser;
  site: Site;
  phone: Phone;
  /** Another phone in place of the test's, with these options beside those of the file. */
  changePhone(options: PhoneOptions): Promise<Phone>;
}

/** One Chromium a file; for each test the build under test on line and a phone with nothing on it. */
export function phoneOnSite(options: PhoneOptions = {}): PhoneOnSite {
  const stage = {
    async changePhone(others) {
      await stage.phone.close();
      stage.phone = await Phone.open(stage.browser, { ...options, ...others });
      return stage.phone;
    },
  } as PhoneOnSite;
  beforeAll(async () => {
    stage.browser = await launchChromium();
  });
  afterAll(async () => {
    await stage.browser.close();
  });
  beforeEach(async () => {
    stage.site = new Site();
    await stage.site.publish(inject("dist"));
    stage.phone = await Phone.open(stage.browser, options);
  });
  afterEach(async () => {
    await stage.phone.close();
    await stage.site.close();
  });
  return stage;
}
