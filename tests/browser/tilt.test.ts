import type { Page } from "playwright-core";
import { afterEach, beforeEach, expect, it } from "vitest";
import { axeViolations } from "./support/axe.ts";
import { CheckSteps } from "./support/checkSteps.ts";
import { textOf } from "./support/controls.ts";
import { demoRecord } from "./support/everyStep.ts";
import type { Phone } from "./support/phone.ts";
import { phoneOnSite } from "./support/phoneOnSite.ts";
import type { Site } from "./support/site.ts";
import { openStarted } from "./support/startedCheck.ts";
import { storedChecks } from "./support/storage.ts";
import { answerTiltQuestion, TiltPage } from "./support/tiltPage.ts";
import { inMillimetres } from "./support/typist.ts";

// The sensor's events are Chromium's own, overridden through its protocol. A long edge that falls by f
// toward the phone's top has beta = −f while gamma is near ±90° (W3C Device Orientation and Motion).

const stage = phoneOnSite({ bypassCSP: true, wholeBrowser: true });
let site: Site;
let phone: Phone;
let page: Page;
let steps: CheckSteps;
let tilt: TiltPage;

beforeEach(async () => {
  ({ site, phone } = stage);
  page = await phone.newPage();
  steps = new CheckSteps(page, inMillimetres);
  tilt = new TiltPage(page);
});

afterEach(async () => {
  await tilt.letGo();
  phone.expectNoTrouble();
});

/** A check of an arm, filled in up to a reading. */
async function startedAt(step: "armAngle" | "stopLean"): Promise<void> {
  await openStarted(page, site.address, demoRecord("arm-fits"), step);
}

interface KeptReading {
  readonly values: number[];
  readonly tol: number;
  readonly tool?: string;
}

async function keptReading(name: string): Promise<KeptReading | undefined> {
  await steps.kept.waitFor();
  const id = decodeURIComponent(new URL(page.url()).hash.split("/")[2] ?? "");
  const check = (await storedChecks(page)).find((each) => each.id === id);
  const layout = check?.record.layout as { readings: Record<string, KeptReading> } | undefined;
  return layout?.readings[name];
}

it("an arm angle is taken by the phone, zeroed by turning it around, and kept with its ±", async () => {
  await answerTiltQuestion(page, "granted");
  await startedAt("armAngle");
  await tilt.open();
  await tilt.hold({ beta: -8.3, gamma: 89 });
  await tilt.dialog.getByText("Still.").waitFor();
  expect(await tilt.degrees.textContent()).toMatch(/^8\.[1-5]°$/);
  expect(await axeViolations(page)).toEqual([]);

  expect(await tilt.take()).toMatch(/Taken: 8\.[1-5]° lower at the wheel, ± 1\.\d\d°/);
  await tilt.dialog.getByText("Not zeroed: ± 1°.").waitFor();

  // Noise of ± 0.2° and as few events as a busy machine tells of move a median by up to 0.2°.
  // The sensor shows 0.4° too much, on a surface that leans by 0.9°.
  await tilt.button("Zero the phone").click();
  await tilt.hold({ beta: -(0.9 + 0.4), gamma: 89 });
  await tilt.button("Zero by turning around").click();
  await tilt.dialog.getByText("First taken. Now turn it around").waitFor();
  await tilt.hold({ beta: 25, gamma: 60, noise: 4 });
  await page.waitForTimeout(400);
  await tilt.hold({ beta: -(-0.9 + 0.4), gamma: 89 });
  await tilt.dialog.getByText(/the sensor showed 0\.[2-6]° too much/).waitFor();
  await tilt.dialog.getByText(/The surface leans by (0\.[7-9]|1\.[01])°\./).waitFor();
  expect(await axeViolations(page)).toEqual([]);
  await tilt.button("Measure now").click();

  await tilt.hold({ beta: -8.7, gamma: 89 });
  await tilt.dialog.getByText(/^8\.[1-5]°$/).waitFor();
  expect(await tilt.take()).toMatch(/Taken: 8\.[1-5]° lower at the wheel, ± 1\.00°.*mean of 2/);
  await tilt.dialog.getByText(/^Zeroed by turning it around, \w+ \d+, \d{4}\.$/).waitFor();
  await tilt.button("Done").click();

  const reading = await keptReading("armAngle");
  expect(reading?.values).toHaveLength(2);
  for (const value of reading?.values ?? []) expect(Math.abs(value - 8.3)).toBeLessThan(0.25);
  // One ± for both repeats: the wider, that of the phone before it was zeroed.
  expect(reading?.tol).toBeGreaterThanOrEqual(1);
  expect(reading?.tool).toBe("phone");

  await page.reload();
  await tilt.open();
  await tilt.dialog.getByText("Zeroed by turning it around").waitFor();
});

