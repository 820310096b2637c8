import type { Locator, Page } from "playwright-core";
import { beforeEach, describe, expect, inject, it } from "vitest";
import { version } from "../../package.json";
import type { CheckRecord } from "../../src/records/check/checkRecord.ts";
import { demoRecord } from "../support/demoRecords.ts";
import { laterRelease } from "./support/build.ts";
import { CheckList, downloadedRecord } from "./support/checkList.ts";
import { CheckSteps } from "./support/checkSteps.ts";
import type { Phone } from "./support/phone.ts";
import { phoneOnSite } from "./support/phoneOnSite.ts";
import type { Site } from "./support/site.ts";
import { openStarted } from "./support/startedCheck.ts";
import { refuseStorage, smallStorage, storedChecks } from "./support/storage.ts";
import { inMillimetres } from "./support/typist.ts";

const demo = demoRecord("arm-fits");
const record: CheckRecord = { ...demo, vehicle: { ...demo.vehicle, label: "Osprey on the ramp" } };

const stage = phoneOnSite();
let site: Site;
let phone: Phone;

beforeEach(() => {
  ({ site, phone } = stage);
});

/** A check of the record, filled in up to the left gap. */
async function halfFilled(): Promise<{ page: Page; steps: CheckSteps }> {
  const page = await phone.newPage();
  return { page, steps: await openStarted(page, site.address, record, "left.gap") };
}

/** A new check, filled in by hand as far as the screen of this step. */
async function filledByHand(step: string): Promise<{ page: Page; steps: CheckSteps }> {
  const page = await phone.newPage();
  const list = await new CheckList(page).open(site.address);
  await list.newCheck.click();
  const steps = new CheckSteps(page, inMillimetres);
  await steps.field("Vehicle").waitFor();
  await steps.fillUpTo(step, record, "pack");
  return { page, steps };
}

describe("a reload half-way", () => {
  it("comes back to the same step with the same reading, as it was typed", async () => {
    const { page, steps } = await halfFilled();
    await steps.reading().fill("21 1");
    await steps.kept.waitFor();
    await page.reload();
    await expect.poll(() => steps.step).toBe("left.gap");
    await steps.reading().waitFor();
    expect(await steps.reading().inputValue()).toBe("21 1");

    await page.goto(site.address);
    await new CheckList(page).check(record.vehicle.label).waitFor();
    const [own] = (await storedChecks(page)).filter(({ progress }) => progress.step === "left.gap");
    expect(own?.entries["left.gap"]?.texts).toEqual(["21 1"]);
    expect(own?.entries.pivotToStop?.texts).toEqual(["152", "153", "152"]);
    phone.expectNoTrouble();
  });

  it("loses nothing when the page goes at the very last keystroke", async () => {
    const { page, steps } = await halfFilled();
    await steps.reading().fill("23.5");
    await page.reload();
    await steps.reading().waitFor();
    await expect.poll(() => steps.reading().inputValue()).toBe("23.5");
  });

  it("keeps a keystroke within 300 ms although the page goes on", async () => {
    const { page, steps } = await halfFilled();
    await steps.reading().fill("24.5");
    await page.waitForTimeout(300);
    const all = await storedChecks(page);
    expect(all.some(({ entries }) => entries["left.gap"]?.texts[0] === "24.5")).toBe(true);
  });
});

