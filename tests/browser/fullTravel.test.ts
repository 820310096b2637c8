import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { afterEach, beforeEach, expect, it } from "vitest";
import type { CheckRecord } from "../../src/records/check/checkRecord.ts";
import { AnswerPage } from "./support/answerPage.ts";
import { axeViolations } from "./support/axe.ts";
import { downloadedRecord } from "./support/checkList.ts";
import { DeskPage } from "./support/deskPage.ts";
import { demoRecord } from "./support/everyStep.ts";
import { FullTravelPage } from "./support/fullTravelPage.ts";
import type { Phone } from "./support/phone.ts";
import { phoneOnSite } from "./support/phoneOnSite.ts";
import { openListWith } from "./support/recordsOnPhone.ts";
import type { Site } from "./support/site.ts";

// The vectors give the wheel travel to contact of this record as 57.9 mm (left).
const record = demoRecord("arm-fits");

const stage = phoneOnSite({ bypassCSP: true });
let site: Site;
let phone: Phone;
let page: Page;
let travel: FullTravelPage;

beforeEach(async () => {
  ({ site, phone } = stage);
  page = await phone.newPage();
  travel = new FullTravelPage(page);
  await openListWith(page, site.address, [record]);
});

afterEach(() => phone.expectNoTrouble());

it("nothing is written down before every caution is acknowledged; then contacts agree with what is computed", async () => {
  await page.goto(`${site.address}#/check/${record.id}/answer`);
  await new AnswerPage(page).complete();
  await page.getByRole("button", { name: "Full-travel check by hand" }).click();
  await travel.heading.waitFor();
  expect(await travel.sides.count()).toBe(0);
  expect(await axeViolations(page)).toEqual([]);
  await travel.acknowledge();
  await travel.writeDown("left", "Stop meets its pad", "58.5");
  await travel.writeDown("left", "Tire touches", "167");
  await travel.writeDown("right", "Shock at its end", "176");
  expect(await travel.verdictOf("left", "stop")).toContain("Agrees");
  expect(await travel.verdictOf("left", "tyre")).toContain("Agrees");
  expect(await axeViolations(page)).toEqual([]);
  await travel.kept.waitFor();

  await page.reload();
  await travel.heading.waitFor();
  expect(await travel.written("left", "stop")).toContain("58.5 mm");
  expect(await travel.verdictOf("left", "stop")).toContain("57.9 mm");
  await page.getByRole("link", { name: "To the answer" }).last().click();
  await page.getByText("3 contacts by hand: ").waitFor();
});

it("a difference beyond the doubt names what to take again, on the answer, in the sent file and at the desk", async () => {
  await page.goto(`${site.address}#/check/${record.id}/fullTravel`);
  await travel.acknowledge();
  await travel.writeDown("left", "Stop meets its pad", "80");
  expect(await travel.verdictOf("left", "stop")).toContain("Beyond the margin of error");
  await page.getByText("likeliest wrong").first().waitFor();
  await travel.writeDown("left", "Hose, wire or line", "40", "brake hose to frame");
  await page.getByText("before the stop meets its pad. Do not drive it like this.").waitFor();
  await page.getByRole("button", { name: "Count it in the answer" }).click();
  await page.getByRole("link", { name: "To the answer" }).last().click();
  const answer = new AnswerPage(page);
  await answer.complete();
  expect(await answer.verdict.textContent()).toContain("It doesn't fit");
  await page.getByText("do not rely on the answer").waitFor();
  const over = page.locator(".notice").filter({ hasText: "do not rely on the answer" });
  expect(((await over.textContent()) ?? "").match(/likeliest wrong/g)).toHaveLength(1);

  const saved = await downloadedRecord(await answer.saveFile());
  const sent = JSON.parse(readFileSync(saved.file, "utf8")) as CheckRecord & {
    fullTravel: { corners: { contacts: Record<string, { note?: string }> }[] };
  };
  expect(sent.fullTravel.corners[0]?.contacts.hose?.note).toBe("brake hose to frame");
  expect(sent.corners[0]?.limits.at(-1)).toMatchObject({ kind: "other", at: "wheel" });

  const desk = new DeskPage(page);
  await desk.open(site.address);
  await desk.takeFiles(saved.file);
  await desk.openCheck(record.vehicle.label);
  await page.locator("[data-full-travel=compared]").waitFor();
  expect(await page.locator("[data-full-travel]").textContent()).toContain(
    "1 beyond the margin of error",
  );
});

it("it is reached from the steps as well, and heights from hub to arch do as well as travel", async () => {
  await page.goto(`${site.address}#/check/${record.id}/vehicle`);
  await page.getByRole("button", { name: "All steps" }).click();
  await page
    .getByRole("dialog")
    .getByRole("button", { name: /^Full-travel check/ })
    .click();
  await travel.acknowledge();
  await travel.measureHeights();
  await travel.writeDown("left", "Height at ride", "520");
  await travel.writeDown("left", "Stop meets its pad", "462");
  expect(await travel.verdictOf("left", "stop")).toContain("58.0 mm");
  expect(await travel.verdictOf("left", "stop")).toContain("Agrees");
});
