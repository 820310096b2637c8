import type { Page } from "playwright-core";
import { demoRecord } from "./everyStep.ts";

const check = (name: string, step?: string) =>
  `#/check/${demoRecord(name).id}${step === undefined ? "" : `/${step}`}`;

/** Addresses of the app's screens beside those of a new check's steps, with the demo checks there. */
export const everyScreen: readonly (readonly [name: string, address: string])[] = [
  ["list", "#/"],
  ["settings", "#/settings"],
  ["how it is computed", "#/how"],
  ["saved & backup", "#/saved"],
  ["taller stop, question", "#/taller"],
  ["parts library", "#/pack"],
  ["requirements of the library", "#/pack/rules"],
  ["two libraries merged", "#/pack/merge"],
  ["a stop of the library", "#/pack/stop/arm-block"],
  ["a vehicle of the library", "#/pack/platform/brant-pickup-front"],
  ["labels", "#/labels"],
  ["review desk", "#/desk"],
  ["desk scan", "#/desk/scan"],
  ["where a part went", "#/desk/parts"],
  ["two people at the review desk", "#/desk/people"],
  ["open a check", "#/open"],
  ["open a link cut short", "#/open/1bAAAA"],
  ["scan", "#/scan"],
  ["received", "#/received"],
  ["nowhere", "#/nowhere/at/all"],
  ["check not here", "#/check/none/left.gap"],
  ["reply not here", "#/reply/none"],
  ["cautions", check("arm-fits", "cautions")],
  ["how the vehicle stands", check("arm-fits", "standing")],
  ["a choice", check("arm-fits", "layout")],
  ["a length", check("arm-fits", "left.gap")],
  ["an angle", check("arm-fits", "armAngle")],
  ["limits", check("arm-fits", "left.limits")],
  ["the stop's curve", check("arm-fits", "stop.curve")],
  ["the stop's curve and damping", check("damper-shaft", "stop.curve")],
  ["ride data", check("arm-fits", "ride.wheelRateNPerMm")],
  ["rules", check("arm-fits", "rules")],
  ["finish", check("arm-fits", "finish")],
  ["an answer that fits", check("arm-fits", "answer")],
  ["an answer that does not", check("arm-needs-taller", "answer")],
  ["an answer with before and after", "#/check/6f6c1c9e-0000-4000-8000-000000000018/answer"],
  ["what was fitted", check("arm-fits", "fitted")],
  ["a second person", check("arm-fits", "second")],
  ["explained to a customer", check("arm-needs-taller", "explain")],
  ["stops for a vehicle", check("arm-needs-taller", "stops")],
];

/** Goes to a screen and waits until its heading stands there. */
export async function goToScreen(page: Page, site: string, address: string): Promise<void> {
  await page.goto(`${site}${address}`);
  await page.locator("h1").first().waitFor();
  await page.waitForFunction(() => document.querySelector('[aria-busy="true"]') === null);
}
