import type { Browser, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, beforeEach, expect, inject, it } from "vitest";
import type { CheckRecord } from "../../src/records/check/checkRecord.ts";
import { demoRecord } from "../support/demoRecords.ts";
import { AnswerPage } from "./support/answerPage.ts";
import { axeViolations } from "./support/axe.ts";
import { CheckList } from "./support/checkList.ts";
import { CheckSteps } from "./support/checkSteps.ts";
import { pick, textOf } from "./support/controls.ts";
import { DeskPage } from "./support/deskPage.ts";
import { launchShell, Phone } from "./support/phone.ts";
import { Site } from "./support/site.ts";
import { inMillimetres } from "./support/typist.ts";

const demo = demoRecord("arm-fits");

let browser: Browser;
let site: Site;
let phone: Phone;
let office: Phone;

beforeAll(async () => {
  browser = await launchShell();
});

afterAll(async () => {
  await browser.close();
});

beforeEach(async () => {
  site = new Site();
  await site.publish(inject("dist"));
  phone = await Phone.open(browser);
  office = await Phone.open(browser, { width: 1280, height: 800, bypassCSP: true });
});

afterEach(async () => {
  await phone.close();
  await office.close();
  await site.close();
});

/** The check at its answer, and the sheet for sending open. */
async function sendSheet(page: Page): Promise<void> {
  await page.getByRole("button", { name: "Send", exact: true }).click();
  await page.getByRole("heading", { name: "Send this check" }).waitFor();
}

async function closeSheet(page: Page): Promise<void> {
  await page.getByRole("button", { name: "Close", exact: true }).click();
}

async function fileOf(page: Page): Promise<string> {
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("button", { name: "Save the file" }).click(),
  ]);
  return download.path();
}

async function linkOf(page: Page): Promise<string> {
  await pick(page.getByRole("radio", { name: "Link" }));
  return page.getByLabel("Link to this check").inputValue();
}

async function codesOf(page: Page): Promise<Buffer[]> {
  await pick(page.getByRole("radio", { name: "Code" }));
  const pictures: Buffer[] = [];
  const picture = page.locator(".code-picture");
  await picture.waitFor();
  const words = page.locator(".code-number");
  const last = (await words.count()) > 0 ? ((await words.textContent()) ?? "") : "Code 1 of 1";
  const count = Number(last.split(" of ")[1]);
  for (let code = 0; code < count; code += 1) {
    pictures.push(await picture.screenshot());
    if (count > 1) await page.getByRole("button", { name: "Next", exact: true }).click();
  }
  return pictures;
}

