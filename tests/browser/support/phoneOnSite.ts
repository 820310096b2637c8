import type { Browser } from "playwright-core";
import { afterAll, afterEach, beforeAll, beforeEach, inject } from "vitest";
import { launchChromium, launchShell, Phone, type PhoneOptions } from "./phone.ts";
import { Site } from "./site.ts";

/** What a test file works with; set before each of its tests. */
export interface PhoneOnSite {
  browser: Browser;
  site: Site;
  phone: Phone;
  /** Another phone in place of the test's, with these options beside those of the file. */
  changePhone(options: PhoneOptions): Promise<Phone>;
}

interface FileOptions extends PhoneOptions {
  /** The browser that people use, not its engine alone: for what a phone senses, and for the whole way through. */
  readonly wholeBrowser?: boolean;
}

/** One Chromium a file; for each test the build under test on line and a phone with nothing on it. */
export function phoneOnSite({ wholeBrowser = false, ...options }: FileOptions = {}): PhoneOnSite {
  const stage = {
    async changePhone(others) {
      await stage.phone.close();
      stage.phone = await Phone.open(stage.browser, { ...options, ...others });
      return stage.phone;
    },
  } as PhoneOnSite;
  beforeAll(async () => {
    stage.browser = await (wholeBrowser ? launchChromium() : launchShell());
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
