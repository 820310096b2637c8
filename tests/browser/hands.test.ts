import { mkdirSync } from "node:fs";
import type { Browser, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, describe, expect, inject, it } from "vitest";
import type { CheckRecord } from "../../src/records/check/checkRecord.ts";
import { demoRecord } from "../support/demoRecords.ts";
import { holdsMetadata, withPlace } from "../support/jpegs.ts";
import { inEveryAppearance, rulesOfAppearance } from "./support/appearances.ts";
import { axeViolations } from "./support/axe.ts";
import { CheckList } from "./support/checkList.ts";
import type { CheckSteps } from "./support/checkSteps.ts";
import { openEverything } from "./support/controls.ts";
import { everyStep } from "./support/everyStep.ts";
import { launchShell, Phone, type PhoneOptions } from "./support/phone.ts";
import { Site } from "./support/site.ts";
import { openStarted } from "./support/startedCheck.ts";
import { smallStorage, storedChecks } from "./support/storage.ts";

const demo = demoRecord("arm-fits");
const record: CheckRecord = { ...demo, vehicle: { ...demo.vehicle, label: "Tern in the sun" } };

let browser: Browser;
let site: Site;
let phone: Phone;

beforeAll(async () => {
  browser = await launchShell();
  site = new Site();
  await site.publish(inject("dist"));
});

afterAll(async () => {
  await browser.close();
  await site.close();
});

afterEach(() => phone.close());

/** A phone whose owner has chosen these settings before. */
async function phoneWith(
  preferences: { readonly [name: string]: unknown },
  options: PhoneOptions = {},
): Promise<void> {
  phone = await Phone.open(browser, options);
  await phone.context.addInitScript((kept) => {
    // Pages that are still empty have no storage.
    if (location.protocol !== "about:") localStorage.setItem("stopfit.preferences", kept);
  }, JSON.stringify(preferences));
}

async function at(
  step: "left.gap" | "left.rideHeight",
): Promise<{ page: Page; steps: CheckSteps }> {
  const page = await phone.newPage();
  return { page, steps: await openStarted(page, site.address, record, step) };
}

const keypad = (page: Page) => page.getByRole("group", { name: /^Keys for/ });
const key = (page: Page, name: string) => keypad(page).getByRole("button", { name, exact: true });

async function mine(page: Page) {
  const all = await storedChecks(page);
  const found = all.find(
    ({ record: { vehicle } }) => (vehicle as { label?: string })?.label === record.vehicle.label,
  );
  return found as (typeof all)[number] & { record: CheckRecord };
}

describe("the theme", () => {
  it.each([
    [{ theme: "dark" }, "light", "rgb(14, 20, 19)"],
    [{ theme: "sun" }, "dark", "rgb(255, 255, 255)"],
    [{ theme: "phone" }, "dark", "rgb(14, 20, 19)"],
    [{ theme: "light", text: "largest" }, "dark", "rgb(237, 241, 239)"],
  ] as const)(
    "%o stands before any script of the app, on a %s phone",
    async (kept, scheme, paper) => {
      await phoneWith(kept, { colorScheme: scheme });
      await phone.context.route("**/assets/*.js", (route) => route.abort());
      const page = await phone.newPage();
      await page.goto(site.address, { waitUntil: "domcontentloaded" });
      const look = () =>
        page.evaluate(() => ({
          paper: getComputedStyle(document.body).backgroundColor,
          size: getComputedStyle(document.documentElement).fontSize,
          words: document.getElementById("app")?.textContent?.trim(),
        }));
      expect(await look()).toEqual({ paper, size: "text" in kept ? "22px" : "16px", words: "" });
    },
  );

  it("is the only script in the page, and the policy lets no other run", async () => {
    phone = await Phone.open(browser);
    const page = await phone.newPage();
    await new CheckList(page).open(site.address);
    const ran = await page.evaluate(async () => {
      const script = document.createElement("script");
      script.textContent = "document.documentElement.dataset.ran = 'yes'";
      document.head.append(script);
      await new Promise((done) => setTimeout(done, 50));
      return document.documentElement.dataset.ran ?? "no";
    });
    expect(ran).toBe("no");
    expect(phone.troubles.every((trouble) => /Content Security Policy/.test(trouble))).toBe(true);
  });

  it("is chosen from a check, holds at once and leads back to the same reading", async () => {
    phone = await Phone.open(browser);
    const { page, steps } = await at("left.gap");
    await page.getByRole("button", { name: "All steps" }).click();
    await page.getByRole("link", { name: "Settings" }).click();
    await page.getByText("Sunlight", { exact: true }).click();
    await expect
      .poll(() => page.evaluate(() => document.documentElement.dataset.theme))
      .toBe("sun");
    await page.getByRole("button", { name: "Done" }).click();
    await expect.poll(() => steps.step).toBe("left.gap");
    await page.reload();
    await steps.reading().waitFor();
    expect(await page.evaluate(() => document.documentElement.dataset.theme)).toBe("sun");
    phone.expectNoTrouble();
  });
});

