import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, inject, it } from "vitest";
import { firstScreenFiles, gzippedBytes } from "./support/firstScreen.ts";
import { launchShell, Phone } from "./support/phone.ts";
import { Site } from "./support/site.ts";

let browser: Browser;

beforeAll(async () => {
  browser = await launchShell();
});

afterAll(async () => {
  await browser.close();
});

it("the first screen stands by its own scripts and styles, 38 kB gzipped at most", async () => {
  const files = firstScreenFiles(inject("dist"));
  expect(files.some((file) => file.endsWith(".js"))).toBe(true);
  expect(files.some((file) => file.endsWith(".css"))).toBe(true);
  expect(gzippedBytes(inject("dist"), files)).toBeLessThanOrEqual(38_000);

  const site = new Site();
  await site.publish(inject("dist"));
  const phone = await Phone.open(browser, { demo: true });
  try {
    await phone.context.route("**/assets/**", (route) =>
      files.some((file) => route.request().url().endsWith(`/${file}`))
        ? route.continue()
        : route.abort(),
    );
    const page = await phone.newPage();
    await page.goto(site.address);
    await page.getByRole("heading", { level: 1 }).waitFor();
    await page.getByText("New check", { exact: true }).waitFor();
  } finally {
    await phone.close();
    await site.close();
  }
});
