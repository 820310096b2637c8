import { readdirSync, readFileSync } from "node:fs";
import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import { join } from "node:path";
import type { Browser, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, beforeEach, expect, inject, it } from "vitest";
import { withFieldsWrapped } from "../../src/tooling/classFields.ts";
import { launchShell, Phone } from "./support/phone.ts";
import { Site } from "./support/site.ts";

let browser: Browser;
let site: Site;
let stranger: Server;
let strangerAddress: string;
let asked: string[];

beforeAll(async () => {
  browser = await launchShell();
});

afterAll(async () => {
  await browser.close();
});

beforeEach(async () => {
  site = new Site();
  await site.publish(inject("dist"));
  asked = [];
  stranger = createServer((request, response) => {
    asked.push(request.url ?? "");
    response.setHeader("access-control-allow-origin", "*");
    response.end("1");
  });
  await new Promise<void>((done) => stranger.listen(0, "127.0.0.1", done));
  strangerAddress = `http://127.0.0.1:${(stranger.address() as AddressInfo).port}`;
});

afterEach(async () => {
  await site.close();
  await new Promise((done) => stranger.close(done));
});

/** Tries in the page what a script that got in would try; the directives that forbade it. */
async function tryEverything(page: Page): Promise<string[]> {
  return page.evaluate(async (address) => {
    const forbidden = new Set<string>();
    document.addEventListener("securitypolicyviolation", (event) =>
      forbidden.add(event.effectiveDirective),
    );
    await fetch(`${address}/fetched`).catch(() => null);
    navigator.sendBeacon(`${address}/beacon`, "checks");
    new Image().src = `${address}/picture`;
    const script = document.createElement("script");
    script.src = `${address}/script`;
    const inline = document.createElement("script");
    inline.textContent = "document.title = 'run';";
    const style = document.createElement("link");
    style.rel = "stylesheet";
    style.href = `${address}/style`;
    const frame = document.createElement("iframe");
    frame.src = `${address}/frame`;
    document.head.append(script, inline, style);
    document.body.append(frame);
    const form = document.createElement("form");
    form.method = "post";
    form.action = `${address}/form`;
    form.target = "_blank";
    document.body.append(form);
    form.submit();
    await new Promise((done) => setTimeout(done, 1000));
    return [...forbidden].sort();
  }, strangerAddress);
}

it("the page's policy forbids every way out and every script that is not the app's own", async () => {
  const phone = await Phone.open(browser, { offlineCopy: true });
  const page = await phone.newPage();
  await page.goto(`${site.address}#/desk`);
  await page.getByRole("button", { name: "Choose files" }).waitFor();
  const title = await page.title();
  expect(await tryEverything(page)).toEqual([
    "connect-src",
    "form-action",
    "frame-src",
    "img-src",
    "script-src-elem",
    "style-src-elem",
  ]);
  expect(await page.title()).toBe(title);
  expect(asked).toEqual([]);
  await phone.close();
});

it("without the policy the same tries get out, and the watch over requests sees them", async () => {
  const phone = await Phone.open(browser, { bypassCSP: true });
  const page = await phone.newPage();
  await page.goto(`${site.address}#/desk`);
  await page.getByRole("button", { name: "Choose files" }).waitFor();
  expect(phone.strangers(site.origin)).toEqual([]);
  expect(await tryEverything(page)).toEqual([]);
  expect(asked).toEqual(expect.arrayContaining(["/fetched", "/picture", "/script"]));
  const seen = phone.strangers(site.origin).map((url) => new URL(url).pathname);
  expect(seen).toEqual(expect.arrayContaining(["/fetched", "/picture", "/script"]));
  await phone.close();
});

it("has private fields as they are, each value safe in the oldest Safari that runs the app", () => {
  const folder = join(inject("dist"), "assets");
  const scripts = readdirSync(folder).filter((name) => name.endsWith(".js"));
  expect(scripts.length).toBeGreaterThan(5);
  let privateFields = 0;
  for (const name of scripts) {
    const code = readFileSync(join(folder, name), "utf8");
    expect(withFieldsWrapped(code) === code, name).toBe(true);
    privateFields += code.match(/this\.#/g)?.length ?? 0;
  }
  expect(privateFields).toBeGreaterThan(100);
});