describe("the keys", () => {
  it.each(["usual", "large", "largest"])(
    "stand with drawing and number on a small screen, 48 px and more each, words %s",
    async (text) => {
      await phoneWith({ text, length: "in" });
      const { page, steps } = await at("left.gap");
      await steps.reading().tap();
      await keypad(page).waitFor();
      const places = await page.evaluate(() => {
        const place = (selector: string) =>
          [...document.querySelectorAll(selector)].map((element) => {
            const { top, bottom, left, right, width, height } = element.getBoundingClientRect();
            return { top, bottom, left, right, width, height };
          });
        return {
          head: place(".screen-top")[0]?.bottom ?? 0,
          drawing: place(".reading-show .drawing")[0],
          field: place(".field-box")[0],
          pad: place(".keypad")[0],
          keys: place(".pad-key"),
          bar: place(".action-bar")[0],
        };
      });
      const { head, drawing, field, pad, keys, bar } = places;
      if (!drawing || !field || !pad || !bar) throw new Error("something is not there");
      expect(keys).toHaveLength(24);
      for (const each of keys) {
        expect(Math.min(each.width, each.height)).toBeGreaterThanOrEqual(48);
        expect(each.left).toBeGreaterThanOrEqual(0);
        expect(each.right).toBeLessThanOrEqual(360);
      }
      expect(pad.bottom).toBeLessThanOrEqual(bar.top + 1);
      expect(bar.bottom).toBeLessThanOrEqual(740.5);
      expect(field.bottom).toBeLessThanOrEqual(pad.top);
      expect(field.top).toBeGreaterThanOrEqual(head);
      // The larger words leave less room: most of the drawing, at the usual size all of it.
      const seen = Math.min(drawing.bottom, pad.top) - Math.max(drawing.top, head);
      expect(seen / drawing.height).toBeGreaterThanOrEqual(text === "usual" ? 0.95 : 0.5);
    },
  );

  it("type a fraction with taps, kept as typed, and take what a keyboard types as well", async () => {
    await phoneWith({ length: "in" });
    const { page, steps } = await at("left.gap");
    await steps.reading().tap();
    for (const name of ["2", "1/4", "Add 1/16"]) await key(page, name).tap();
    expect(await steps.reading().inputValue()).toBe("2 5/16");
    await page.getByText("= 58.7 mm").waitFor();
    await expect
      .poll(async () => (await mine(page)).record.corners[0]?.gap?.typed)
      .toEqual(["2 5/16 in"]);
    await key(page, "Clear").tap();
    await page.keyboard.type("1 3/8");
    expect(await steps.reading().inputValue()).toBe("1 3/8");
    await page.reload();
    await steps.reading().waitFor();
    expect(await steps.reading().inputValue()).toBe("1 3/8");
    phone.expectNoTrouble();
  });

  it("stand beside the number on a phone on its side, and both are in view", async () => {
    await phoneWith({ length: "in", keys: "own" }, { width: 740, height: 360 });
    const { page, steps } = await at("left.rideHeight");
    await steps.reading().tap();
    await keypad(page).waitFor();
    const [keys, number] = await Promise.all([
      keypad(page).boundingBox(),
      steps.reading().boundingBox(),
    ]);
    for (const box of [keys, number]) {
      expect(Math.min(box?.x ?? -1, box?.y ?? -1)).toBeGreaterThanOrEqual(0);
      expect((box?.x ?? 0) + (box?.width ?? 0)).toBeLessThanOrEqual(740);
      expect((box?.y ?? 0) + (box?.height ?? 0)).toBeLessThanOrEqual(360);
    }
    expect((number?.x ?? 0) + (number?.width ?? 0)).toBeLessThanOrEqual(keys?.x ?? 0);
    for (const each of await keypad(page).getByRole("button").all()) {
      const box = await each.boundingBox();
      expect(Math.min(box?.width ?? 0, box?.height ?? 0)).toBeGreaterThanOrEqual(48);
    }
    mkdirSync("tests/screenshots", { recursive: true });
    await page.screenshot({ path: "tests/screenshots/keys-on-its-side.png" });
    phone.expectNoTrouble();
  });

  it("can be reached and pressed from a keyboard alone", async () => {
    phone = await Phone.open(browser);
    const { page, steps } = await at("left.gap");
    await steps.reading().focus();
    await page.keyboard.press("Tab");
    await page.keyboard.press("Enter");
    expect(await steps.reading().inputValue()).toBe("7");
    await page.keyboard.press("Tab");
    await page.keyboard.press("Space");
    expect(await steps.reading().inputValue()).toBe("78");
    await page.keyboard.press("Shift+Tab");
    await page.keyboard.press("Shift+Tab");
    await page.keyboard.press("Escape");
    await expect.poll(() => keypad(page).count()).toBe(0);
  });

  it("let a tap on what lies under them land where it was aimed once they are gone", async () => {
    phone = await Phone.open(browser);
    const { page, steps } = await at("left.gap");
    await steps.reading().fill("21");
    await keypad(page).waitFor();
    await steps.button("Add a repeat").tap();
    await expect.poll(() => page.locator(".reading-row").count()).toBe(2);
  });
});

