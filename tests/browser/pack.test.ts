import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { afterEach, beforeEach, expect, it } from "vitest";
import type { Pack } from "../../src/records/pack/pack.ts";
import { readPackText } from "../../src/records/pack/readPack.ts";
import { demoRecord } from "../support/demoRecords.ts";
import { axeViolations } from "./support/axe.ts";
import { CheckList } from "./support/checkList.ts";
import type { Phone } from "./support/phone.ts";
import { phoneOnSite } from "./support/phoneOnSite.ts";
import { openListWith } from "./support/recordsOnPhone.ts";
import type { Site } from "./support/site.ts";

const stage = phoneOnSite({ bypassCSP: true });
let site: Site;
let phone: Phone;
let page: Page;

beforeEach(async () => {
  ({ site, phone } = stage);
  page = await phone.newPage();
  await page.goto(site.address);
  await new CheckList(page).heading.waitFor();
});

afterEach(() => phone.expectNoTrouble());

const shipped: Pack = JSON.parse(readFileSync("demo-data/pack.json", "utf8"));

async function openPackScreen(): Promise<void> {
  await page.getByRole("link", { name: "Parts library" }).click();
  await page.getByRole("heading", { level: 1, name: shipped.name }).waitFor();
  await page.getByRole("link", { name: /^Tall firm/ }).waitFor();
}

async function savedPack(): Promise<Pack> {
  await page.getByRole("link", { name: "Hand over" }).click();
  const download = page.waitForEvent("download");
  await page.getByRole("button", { name: "Save the file" }).click();
  const text = readFileSync(await (await download).path(), "utf8");
  await page.getByRole("link", { name: "To the parts library" }).click();
  await page.getByRole("link", { name: "Hand over" }).waitFor();
  const read = readPackText(text);
  if (!read.ok) throw new Error("the saved pack is not read");
  return read.value;
}

async function openFile(pack: Pack): Promise<void> {
  await page.getByLabel("Library to open").setInputFiles({
    name: "other.json",
    mimeType: "application/json",
    buffer: Buffer.from(JSON.stringify(pack)),
  });
}

it("a stop is edited, kept over a reload, and every change is undone in turn", async () => {
  await openPackScreen();
  expect(await savedPack()).toEqual(shipped);
  await page.getByRole("link", { name: /^Tall firm/ }).click();
  await page.getByLabel("Usable compression").fill("2 3/4 in");
  await page.getByLabel("Material").fill("cellular polyurethane");
  await page.reload();
  // What was typed is there again, though it is not in the pack yet.
  expect(await page.getByLabel("Usable compression").inputValue()).toBe("2 3/4 in");
  await page.getByRole("button", { name: "Save", exact: true }).click();
  await page.getByText("Changed: Tall firm.").waitFor();
  await page.reload();
  await page.getByRole("heading", { level: 1 }).waitFor();
  const changed = await savedPack();
  const stop = changed.stops.find(({ id }) => id === "tall-firm");
  expect(stop?.usableCompressionMm).toBeCloseTo(69.85, 9);
  expect(stop?.material).toBe("cellular polyurethane");

  await page.getByRole("button", { name: "More for Arm block", exact: true }).click();
  await page.getByRole("button", { name: "Delete" }).click();
  await page.getByText("Deleted: Arm block.").waitFor();
  await page.getByRole("button", { name: "More for Strut stop", exact: true }).click();
  await page.getByRole("button", { name: "Copy" }).click();
  await page.getByText("Added: Strut stop (copy).").waitFor();
  expect((await savedPack()).stops).toHaveLength(shipped.stops.length);
  await page.getByRole("button", { name: "Undo" }).click();
  await page.getByText("Deleted: Arm block.").waitFor();
  await page.getByRole("button", { name: "Undo" }).click();
  await expect.poll(() => page.getByRole("button", { name: "Undo" }).count()).toBe(0);
  expect(await savedPack()).toEqual(changed);
  expect(await axeViolations(page)).toEqual([]);
});

