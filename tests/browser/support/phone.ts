import { type Browser, type BrowserContext, chromium, type Page } from "playwright-core";
import { expect } from "vitest";
import { demoKey } from "../../../src/screens/home/demoDue.ts";
import { findChromium, findHeadlessShell } from "../../../src/tooling/chromium.mjs";

/** The browser that people use; `more` command-line switches. */
export async function launchChromium(
  more: readonly string[] = [],
  executablePath = findChromium(),
): Promise<Browser> {
  if (!executablePath) throw new Error("No Chromium found: install it or set CHROMIUM_PATH.");
  return chromium.launch({
    executablePath,
    headless: true,
    args: [
      "--no-sandbox",
      "--disable-gpu",
      "--disable-quic",
      "--no-first-run",
      "--disable-background-networking",
      "--disable-component-update",
      "--disable-sync",
      ...more,
    ],
  });
}

/** For tests that look at pages alone: its engine without a window, where that is here. */
export function launchShell(more: readonly string[] = []): Promise<Browser> {
  return launchChromium(more, findHeadlessShell() ?? findChromium());
}

export interface PhoneOptions {
  readonly width?: number;
  readonly height?: number;
  /** Lets a test put a script of its own into the page in spite of the page's policy. */
  readonly bypassCSP?: boolean;
  readonly colorScheme?: "light" | "dark";
  /** The app's service worker is taken, and fetches every file; without it nothing works without a signal. */
  readonly offlineCopy?: boolean;
  /** The demo checks come on the first visit; without it the phone has had them and deleted them. */
  readonly demo?: boolean;
}

/** As on a phone that had the demo checks: working out their verdicts takes seconds of every first visit. */
function keepDemoAway(key: string): void {
  try {
    localStorage.setItem(key, "loaded");
  } catch {
    // A page without storage of its own: the demo checks stay away from it anyway.
  }
}

/** An old phone with touch, and a record of everything that went wrong on it. */
export class Phone {
  readonly troubles: string[] = [];
  readonly requested: string[] = [];

  private constructor(
    readonly context: BrowserContext,
    private readonly offlineCopy: boolean,
  ) {
    context.on("request", (request) => this.requested.push(request.url()));
    context.on("page", (page) => this.listen(page));
  }

  static async open(browser: Browser, options: PhoneOptions = {}): Promise<Phone> {
    const { offlineCopy = false } = options;
    const context = await browser.newContext({
      viewport: { width: options.width ?? 360, height: options.height ?? 740 },
      deviceScaleFactor: 2,
      hasTouch: true,
      isMobile: true,
      locale: "en-GB",
      acceptDownloads: true,
      reducedMotion: "reduce",
      bypassCSP: options.bypassCSP ?? false,
      colorScheme: options.colorScheme ?? "light",
      serviceWorkers: offlineCopy ? "allow" : "block",
    });
    context.setDefaultTimeout(20_000);
    if (!options.demo) await context.addInitScript(keepDemoAway, demoKey);
    return new Phone(context, offlineCopy);
  }

  /** The phone of a window that is open already. */
  static of(context: BrowserContext): Phone {
    context.setDefaultTimeout(20_000);
    return new Phone(context, true);
  }

  private listen(page: Page): void {
    page.on("pageerror", (error) => this.troubles.push(`error: ${error.message}`));
    page.on("console", (message) => {
      if (message.type() === "error") this.troubles.push(`console: ${message.text()}`);
    });
  }

  async newPage(): Promise<Page> {
    return this.context.newPage();
  }

  private needOfflineCopy(): void {
    if (!this.offlineCopy) throw new Error("This phone was opened without its offline copy.");
  }

  /** No signal from now on. */
  async goOffline(): Promise<void> {
    this.needOfflineCopy();
    await this.context.setOffline(true);
  }

  /** As the browser does by itself once there is a connection: its service worker gets on with `tag`. */
  async letBrowserSync(address: string, tag: string): Promise<void> {
    this.needOfflineCopy();
    // A picture of the same site: nothing of the app runs in it.
    const page = await this.newPage();
    await page.goto(`${address}icon.svg`);
    const session = await this.context.newCDPSession(page);
    const found = new Promise<string>((done) => {
      session.on("ServiceWorker.workerRegistrationUpdated", ({ registrations }) => {
        const [first] = registrations;
        if (first) done(first.registrationId);
      });
    });
    await session.send("ServiceWorker.enable");
    const origin = new URL(address).origin;
    const registrationId = await found;
    await session.send("ServiceWorker.dispatchSyncEvent", {
      origin,
      registrationId,
      tag,
      lastChance: true,
    });
  }

  /** Addresses asked for that are not the site's own. */
  strangers(origin: string): string[] {
    return this.requested.filter(
      (url) => !url.startsWith(`${origin}/`) && !/^(data|blob):/.test(url),
    );
  }

  expectNoTrouble(): void {
    expect(this.troubles).toEqual([]);
  }

  async close(): Promise<void> {
    await this.context.close();
  }
}