it("the whole circle: a check typed on a phone, sent by each way, asked again, taken again, accepted", async () => {
  const page = await phone.newPage();
  const list = await new CheckList(page).open(site.address);
  await list.newCheck.click();
  const steps = new CheckSteps(page, inMillimetres);
  await steps.field("Vehicle").waitFor();
  await steps.fillUpTo("answer", demo, "pack");
  const answer = new AnswerPage(page);
  await answer.complete();
  const verdict = (await answer.verdict.textContent())?.trim();
  const answerAddress = page.url();
  await sendSheet(page);
  const file = await fileOf(page);
  const link = await linkOf(page);
  const codes = await codesOf(page);
  await closeSheet(page);

  const desk = await new DeskPage(await office.newPage()).open(site.address);
  expect(await desk.takeFiles(file)).toBe("Taken in: 1 check added.");
  expect(await desk.paste(`Hello, here is my check:\n${link}\nBest wishes`)).toBe(
    "Taken in: 0 checks added, 1 here already.",
  );
  await desk.closeImport();
  await desk.page.getByRole("link", { name: "Scan a code" }).click();
  await desk.page
    .getByLabel("Pictures of codes")
    .setInputFiles(
      codes.map((buffer, index) => ({ name: `code-${index}.png`, mimeType: "image/png", buffer })),
    );
  await desk.heading.waitFor();
  expect(await desk.ended()).toBe("Taken in: 0 checks added, 1 here already.");

  const label = demo.vehicle.label;
  await desk.openCheck(label);
  expect((await desk.page.locator(".verdict h1").textContent())?.trim()).toBe(verdict);
  await desk.choose("Ask again");
  await pick(desk.page.getByRole("checkbox", { name: "Left gap" }));
  await pick(desk.page.getByRole("checkbox", { name: "Right ride height" }));
  await desk.name("M. Lind");
  await desk.page.getByLabel("Note, also in the reply").fill("Wheels straight, please.");
  const letter = await desk.page.locator(".desk-reply-text").inputValue();
  expect(letter).toContain("1. Left gap. You read");
  expect(letter).toContain("Wheels straight, please.");
  expect(letter).toContain(" mm");
  expect(letter).not.toContain(" in.");
  await desk.page.getByRole("button", { name: "Ask again", exact: true }).last().click();
  await desk.decided("askAgain").waitFor();
  const reply = await desk.saved("Save the reply file");
  await desk.page.keyboard.press("Escape");
  await desk.heading.waitFor();
  await desk.row("Asked again").waitFor();

  await list.open(site.address);
  await page.getByLabel("Files to open").setInputFiles(reply);
  await page.getByRole("heading", { name: "A reply was sent to you" }).waitFor();
  await page.locator("[data-verdict]").waitFor();
  await page.getByRole("button", { name: "Save it with the check" }).click();
  await page.getByRole("heading", { name: `Reply about ${label}, front axle` }).waitFor();
  await page.getByText("Wheels straight, please.").waitFor();
  await page.getByRole("link", { name: "Re-measure: Left gap" }).click();
  expect(new CheckSteps(page, inMillimetres).step).toBe("left.gap");
  await page.getByText("Asked again: 0 of 2 taken").waitFor();
  const taken: CheckRecord = {
    ...demo,
    corners: demo.corners.map((corner) =>
      corner.side === "left" && corner.gap
        ? { ...corner, gap: { values: corner.gap.values.map((mm) => mm + 0.5), tol: 1 } }
        : corner,
    ),
  };
  await steps.fill(taken, "pack");
  await page.getByText("Asked again: 1 of 2 taken").waitFor();
  await page.getByRole("link", { name: "The reply" }).click();
  await page.getByRole("button", { name: "Re-measured, came out the same" }).click();
  await page.getByRole("link", { name: "To the answer, to send it again" }).click();
  await page.getByText("All re-measured. Now send the check again.").waitFor();
  expect(page.url()).toBe(answerAddress);
  await answer.complete();
  await sendSheet(page);
  const second = await linkOf(page);
  await closeSheet(page);
  await page.getByRole("button", { name: "It is sent" }).click();
  await page.getByText("All re-measured.").waitFor({ state: "detached" });

  expect(await desk.paste(second)).toBe("Taken in: 1 check added.");
  await desk.row("version 2").waitFor();
  await desk.row("New").waitFor();
  await desk.openCheck(label);
  await desk.page.getByRole("heading", { name: "Changed since the version before" }).waitFor();
  const changed = desk.page.getByRole("table", { name: "What differs" }).locator("tbody tr");
  expect(await changed.locator("th").allTextContents()).toEqual(["Left gap"]);
  await desk.choose("Accept");
  await desk.page.getByRole("button", { name: "Accept", exact: true }).last().click();
  await desk.decided("accept").waitFor();
  expect(await desk.page.locator(".desk-history strong").allTextContents()).toEqual([
    "Accepted, M. Lind, version 2",
    "Version 2 came in as a link",
    "Asked for readings again, M. Lind, version 1",
    "Version 1 came in as a file",
  ]);
  await office.context.grantPermissions(["clipboard-read", "clipboard-write"]);
  await desk.page.getByRole("button", { name: "Copy the text" }).click();
  await desk.page.getByText("The text is copied, with a link that opens it in Stopfit.").waitFor();
  const message = await desk.page.evaluate(() => navigator.clipboard.readText());
  await page.goto(/https?:\S+#\/open\/\S+/.exec(message)?.[0] ?? "");
  await page.getByText("accepted as you sent them").waitFor();
  await page.getByRole("button", { name: "Save it with the check" }).click();
  await page.getByRole("heading", { name: /^Reply about/ }).waitFor();
  expect(page.url()).not.toContain("#/open/");

  phone.expectNoTrouble();
  office.expectNoTrouble();
  expect(phone.strangers(site.origin)).toEqual([]);
  expect(office.strangers(site.origin)).toEqual([]);
});

it("the claimed verdict is ignored, the text is kept as it was sent, and a decision can be taken back", async () => {
  const desk = await new DeskPage(await office.newPage()).open(site.address);
  const claimed = { ...demo, verdict: "no", lastVerdict: "no", corners: demo.corners };
  const text = `  ${JSON.stringify(claimed, null, 3)}\n\n`;
  const buffer = Buffer.from(text);
  await desk.takeFiles([{ name: "claimed.json", mimeType: "application/json", buffer }]);
  await desk.row("Fits").waitFor({ timeout: 60_000 });
  const kept = await desk.page.evaluate(
    () =>
      new Promise<string>((done, failed) => {
        const opening = indexedDB.open("stopfit-desk");
        opening.onerror = () => failed(opening.error);
        opening.onsuccess = () => {
          const all = opening.result.transaction("texts").objectStore("texts").getAll();
          all.onsuccess = () => done(all.result[0].text);
        };
      }),
  );
  expect(kept).toBe(text);
  await desk.list.focus();
  await desk.page.keyboard.press("Enter");
  await desk.computed();
  expect(await axeViolations(desk.page)).toEqual([]);
  await desk.name("M. Lind");
  await desk.page.getByRole("button", { name: "Accept", exact: true }).last().click();
  await desk.decided("accept").waitFor();
  await desk.page.getByRole("button", { name: "Take the decision back" }).click();
  await desk.choose("Other part");
  await desk.page.getByLabel("Note, also in the reply").fill("The customer asked for this one.");
  await desk.partsTried();
  await desk.part(0).click();
  const letter = await desk.page.locator(".desk-reply-text").inputValue();
  expect(letter).toContain(`Instead of the stop “${demo.stop.name}” we advise`);
  expect(letter).toMatch(/Computed with it on your readings: (It|Not sure) /);
  await desk.page.getByRole("button", { name: "Advise this part" }).click();
  await desk.decided("otherPart").waitFor();
  await desk.page.getByRole("link", { name: "Report to print" }).click();
  await desk.page.getByRole("heading", { name: /^Formulas/ }).waitFor();
  expect(await axeViolations(desk.page)).toEqual([]);
  const figures = await textOf(desk.page.locator(".report-table").last());
  expect(figures).toMatch(/\d+\.\d+ mm/);
  expect(figures).not.toMatch(/NaN|Infinity|undefined/);
  office.expectNoTrouble();
});
