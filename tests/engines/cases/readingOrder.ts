import { existsSync, readFileSync, renameSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import type { Page } from "playwright-core";
import { expect, inject, it } from "vitest";
import { AnswerPage } from "../../browser/support/answerPage.ts";
import { CheckList } from "../../browser/support/checkList.ts";
import { DeskPage } from "../../browser/support/deskPage.ts";
import { goToScreen } from "../../browser/support/everyScreen.ts";
import { demoRecord } from "../../browser/support/everyStep.ts";
import { Site } from "../../browser/support/site.ts";
import { type EngineWindow, openChromium } from "../support/engines.ts";
import { type Heard, heardInOrder } from "../support/heardInOrder.ts";
import type { Stage } from "../support/onEngine.ts";

const check = `#/check/${demoRecord("arm-fits").id}`;
const sentCheck = fileURLToPath(
  new URL("../../../demo-data/checks/arm-needs-taller.json", import.meta.url),
);

type HeardScreen = readonly [screen: string, heard: readonly Heard[]];
type Screens = ReadonlyMap<string, readonly Heard[]>;

/** The main screens, each heard once it stands still. */
async function mainScreens(
  window: EngineWindow,
  address: string,
  reference: Screens = new Map(),
): Promise<Screens> {
  const { page } = window;
  const screens = new Map<string, readonly Heard[]>();
  const hear = async (name: string) => {
    screens.set(name, await heardInOrder(window, reference.get(name)));
  };
  const list = await new CheckList(page).open(address);
  await list.check("Tern van, loaded").waitFor();
  await list.page.getByText("Ready offline").waitFor();
  // Else each takes the units of the language that it happens to have.
  await list.useInches();
  await list.check("Tern van, loaded").waitFor();
  // The verdicts come one after another, and are part of a row's name.
  await page.waitForFunction(
    () => !document.body.textContent?.includes("No answer yet"),
    undefined,
    { timeout: 120_000 },
  );
  await hear("list");
  for (const [name, step] of [
    ["a choice", "layout"],
    ["a length", "left.gap"],
  ] as const) {
    await goToScreen(page, address, `${check}/${step}`);
    await verdictBeside(page);
    await hear(name);
  }
  await goToScreen(page, address, `${check}/answer`);
  await new AnswerPage(page).complete();
  // The last to be drawn: an event in time, and the map.
  await page.locator(".mark-cap").first().waitFor();
  await page.getByRole("slider", { name: /extra height and stiffness/ }).waitFor();
  await hear("answer");
  await goToScreen(page, address, "#/looks");
  await hear("settings");
  const desk = await new DeskPage(page).open(address);
  await desk.takeFiles(sentCheck);
  await desk.closeImport();
  await desk.row("Does not fit").waitFor({ timeout: 60_000 });
  await hear("desk");
  return screens;
}

/** The line beside a step is there once it is computed. */
async function verdictBeside(page: Page): Promise<void> {
  await page.locator('.live-verdict[data-state="settled"]').first().waitFor();
}

/** Without spaces: WebKit leaves out those at which a line happens to be broken. */
const words = ({ role, name }: Heard) => `${role}: ${name.replace(/\s/g, "")}`;

/** The reference, kept for the engine that comes after. */
async function inChromium(dist: string): Promise<Screens> {
  const kept = join(inject("shared"), "reading-order.json");
  if (existsSync(kept)) return new Map(JSON.parse(readFileSync(kept, "utf8")) as HeardScreen[]);
  const site = new Site();
  await site.publish(dist);
  const window = await openChromium({ width: 360, height: 740 });
  try {
    const screens = await mainScreens(window, site.address);
    writeFileSync(`${kept}.part`, JSON.stringify([...screens]));
    renameSync(`${kept}.part`, kept);
    return screens;
  } finally {
    await window.close();
    await site.close();
  }
}

export function readingOrderCases(stage: Stage): void {
  it("a screen reader is told the same headings and controls, in the order in which they stand", async () => {
    const window = await stage.open({ demo: true });
    const reference = await inChromium(stage.dist);
    const screens = await mainScreens(window, stage.site.address, reference);
    const wrong: string[] = [];
    for (const [screen, heard] of screens) {
      expect(heard.length, screen).toBeGreaterThan(5);
      expect(heard.map(words), screen).toEqual(reference.get(screen)?.map(words));
      heard.forEach((each, at) => {
        const what = `${screen}, ${each.tag} “${each.name}”`;
        const silent = /^(|none|generic|presentation|ignored)$/i.test(each.role);
        if (each.focusable && (silent || each.name === "")) wrong.push(`${what}: has no name`);
        if (each.focusable && each.hidden) wrong.push(`${what}: has the focus, and is hidden`);
        const before = heard[at - 1];
        if (before?.part === each.part && each.bottom <= before.top) {
          wrong.push(`${what}: stands above what is read before it`);
        }
      });
      const levels = heard.filter(({ tag }) => /^h1\b/.test(tag)).length;
      if (levels !== 1) wrong.push(`${screen}: ${levels} main headings`);
    }
    expect(wrong).toEqual([]);
  });
}