/** A photo as a phone takes it upright: lying pixels, red above in what it shows, and a place. */
async function photoOf(page: Page): Promise<Buffer> {
  const base64 = await page.evaluate(async () => {
    const canvas = document.createElement("canvas");
    canvas.width = 2000;
    canvas.height = 1500;
    const context = canvas.getContext("2d");
    if (!context) throw new Error("no canvas");
    context.fillStyle = "#2040ff";
    context.fillRect(0, 0, 2000, 1500);
    // Orientation 6: what lies at the left of the pixels stands at the top.
    context.fillStyle = "#ff2020";
    context.fillRect(0, 0, 500, 1500);
    return canvas.toDataURL("image/jpeg", 0.9).split(",")[1] ?? "";
  });
  return Buffer.from(withPlace(new Uint8Array(Buffer.from(base64, "base64")), 6));
}

describe("a photo of a reading", () => {
  const picker = /^Photo of the left gap$/;

  it("is made small and upright, says nothing of the place, survives a reload and can go again", async () => {
    phone = await Phone.open(browser, { offlineCopy: true });
    const { page, steps } = await at("left.gap");
    await steps.reading().fill("21");
    const buffer = await photoOf(page);
    expect(holdsMetadata(new Uint8Array(buffer))).toBe(true);
    expect(buffer.toString("latin1")).toContain("Exif");
    await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
    await phone.goOffline();
    await page.getByLabel(picker).first().setInputFiles({
      name: "gap.jpg",
      mimeType: "image/jpeg",
      buffer,
    });
    const shown = page.getByRole("img", { name: picker });
    await shown.waitFor();
    await steps.kept.waitFor();
    await phone.context.setOffline(false);
    const [photo] = (await mine(page)).record.photos ?? [];
    if (!photo) throw new Error("no photo is kept");
    expect(photo.type).toBe("image/jpeg");
    expect(photo.reading).toBe("left.gap");
    expect(photo.data.length).toBeLessThanOrEqual(300_000);
    const bytes = Buffer.from(photo.data, "base64");
    expect(holdsMetadata(new Uint8Array(bytes))).toBe(false);
    expect(bytes.toString("latin1")).not.toMatch(/Exif|GPS|Halden Lane/);
    await page.reload();
    await shown.waitFor();
    const look = await shown.evaluate(async (element) => {
      const image = element as HTMLImageElement;
      await image.decode();
      const canvas = document.createElement("canvas");
      canvas.width = image.naturalWidth;
      canvas.height = image.naturalHeight;
      const context = canvas.getContext("2d");
      context?.drawImage(image, 0, 0);
      const at = (x: number, y: number) => [...(context?.getImageData(x, y, 1, 1).data ?? [])];
      return {
        width: image.naturalWidth,
        height: image.naturalHeight,
        above: at(canvas.width / 2, 40),
        below: at(canvas.width / 2, canvas.height - 40),
      };
    });
    expect([look.width, look.height]).toEqual([960, 1280]);
    expect(look.above[0]).toBeGreaterThan(200);
    expect(look.below[2]).toBeGreaterThan(200);
    await page.getByRole("button", { name: "Remove: photo of the left gap" }).click();
    await expect.poll(async () => (await mine(page)).record.photos).toBeUndefined();
    await page.getByRole("button", { name: "Undo" }).click();
    await expect.poll(async () => (await mine(page)).record.photos?.length).toBe(1);
    phone.expectNoTrouble();
  });

  it("that is no picture is refused with a sentence", async () => {
    phone = await Phone.open(browser);
    const { page } = await at("left.gap");
    await page
      .getByLabel(picker)
      .first()
      .setInputFiles({
        name: "notes.jpg",
        mimeType: "image/jpeg",
        buffer: Buffer.from("not a picture"),
      });
    await page.getByText(/This picture can't be opened here/).waitFor();
    expect((await mine(page)).record.photos).toBeUndefined();
  });

  it("that the phone has no room for is not lost unsaid", async () => {
    phone = await Phone.open(browser);
    const page = await phone.newPage();
    const storage = await smallStorage(page, site.origin);
    const steps = await openStarted(page, site.address, record, "left.gap");
    await steps.kept.waitFor();
    const buffer = await photoOf(page);
    const free = await storage.fill();
    await page.getByLabel(picker).first().setInputFiles({
      name: "gap.jpg",
      mimeType: "image/jpeg",
      buffer,
    });
    await page.getByText("Not saved", { exact: true }).waitFor();
    await page.getByRole("button", { name: "Save as a file" }).waitFor();
    await free();
    await page.getByRole("button", { name: "Try again" }).click();
    await expect.poll(async () => (await mine(page)).record.photos?.length).toBe(1);
  });
});

describe("every step in large words", () => {
  it("by sun and by night: nothing wider than the phone, nothing that axe finds", async () => {
    await phoneWith({ theme: "sun", text: "largest", length: "in" }, { bypassCSP: true });
    const wrong: string[] = [];
    const looked: string[] = [];
    const look = (page: Page, screen: string) =>
      inEveryAppearance(
        page,
        async ({ theme, text }) => {
          const place = `${screen}, ${theme}, ${text}`;
          looked.push(place);
          for (const violation of await axeViolations(page, rulesOfAppearance))
            wrong.push(`${place}: ${violation}`);
          const spare = await page.evaluate(
            () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
          );
          if (spare > 0) wrong.push(`${place}: ${spare} px wider than the screen`);
        },
        [
          { theme: "sun", text: "largest" },
          { theme: "dark", text: "large" },
        ],
      );
    const page = await everyStep(phone, site.address, record, look);
    await look(page, "answer");
    await page.goto(`${site.address}#/looks`);
    await page.getByRole("heading", { level: 1, name: "Settings" }).waitFor();
    await look(page, "looks");
    await page.goto(site.address);
    await page.getByRole("button", { name: "New check" }).waitFor();
    await openEverything(page);
    await look(page, "list");
    expect(looked.length).toBeGreaterThan(60);
    expect(wrong).toEqual([]);
  }, 300_000);
});