it("on its other long edge the phone counts as not zeroed; on a level surface one reading zeroes it", async () => {
  await answerTiltQuestion(page, "granted");
  await startedAt("armAngle");
  await tilt.open();
  await tilt.hold({ beta: -0.6, gamma: 89 });
  await tilt.button("Zero the phone").click();
  await tilt.button("The surface is level: zero here").click();
  await tilt.dialog.getByText(/the sensor showed 0\.[4-8]° too much/).waitFor();
  await tilt.button("Measure now").click();
  await tilt.dialog.getByText(/^Zeroed on a level surface/).waitFor();
  await tilt.dialog.getByText(/^−?0\.[0-4]°$/).waitFor();
  await tilt.hold({ beta: 5, gamma: -89 });
  await tilt.dialog.getByText("Zeroed on its other long edge only").waitFor();
  expect(await tilt.take()).toMatch(/Taken: −[45]\.\d° higher at the wheel, ± 1\.\d\d°/);
  await tilt.button("Done").click();
  const values = (await keptReading("armAngle"))?.values ?? [];
  expect(Math.abs((values[0] ?? 0) + 5)).toBeLessThan(0.25);
});

it("a moving phone is refused and told so; one that lies wrong as well", async () => {
  await answerTiltQuestion(page, "granted");
  await startedAt("armAngle");
  await tilt.open();
  await tilt.hold({ beta: -8, gamma: 89, noise: 5 });
  await tilt.dialog.getByText("Moving: hold it still").waitFor();
  await tilt.button("Take it").click();
  await tilt.button("Hold still …").waitFor();
  await tilt.dialog.getByText("The phone went on moving. Nothing was taken").waitFor();
  await tilt.hold({ beta: -2, gamma: 3 });
  await tilt.dialog.getByText("The phone lies flat. Stand it on its long edge").waitFor();
  await tilt.button("Take it").click();
  await tilt.dialog.getByText(/The phone lies flat.*Nothing was taken\./).waitFor();
  await tilt.button("Type it instead").click();
  expect(await keptReading("armAngle")).toBeUndefined();
  await steps.reading().fill("7.5");
  await expect.poll(async () => (await keptReading("armAngle"))?.values).toEqual([7.5]);
});

it("a lean has its sign from where the pivot is", async () => {
  await answerTiltQuestion(page, "granted");
  await startedAt("stopLean");
  await tilt.open();
  expect(await textOf(tilt.dialog.getByRole("heading"))).toBe("Stop angle from vertical");
  await tilt.hold({ beta: 84, gamma: 89.9 });
  await tilt.dialog.getByText("Stand so that the pivot is to your left").waitFor();
  await tilt.dialog.getByText(/top (toward|away from) the pivot/).waitFor();
  // up = (−cos 84°·sin 89.9°, sin 84°, 0): −0.1045 along x, so the top leans to the right, away from it.
  expect(await tilt.take()).toMatch(/Taken: −[56]\.\d° top away from the pivot/);
  await tilt.button("Done").click();
  await expect
    .poll(async () => Math.round((await keptReading("stopLean"))?.values[0] ?? 0))
    .toBe(-6);
});

it("without a sensor, and where it is refused, the angle is typed", async () => {
  await answerTiltQuestion(page, "granted");
  await startedAt("armAngle");
  await tilt.open();
  await tilt.button("Allow the tilt sensor").click();
  await tilt.dialog.getByText("No tilt sensor answers").waitFor();
  await tilt.button("Type it instead").click();
  await steps.reading().fill("9");
  await expect.poll(async () => (await keptReading("armAngle"))?.values).toEqual([9]);

  await answerTiltQuestion(page, "denied");
  await page.reload();
  await tilt.open();
  await tilt.button("Allow the tilt sensor").click();
  await tilt.dialog.getByText("The browser blocks the tilt sensor for this page").waitFor();
  expect(await axeViolations(page)).toEqual([]);
  await tilt.button("Type it instead").click();
  expect(await steps.reading().inputValue()).toBe("9");
});
