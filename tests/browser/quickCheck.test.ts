import type { Page } from "playwright-core";
import { afterEach, beforeEach, expect, it } from "vitest";
import { assessFitment } from "../../src/physics/assess.ts";
import { fitmentOf } from "../../src/records/check/fitmentOf.ts";
import { readCheckValue } from "../../src/records/check/readCheck.ts";
import { withPlainSpaces } from "../../src/saying/quantityText.ts";
import { axeViolations } from "./support/axe.ts";
import type { Phone } from "./support/phone.ts";
import { phoneOnSite } from "./support/phoneOnSite.ts";
import type { Site } from "./support/site.ts";
import { storedChecks } from "./support/storage.ts";

const stage = phoneOnSite({ bypassCSP: true });
let site: Site;
let phone: Phone;
let page: Page;

beforeEach(async () => {
  ({ site, phone } = stage);
  page = await phone.newPage();
  await page.goto(site.address);
  await page.getByRole("link", { name: "Do I need a taller stop?" }).click();
  await page.getByRole("heading", { level: 1, name: "Do I need a taller stop?" }).waitFor();
});

afterEach(() => phone.expectNoTrouble());

interface Typed {
  readonly rideHeight?: string;
  readonly gap?: string;
  readonly stopHeight?: string;
  readonly tyre?: string;
}

async function answerFor(vehicle: string, typed: Typed, payload: RegExp): Promise<string> {
  await page.getByLabel("Which vehicle and axle?").selectOption(vehicle);
  const fill = async (label: string, text: string | undefined) => {
    if (text !== undefined) await page.getByLabel(label, { exact: true }).fill(text);
  };
  await fill("Ride height", typed.rideHeight);
  await fill("Gap between stop and pad", typed.gap);
  await fill("Height of the stop that is fitted", typed.stopHeight);
  await fill("Clearance over the tire", typed.tyre);
  await page.getByRole("radio", { name: payload }).check();
  await page.getByRole("button", { name: "Answer" }).click();
  await page.locator(".verdict h1").waitFor();
  return withPlainSpaces((await page.locator(".verdict").allInnerTexts()).join(" "));
}

it("yes: by how much with its range, why in four sentences at most, cautions, an ordinary check", async () => {
  const answer = await answerFor(
    "marlow-utility-front",
    { rideHeight: "575", gap: "44", stopHeight: "42", tyre: "150" },
    /Tools/,
  );
  expect(answer).toMatch(/^Yes, a taller stop/);
  const shown =
    /Height to add, with a stop of the same shape\s+([\d.]+) mm\s+95 %: ([\d.]+) mm to ([\d.]+) mm/.exec(
      answer,
    );
  const [height, least, greatest] = (shown ?? []).slice(1).map(Number);
  expect(least).toBeLessThan(height ?? 0);
  expect(greatest).toBeGreaterThan(height ?? Number.POSITIVE_INFINITY);
  expect(await page.locator(".verdict > p:not(.verdict-limits)").count()).toBeLessThanOrEqual(4);
  await page.getByText("Before you go under the vehicle").click();
  await page.getByText("A raised vehicle handles, brakes and rolls differently.").waitFor();
  await page.getByText("This is a screening check, not a certification.").waitFor();
  expect(await axeViolations(page)).toEqual([]);

  // The record is read as any other, and the physics gives from it what the screen shows.
  await expect
    .poll(async () =>
      (await storedChecks(page)).some(({ name }) => name === "Marlow 4-door utility"),
    )
    .toBe(true);
  const kept = (await storedChecks(page)).filter(
    ({ record }) => (record.author as { role?: string } | undefined)?.role === "customer",
  );
  const own = kept.find(({ record }) => JSON.stringify(record).includes('"typed":["575 mm"]'));
  const read = readCheckValue(own?.record);
  if (!read.ok) throw new Error("the record is not read");
  const assessed = assessFitment(fitmentOf(read.value));
  if (!assessed.ok) throw new Error("the record is not assessed");
  const [corner] = assessed.value.corners;
  // Told in whole mm.
  expect((corner?.tallerMm ?? 0).toFixed(0)).toBe(String(height));
  // 2 % of the interval's width, as for the vectors: both are Monte Carlo.
  const [low = 0, high = 0] = corner?.intervals.tallerMm ?? [];
  expect(Math.abs(low - (least ?? 0))).toBeLessThan(0.02 * (high - low) + 0.51);
  expect(Math.abs(high - (greatest ?? 0))).toBeLessThan(0.02 * (high - low) + 0.51);

  await page.getByRole("button", { name: "Send" }).click();
  await page.getByRole("dialog").waitFor();
  await page.keyboard.press("Escape");
  await page.getByRole("link", { name: "Carry on as a full check" }).click();
  await page.getByRole("heading", { level: 1 }).waitFor();
  expect(page.url()).toContain(`#/check/${own?.id}/`);
});

it("no, where there is height to spare; can't tell, where a reading leaves it open, and what would settle it", async () => {
  const usual = await answerFor(
    "marlow-utility-front",
    { rideHeight: "520", gap: "22", stopHeight: "60", tyre: "168" },
    /Empty/,
  );
  expect(usual).toMatch(/^No, not taller/);
  expect(usual).toMatch(/Height to spare/);
  await page.getByRole("link", { name: "Readings" }).click();
  // A clearance at which what is left comes out at about the 5 mm that are wanted.
  const open = await answerFor("marlow-utility-front", { tyre: "154" }, /Empty/);
  expect(open).toMatch(/^Can't tell yet/);
  await page.getByRole("heading", { name: "What would settle it" }).waitFor();
  expect(await axeViolations(page)).toEqual([]);
  await page.getByRole("button", { name: "To that reading" }).click();
  await page.getByRole("heading", { level: 1, name: "Do I need a taller stop?" }).waitFor();
});

it("what was typed survives a reload, in inches and fractions too, and one check is kept of it", async () => {
  await page.getByLabel("Which vehicle and axle?").selectOption("marlow-utility-front");
  const gap = page.getByRole("region", { name: /Gap between stop and pad/ });
  await gap.getByText("inches", { exact: true }).click();
  await page.getByLabel("Gap between stop and pad", { exact: true }).fill("1 3/4");
  await page.reload();
  const again = page.getByLabel("Gap between stop and pad", { exact: true });
  await again.waitFor();
  expect(await again.inputValue()).toBe("1 3/4");
  await page.getByRole("radio", { name: /Empty/ }).check();
  const before = (await storedChecks(page)).length;
  await page.getByRole("button", { name: "Answer" }).click();
  await page.locator(".verdict h1").waitFor();
  await expect.poll(async () => (await storedChecks(page)).length).toBe(before + 1);
  await page.getByRole("link", { name: "Readings" }).click();
  await page.getByLabel("Gap between stop and pad", { exact: true }).fill("2");
  await page.getByRole("button", { name: "Answer" }).click();
  await page.locator(".verdict h1").waitFor();
  await expect
    .poll(async () => JSON.stringify(await storedChecks(page)).includes('"typed":["2 in"]'))
    .toBe(true);
  expect(await storedChecks(page)).toHaveLength(before + 1);
  await page.reload();
  await page.locator(".verdict h1").waitFor();
  expect(await storedChecks(page)).toHaveLength(before + 1);
});
