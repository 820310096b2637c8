import type { Locator, Page } from "playwright-core";
import { expect, it } from "vitest";
import { unitOf } from "../../src/records/review/submission.ts";
import { demoRecord } from "../support/demoRecords.ts";
import { axeViolations } from "./support/axe.ts";
import { pick } from "./support/controls.ts";
import { DeskPage } from "./support/deskPage.ts";
import { Phone } from "./support/phone.ts";
import { phoneOnSite } from "./support/phoneOnSite.ts";
import { openListWith } from "./support/recordsOnPhone.ts";

const stage = phoneOnSite({ bypassCSP: true });

/** Each row of the tested list as it reads, but for what can be done with it; then what mounts differently. */
async function listIn(place: Locator): Promise<readonly string[]> {
  const page = place.page();
  await place.getByText(/^These fit \(/).waitFor({ timeout: 60_000 });
  await page.getByText(/stops worked out/).waitFor({ state: "detached", timeout: 100_000 });
  const more = place.getByRole("button", { name: "Show them, and what fails" });
  if (await more.isVisible()) await more.click();
  return place.evaluate((element) =>
    [...element.querySelectorAll("li.ranked, [aria-labelledby=group-elsewhere] li")].map((row) => {
      const group = row.closest("section")?.querySelector("h2, h3")?.textContent;
      const said = row.cloneNode(true) as Element;
      for (const control of said.querySelectorAll("button, label")) control.remove();
      return `${group}: ${said.textContent?.trim()}`;
    }),
  );
}

const body = (page: Page) => page.locator("body");

it.each(["stop-on-the-arm-missing", "axle-towing-early"])(
  "%s: which stop fits, the answer's other stop and the desk's other part are the same list",
  async (name) => {
    const record = demoRecord(name);
    const page = await stage.phone.newPage();
    const list = await openListWith(page, stage.site.address, [record]);
    await page.getByRole("link", { name: "Settings" }).click();
    await pick(page.getByRole("radio", { name: unitOf(record) === "in" ? /^US/ : /^Metric/ }));
    await page.getByRole("button", { name: "Done" }).click();
    await list.checkOf(record).click();
    await page.getByRole("heading", { level: 2, name: "Details" }).waitFor();

    const unfold = page.getByText("Try the library's stops here, one by one");
    await unfold.click({ timeout: 60_000 });
    const inAnswer = await listIn(page.locator("section[aria-labelledby=compare-heading]"));
    expect(await axeViolations(page)).toEqual([]);
    const set = page.getByRole("button", { name: /^Set against the fitted one/ });
    await set.first().click();
    await page.getByText(/: the checks$/).waitFor();
    expect(await set.first().getAttribute("aria-pressed")).toBe("true");

    await page.getByRole("button", { name: "Which stop of the library fits?" }).click();
    await page.getByRole("heading", { level: 1, name: "Which stop fits?" }).waitFor();
    const inRanking = await listIn(body(page));

    const office = await Phone.open(stage.browser, { width: 1280, height: 800, bypassCSP: true });
    const desk = await new DeskPage(await office.newPage()).open(stage.site.address);
    const buffer = Buffer.from(JSON.stringify(record));
    await desk.takeFiles([{ name: "check.json", mimeType: "application/json", buffer }]);
    await desk.rows.first().click();
    await desk.computed();
    await desk.choose("Other part");
    const inDesk = await listIn(desk.page.locator(".desk-decide"));
    expect(await axeViolations(desk.page)).toEqual([]);

    expect(inAnswer.length).toBeGreaterThan(4);
    expect(inRanking).toEqual(inAnswer);
    expect(inDesk).toEqual(inAnswer);
    office.expectNoTrouble();
    await office.close();
    stage.phone.expectNoTrouble();
  },
);