it("what can't be is refused in a sentence, and the pack stays as it was", async () => {
  await openPackScreen();
  await page.getByRole("link", { name: /^Tall firm/ }).click();
  await page.getByLabel("Usable compression").fill("140");
  await page.getByRole("button", { name: "Save", exact: true }).click();
  await page
    .getByText(/usable compression of the stop must be less than its free height/)
    .waitFor();
  await page.getByLabel("Usable compression").fill("a lot");
  await page.getByRole("button", { name: "Save", exact: true }).click();
  await page.getByText(/Usable compression: “a lot”/).waitFor();
  expect(await axeViolations(page)).toEqual([]);
  await page.getByRole("button", { name: "As it was" }).click();
  expect(await page.getByLabel("Usable compression").inputValue()).toBe("71.5");
  await page.getByRole("link", { name: "To the parts library" }).click();
  expect(await savedPack()).toEqual(shipped);
  await openFile({ ...shipped, stops: [{ ...shipped.stops[0], name: "" } as never] });
  await page.getByRole("dialog").getByText("This file can't be used").waitFor();
  await page.getByRole("button", { name: "Close" }).click();
});

it("an old block's curve by estimate is marked as one in the editor, the list and the saved file", async () => {
  await openPackScreen();
  await page.getByRole("link", { name: "Add a stop" }).click();
  await page.getByLabel("Name", { exact: true }).fill("Old block");
  await page.getByText("No test data? Estimate from hardness").click();
  await page.getByLabel("Hardness", { exact: true }).fill("60");
  await page.getByLabel("Diameter of the block").fill("60");
  await page.getByLabel("Height of the block").fill("50");
  await page.getByRole("button", { name: "Take it over" }).click();
  await page.getByRole("heading", { name: "Force curve, an estimate" }).waitFor();
  expect(await axeViolations(page)).toEqual([]);
  await page.getByRole("button", { name: "Save", exact: true }).click();
  await page.getByRole("link", { name: /Old block.*curve by estimate/ }).waitFor();
  const stop = (await savedPack()).stops.find(({ name }) => name === "Old block");
  expect(stop?.estimated?.forceShare).toBeGreaterThanOrEqual(0.25);
  expect(stop?.testedAtSpeed).toBe(false);
  expect(stop?.damping).toBeNull();
});

it("two packs merge with their differences shown, each by choice", async () => {
  const [first, second, third, ...rest] = shipped.stops;
  if (!first || !second || !third) throw new Error("the library has no stops");
  const other: Pack = {
    ...shipped,
    name: "Marsh Road pack",
    stops: [
      { ...first, usableCompressionMm: 32 },
      { ...second, material: "polyurethane" },
      third,
      ...rest,
      { ...second, id: "marsh-block", name: "Marsh block", partNumber: "MR-1" },
    ],
  };
  await openPackScreen();
  await openFile(other);
  await page.getByRole("button", { name: "Merge the two" }).click();
  await page.getByRole("heading", { level: 1, name: "Merge two libraries" }).waitFor();
  await page.getByText("33 mm").waitFor();
  await page.getByText("32 mm").waitFor();
  expect(await axeViolations(page)).toEqual([]);
  const card = page.getByRole("listitem").filter({ hasText: second.name }).first();
  await card.getByText("Other", { exact: true }).last().click();
  await page.getByRole("button", { name: "Merge", exact: true }).click();
  await page.getByText("Merged with Marsh Road pack.").waitFor();
  const merged = await savedPack();
  expect(merged.stops.find(({ id }) => id === first.id)).toEqual(first);
  expect(merged.stops.find(({ id }) => id === second.id)?.material).toBe("polyurethane");
  expect(merged.stops.some(({ id }) => id === "marsh-block")).toBe(true);
  expect(merged.name).toBe(shipped.name);
});

