import { cpSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, inject, it } from "vitest";
import { version } from "../../package.json";
import { shareLink } from "../../src/sharing/shareLink.ts";
import { demoRecord } from "../support/demoRecords.ts";
import { laterRelease } from "./support/build.ts";
import { DeskPage } from "./support/deskPage.ts";
import { launchChromium, Phone } from "./support/phone.ts";
import { Site } from "./support/site.ts";

let browser: Browser;
let site: Site;
let phone: Phone;

beforeAll(async () => {
  browser = await launchChromium();
});

afterAll(async () => {
  await browser.close();
});

beforeEach(async () => {
  site = new Site("/workshop/stopfit/");
  await site.publish(inject("dist"));
  phone = await Phone.open(browser, { offlineCopy: true });
});

afterEach(async () => {
  await phone.close();
  await site.close();
});

async function openList(): Promise<Page> {
  const page = await phone.newPage();
  await page.goto(site.address);
  return page;
}

const ready = (page: Page, release: string) => page.getByText(`Ready offline · version ${release}`);

async function lookForUpdate(page: Page): Promise<void> {
  await page.evaluate(async () => {
    const registration = await navigator.serviceWorker.getRegistration();
    await registration?.update();
  });
}

async function kept(page: Page): Promise<{ caches: number; addresses: string[] }> {
  return page.evaluate(async () => {
    const names = await caches.keys();
    const all: string[] = [];
    for (const name of names) {
      const cache = await caches.open(name);
      all.push(...(await cache.keys()).map((request) => request.url));
    }
    return { caches: names.length, addresses: all };
  });
}

describe("on a phone's home screen", () => {
  it("can be installed: the browser finds nothing missing, icons included", async () => {
    const page = await openList();
    await ready(page, version).waitFor();
    const session = await phone.context.newCDPSession(page);
    const { data, errors } = await session.send("Page.getAppManifest");
    expect(errors).toEqual([]);
    const { icons, name } = JSON.parse(data ?? "") as {
      name: string;
      icons: { src: string; purpose: string; sizes: string }[];
    };
    expect(name).toBe("Stopfit");
    expect(icons.map(({ purpose }) => purpose)).toContain("maskable");
    for (const { src, sizes } of icons.filter(({ src }) => src.endsWith(".png"))) {
      const size = await page.evaluate(async (address) => {
        const picture = await createImageBitmap(await (await fetch(address)).blob());
        return `${picture.width}x${picture.height}`;
      }, src);
      expect(size).toBe(sizes);
    }
    const { installabilityErrors } = await session.send("Page.getInstallabilityErrors");
    // A test's browser context is a private window, and those install nothing.
    const missing = installabilityErrors.filter(({ errorId }) => errorId !== "in-incognito");
    expect(missing).toEqual([]);
  });

  it("links to the icons that a browser's tab and a home screen show", async () => {
    const page = await openList();
    const found = await page.evaluate(async () => {
      const links = [...document.querySelectorAll<HTMLLinkElement>("link[rel*=icon]")];
      const answers = await Promise.all(links.map((link) => fetch(link.href)));
      return answers.map((answer) => answer.headers.get("content-type"));
    });
    expect(found).toEqual(expect.arrayContaining(["image/svg+xml", "image/png"]));
  });
});