describe("bad entries", () => {
  it("of each kind of field are told, kept as typed, and stop no one", async () => {
    const { page, steps } = await filledByHand("vehicle");
    await steps.field("Vehicle").fill("Test");
    await steps.choose("Yes, raised");
    await steps.field("Raised by").fill("two inches");
    expect(await steps.complaint(steps.field("Raised by"))).toContain("two inches");
    await steps.field("Raised by").fill("");
    await steps.choose("No");
    await steps.fillUpTo("pivotToStop", record, "hand");

    const tried: string[] = [];
    const reading = () => steps.reading();
    const bad: { readonly [step: string]: readonly [() => Locator, readonly string[]] } = {
      pivotToStop: [reading, ["15o", "-152", "0", "1e999", "NaN", "1.2.3", "5 63/0"]],
      armAngle: [reading, ["eight", "95", "1e999"]],
      "left.gap": [reading, ["21mmm", "--21", "∞", "a thumb"]],
      "left.limits.1": [() => steps.field("Closing per wheel travel"), ["half", "0", "-0.5"]],
      "stop.freeHeight": [() => steps.field(/^Usable compression/), ["most", "-33"]],
      "stop.curve": [() => steps.field("Row 2, force"), ["soft", "-1570", "1e999"]],
      "left.cornerMassKg": [reading, ["heavy", "-560", "0"]],
      "ride.wheelRateNPerMm": [() => steps.value("Rate at the wheel"), ["stiff", "-28", "0"]],
      "ride.damperBumpNsPerMm": [() => steps.value("In rebound"), ["much", "-3.6"]],
      rules: [() => steps.field("Highest upward acceleration"), ["a lot", "0", "-2"]],
    };
    await steps.fillUpTo("finish", record, "hand", async (step) => {
      const [field, texts] = bad[step] ?? [reading, []];
      for (const text of texts) {
        const before = await field().inputValue();
        await field().fill(text);
        await steps.button("Continue, fix later").waitFor();
        const said = await steps.complaint(field());
        expect(said.length).toBeGreaterThan(15);
        const ownWords = (await steps.main.textContent())?.replace(/“[^”]*”/g, "");
        expect(ownWords).not.toMatch(/NaN|Infinity|undefined/);
        expect(await field().inputValue()).toBe(text);
        await field().fill(before);
      }
      tried.push(...(texts.length > 0 ? [step] : []));
    });
    expect(tried).toHaveLength(Object.keys(bad).length);
    await steps.button("Show the answer").waitFor();
    phone.expectNoTrouble();
    expect(page.url()).toContain("finish");
  });

  it("left behind are named at the end, with the way there", async () => {
    const { steps } = await halfFilled();
    await steps.reading().fill("a thumb");
    await steps.leaveBy(steps.button("Continue, fix later"));
    await steps.fillUpTo("finish", record, "pack");
    expect(await steps.button("Not complete yet").isDisabled()).toBe(true);
    await steps.page.getByRole("link", { name: "Go there: Gap" }).click();
    await steps.reading().waitFor();
    expect(steps.step).toBe("left.gap");
    expect(await steps.reading().inputValue()).toBe("a thumb");
  });
});

describe("a new version while a check is being filled in", () => {
  beforeEach(async () => {
    phone = await stage.changePhone({ offlineCopy: true });
  });

  it("is not asked for before the list, and taking it loses nothing", async () => {
    const first = await phone.newPage();
    await (await new CheckList(first).open(site.address)).ready(version).waitFor();
    await first.close();
    const { page, steps } = await halfFilled();
    await steps.reading().fill("22.25");
    await site.publish(inject("laterDist"));
    await page.evaluate(async () => {
      const registration = await navigator.serviceWorker.getRegistration();
      await registration?.update();
    });
    await page.waitForFunction(async () =>
      Boolean((await navigator.serviceWorker.getRegistration())?.waiting),
    );
    await page.waitForTimeout(500);
    expect(await page.getByText("A new version is ready.").count()).toBe(0);
    expect(await steps.reading().inputValue()).toBe("22.25");
    await page.getByRole("link", { name: "All checks" }).click();
    await page.getByRole("button", { name: "Update now" }).click();
    const list = new CheckList(page);
    await list.ready(laterRelease).waitFor();
    await list.check(record.vehicle.label).click();
    await expect.poll(() => steps.step).toBe("left.gap");
    await steps.reading().waitFor();
    expect(await steps.reading().inputValue()).toBe("22.25");
    phone.expectNoTrouble();
  });

  it("is asked for on the answer", async () => {
    const page = await phone.newPage();
    await openStarted(page, site.address, record, "answer");
    await page.getByRole("heading", { name: "Force, impact and stiffness" }).waitFor();
    await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
    await site.publish(inject("laterDist"));
    await page.evaluate(async () => {
      const registration = await navigator.serviceWorker.getRegistration();
      await registration?.update();
    });
    await page.getByRole("button", { name: "Update now" }).click();
    await expect.poll(() => page.getByRole("button", { name: "Update now" }).count()).toBe(0);
    await page.getByRole("heading", { name: "Force, impact and stiffness" }).waitFor();
    await page.getByRole("link", { name: "All checks" }).click();
    await new CheckList(page).ready(laterRelease).waitFor();
  });

  it("taken in another tab leaves the one being filled in alone", async () => {
    const first = await phone.newPage();
    const list = await new CheckList(first).open(site.address);
    await list.ready(version).waitFor();
    const { page, steps } = await halfFilled();
    await steps.reading().fill("20.5");
    await site.publish(inject("laterDist"));
    await first.evaluate(async () => {
      const registration = await navigator.serviceWorker.getRegistration();
      await registration?.update();
    });
    await first.getByRole("button", { name: "Update now" }).click();
    await list.ready(laterRelease).waitFor();
    await steps.reading().press("End");
    await steps.reading().pressSequentially("5");
    expect(await steps.reading().inputValue()).toBe("20.55");
    await site.close();
    await steps.fillUpTo("answer", record, "pack");
    await page.getByRole("heading", { name: "Force, impact and stiffness" }).waitFor();
    await page.getByRole("link", { name: "All checks" }).click();
    await page.getByText("Another tab took the new version").waitFor();
    phone.expectNoTrouble();
  });
});