it("every stop of the pack is ranked for a check, and two are compared on the same charts", async () => {
  const raised = demoRecord("arm-needs-taller");
  const list = await openListWith(page, site.address, [raised]);
  await list.checkOf(raised).click();
  await page.getByRole("button", { name: "Which stop of the library fits?" }).click();
  await page.getByRole("heading", { level: 1, name: "Which stop fits?" }).waitFor();
  await page.getByText(/of \d+ stops worked out/).waitFor();
  await page.getByText(/stops worked out/).waitFor({ state: "detached", timeout: 100_000 });
  const heads = await page.getByRole("heading", { level: 2 }).allTextContents();
  const counts = heads.flatMap((text) => /\((\d+)\)/.exec(text)?.[1] ?? []).map(Number);
  // A stop that fits only with a spacer is there twice.
  expect(counts.reduce((sum, count) => sum + count, 0)).toBeGreaterThanOrEqual(21);
  expect(await axeViolations(page)).toEqual([]);
  await page.getByRole("button", { name: "Show them, and what fails" }).click();
  await page.getByRole("checkbox").nth(0).check();
  await page.getByRole("checkbox").nth(1).check();
  await page.getByRole("button", { name: "Compare 2 side by side" }).click();
  await page.getByText("Force of the stops over their compression").waitFor();
  expect(await page.locator(".series-line.series-1").count()).toBeGreaterThan(0);
  expect(await axeViolations(page)).toEqual([]);
});

it("an opened pack reaches the guided check from its first screen to its demands, an estimate marked", async () => {
  const [stop] = shipped.stops;
  const [platform] = shipped.platforms;
  if (!stop || !platform) throw new Error("the library is empty");
  const lane: Pack = {
    ...shipped,
    name: "Lane pack",
    stops: [
      ...shipped.stops,
      {
        ...stop,
        id: "old-block",
        name: "Old block",
        partNumber: "LP-1",
        damping: null,
        testedAtSpeed: false,
        estimated: { how: "from 60 Shore A", forceShare: 0.25 },
      },
    ],
    platforms: [...shipped.platforms, { ...platform, id: "lane-van", label: "Lane van" }],
    rules: { daily: { reserveMm: 7 } },
  };
  await openPackScreen();
  await openFile(lane);
  await page.getByRole("button", { name: "Use it instead" }).click();
  await page.getByText(/^Opened: Lane pack/).waitFor();
  await page.goto(site.address);
  await page.reload();
  await new CheckList(page).newCheck.click();
  await page.getByLabel("In the parts library").selectOption({ label: "Lane van, front axle" });
  const at = async (step: string) => {
    await page.goto(page.url().replace(/[^/]+$/, step));
    await page.getByRole("heading", { level: 1 }).waitFor();
  };
  await page.getByText("Daily driving").click();
  await at("stop");
  await page.getByText("In the parts library").click();
  await page.getByLabel("Search the stops").fill("old");
  await page.getByText("Old block (estimate)").click();
  await page.getByText(/curve by estimate, ±\s25\s%/).waitFor();
  expect(await axeViolations(page)).toEqual([]);
  await at("rules");
  await page.getByText(/the requirements in “Lane pack”/).waitFor();
  expect(await page.getByLabel(/^Reserve wanted/).getAttribute("placeholder")).toBe("7");
  expect(await axeViolations(page)).toEqual([]);
});

it("a pack changed in two tabs loses neither change", async () => {
  await openPackScreen();
  await page.getByRole("link", { name: /^Tall firm/ }).click();
  const other = await phone.newPage();
  await other.goto(`${site.address}#/pack/stop/arm-block`);
  await other.getByLabel("Material").fill("polyurethane");
  await other.getByRole("button", { name: "Save", exact: true }).click();
  await other.getByText("Changed: Arm block.").waitFor();
  await page.getByLabel("Part number").fill("HL-2000");
  await page.getByRole("button", { name: "Save", exact: true }).click();
  await page.getByText("Changed: Tall firm.").waitFor();
  const kept = await savedPack();
  expect(kept.stops.find(({ id }) => id === "arm-block")?.material).toBe("polyurethane");
  expect(kept.stops.find(({ id }) => id === "tall-firm")?.partNumber).toBe("HL-2000");
});