describe("kept for use without a signal", () => {
  it("holds every file of the release once it says so, and opens with the server gone", async () => {
    const page = await openList();
    await ready(page, version).waitFor();
    const { addresses } = await kept(page);
    const files = readdirSync(inject("dist"), { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile() && entry.name !== "serviceWorker.js")
      .map((entry) => join(entry.parentPath, entry.name).slice(inject("dist").length + 1));
    const isForDesks = (file: string) => file.includes("unpack");
    expect(files.filter(isForDesks).length).toBeGreaterThan(0);
    for (const file of files) {
      if (isForDesks(file)) expect(addresses).not.toContain(`${site.address}${file}`);
      else expect(addresses).toContain(`${site.address}${file}`);
    }

    await phone.goOffline();
    await site.close();
    await page.reload();
    await page.getByRole("heading", { level: 1 }).waitFor();
    await ready(page, version).waitFor();
    const another = await phone.newPage();
    await another.goto(site.address);
    await another.getByRole("heading", { level: 1 }).waitFor();
    phone.expectNoTrouble();
  });

  it("where a desk was opened, also what reads mails, in the next version as well", async () => {
    const desk = await new DeskPage(await phone.newPage()).open(site.address);
    const readers = async () =>
      (await kept(desk.page)).addresses.filter((each) => each.includes("unpack")).length;
    await expect.poll(readers, { timeout: 20_000 }).toBeGreaterThan(0);
    await desk.page.goto(site.address);
    await ready(desk.page, version).waitFor();
    await site.publish(inject("laterDist"));
    await lookForUpdate(desk.page);
    await desk.page.getByRole("button", { name: "Update now" }).click();
    await ready(desk.page, laterRelease).waitFor();
    await desk.page.reload();
    await ready(desk.page, laterRelease).waitFor();
    await expect.poll(async () => (await kept(desk.page)).caches, { timeout: 20_000 }).toBe(1);
    await phone.goOffline();
    await site.close();
    await desk.open(site.address);
    const link = shareLink(demoRecord("arm-fits"), site.address);
    const mail = `From: Kim <kim@hale.example>\r\nSubject: my check\r\n\r\n${link.ok ? link.value.address : ""}\r\n`;
    expect(
      await desk.takeFiles([
        { name: "check.eml", mimeType: "message/rfc822", buffer: Buffer.from(mail) },
      ]),
    ).toBe("Taken in: 1 check added.");
    phone.expectNoTrouble();
  });

  it("does not say ready when a file is not the one that the build made", async () => {
    const broken = mkdtempSync(join(tmpdir(), "stopfit-broken-"));
    try {
      cpSync(inject("dist"), broken, { recursive: true });
      writeFileSync(join(broken, "icon-512.png"), "Please sign in to this network");
      await site.publish(broken);
      const page = await openList();
      await page.getByText("Not ready offline").waitFor();
      expect(await ready(page, version).count()).toBe(0);
    } finally {
      rmSync(broken, { recursive: true, force: true });
    }
  });

  it("fetches again what the browser threw away, and without a signal says not ready", async () => {
    const page = await openList();
    await ready(page, version).waitFor();
    const drop = () =>
      page.evaluate(async () => {
        const [name] = await caches.keys();
        const cache = await caches.open(name ?? "");
        return cache.delete("icon-512.png");
      });
    const present = async () =>
      (await kept(page)).addresses.some((url) => url.endsWith("icon-512.png"));
    expect(await drop()).toBe(true);
    expect(await present()).toBe(false);
    await page.reload();
    await ready(page, version).waitFor();
    expect(await present()).toBe(true);

    expect(await drop()).toBe(true);
    await phone.goOffline();
    await site.close();
    await page.reload();
    await page.getByText("Not ready offline").waitFor();
    expect(await ready(page, version).count()).toBe(0);
  });

  it("says so where the browser takes no service worker", async () => {
    const bare = await Phone.open(browser);
    const page = await bare.newPage();
    await page.goto(site.address);
    await page.getByText("This browser can't save Stopfit for use without a signal.").waitFor();
    await expect(bare.goOffline()).rejects.toThrow(/without its offline copy/);
    bare.expectNoTrouble();
    await bare.close();
  });

  it("never asks anything of another address", async () => {
    const page = await openList();
    await ready(page, version).waitFor();
    expect(phone.requested.length).toBeGreaterThan(3);
    expect(phone.strangers(site.origin)).toEqual([]);
  });
});

describe("a new version", () => {
  it("is asked for, taken by a press, and the old one is cleared away", async () => {
    const page = await openList();
    await ready(page, version).waitFor();
    await page.reload();
    await ready(page, version).waitFor();
    await site.publish(inject("laterDist"));
    await lookForUpdate(page);
    await page.getByText("A new version is ready.").waitFor();
    await page.getByRole("button", { name: "Later" }).click();
    await ready(page, version).waitFor();
    await page.reload();
    await page.getByRole("button", { name: "Update now" }).click();
    await ready(page, laterRelease).waitFor();
    await expect.poll(async () => (await kept(page)).caches, { timeout: 20_000 }).toBe(1);
    phone.expectNoTrouble();
  });

  it("taken in one tab leaves the other as it is, with its own files at hand", async () => {
    const one = await openList();
    await ready(one, version).waitFor();
    const other = await openList();
    await ready(other, version).waitFor();
    await other.evaluate(() => {
      document.body.dataset.here = "yes";
    });
    await site.publish(inject("laterDist"));
    await lookForUpdate(one);
    await one.getByRole("button", { name: "Update now" }).click();
    await ready(one, laterRelease).waitFor();
    await other.getByText("Another tab took the new version").waitFor();
    expect(await other.evaluate(() => document.body.dataset.here)).toBe("yes");

    await site.close();
    const found = await other.evaluate(async () => {
      const scripts = [...document.querySelectorAll<HTMLScriptElement>("script[src]")];
      const answers = await Promise.all(scripts.map((script) => fetch(script.src)));
      return answers.map((answer) => answer.ok);
    });
    expect(found.length).toBeGreaterThan(0);
    expect(found.every(Boolean)).toBe(true);

    await site.publish(inject("laterDist"));
    await other.getByRole("button", { name: "Load it here" }).click();
    await ready(other, laterRelease).waitFor();
    phone.expectNoTrouble();
  });
});

describe("the page's policy", () => {
  it("stops scripts and requests that are not the app's own", async () => {
    const page = await openList();
    await ready(page, version).waitFor();
    const broken = await page.evaluate(async () => {
      const violations: string[] = [];
      document.addEventListener("securitypolicyviolation", (event) => {
        violations.push(event.effectiveDirective);
      });
      const script = document.createElement("script");
      script.textContent = "document.body.dataset.inline = 'ran'";
      document.body.append(script);
      await fetch("http://127.0.0.1:1/elsewhere").catch(() => undefined);
      await new Promise((done) => setTimeout(done, 50));
      return { violations, inline: document.body.dataset.inline };
    });
    expect(broken.inline).toBeUndefined();
    expect(broken.violations).toEqual(expect.arrayContaining(["script-src-elem", "connect-src"]));
  });
});

describe("a browser that can't run the app", () => {
  it("says which browsers do, instead of buttons that do nothing", async () => {
    await phone.context.addInitScript(() => Reflect.deleteProperty(Object, "hasOwn"));
    const page = await openList();
    await page.getByRole("heading", { name: "This browser is too old for Stopfit" }).waitFor();
    await page.getByText(/iOS 15.4, Chrome 108 or Firefox 121/).waitFor();
    expect(await page.getByRole("button").count()).toBe(0);
    phone.expectNoTrouble();
  });

  it("without JavaScript says what to turn on", async () => {
    const context = await browser.newContext({ javaScriptEnabled: false });
    const page = await context.newPage();
    await page.goto(site.address);
    await page.getByRole("heading", { name: "Stopfit needs JavaScript" }).waitFor();
    await context.close();
  });
});