describe("storage", () => {
  it("refused: the screen says so, offers the file, and the check can be finished", async () => {
    await refuseStorage(phone.context);
    const { page, steps } = await filledByHand("left.gap");
    await page.getByText("Not saved", { exact: true }).waitFor();
    const notice = page.getByRole("status").filter({ has: steps.button("Save as a file") });
    expect(await notice.textContent()).toMatch(/store|save/i);
    await steps.reading().fill("21");
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      steps.button("Save as a file").click(),
    ]);
    const { record: saved } = await downloadedRecord(download);
    expect(saved.corners[0]?.gap?.values).toEqual([21]);
    await steps.fillUpTo("answer", record, "pack");
    await page.getByRole("heading", { name: "Force, impact and stiffness" }).waitFor();
    phone.expectNoTrouble();
  });

  it("full: the screen says so and offers the file, and keeps again once there is room", async () => {
    const page = await phone.newPage();
    const storage = await smallStorage(page, site.origin);
    const steps = await openStarted(page, site.address, record, "left.gap");
    await steps.reading().fill("21");
    await steps.kept.waitFor();
    const makeRoom = await storage.fill();
    await steps.reading().fill("22.75");
    await page.getByText("Not saved", { exact: true }).waitFor();
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      steps.button("Save as a file").click(),
    ]);
    const { record: saved } = await downloadedRecord(download);
    expect(saved.corners[0]?.gap?.values).toEqual([22.75]);
    await makeRoom();
    await steps.button("Try again").click();
    await steps.kept.waitFor();
    await page.reload();
    await steps.reading().waitFor();
    expect(await steps.reading().inputValue()).toBe("22.75");
  });
});

describe("two tabs", () => {
  it("with the same check open both keep what was typed in each", async () => {
    const { page, steps } = await halfFilled();
    const address = page.url();
    const otherPage = await phone.newPage();
    await otherPage.goto(address.replace("left.gap", "left.rideHeight"));
    const other = new CheckSteps(otherPage, inMillimetres);
    await other.reading().waitFor();
    await steps.reading().fill("21.75");
    await other.reading().fill("519");
    await steps.kept.waitFor();
    await other.kept.waitFor();
    await expect
      .poll(async () => {
        const [own] = (await storedChecks(page)).filter(({ id }) => address.includes(id));
        return [own?.entries["left.gap"]?.texts[0], own?.entries["left.rideHeight"]?.texts[0]];
      })
      .toEqual(["21.75", "519"]);
    phone.expectNoTrouble();
  });
});
