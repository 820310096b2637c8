import { mkdirSync } from "node:fs";
import type { Page } from "playwright-core";
import { expect, it } from "vitest";
import { CheckList } from "../../browser/support/checkList.ts";
import { everyScreen, goToScreen } from "../../browser/support/everyScreen.ts";
import { demoRecord } from "../../browser/support/everyStep.ts";
import type { Stage } from "../support/onEngine.ts";

const pictures = "tests/screenshots";
mkdirSync(pictures, { recursive: true });

const upright = { width: 360, height: 740 };
const onItsSide = { width: 740, height: 360 };
const names = (words: string) => words.replace(/[^\w.-]+/g, "-");

/** What no screen may show, and what is wider than the phone. */
async function faults(page: Page, screen: string): Promise<string[]> {
  const found = (await page.evaluate(() => {
    const { scrollWidth, clientWidth } = document.documentElement;
    return {
      text: document.querySelector("#app")?.textContent ?? "",
      spare: scrollWidth - clientWidth,
    };
  })) as { text: string; spare: number };
  return [
    ...(found.spare > 1 ? [`${screen}: ${found.spare} px wider than the screen`] : []),
    ...(/NaN|Infinity|undefined|\[object/.test(found.text) ? [`${screen}: ${found.text}`] : []),
  ];
}

export function everyScreenCases(stage: Stage): void {
  it("no screen is wider than the phone, upright, with letters twice as large, or on its side", async () => {
    const window = await stage.open({ demo: true });
    const { page } = window;
    const list = await new CheckList(page).open(stage.site.address);
    await list.check("Tern van, loaded").waitFor();
    const wrong: string[] = [];
    for (const [name, address] of everyScreen) {
      await window.resize(upright);
      await goToScreen(page, stage.site.address, address);
      await page.screenshot({
        caret: "initial",
        path: `${pictures}/${stage.engine.name}-${names(name)}.png`,
      });
      wrong.push(...(await faults(page, name)));
      await page.evaluate(() => document.documentElement.style.setProperty("font-size", "200%"));
      wrong.push(...(await faults(page, `${name}, letters twice as large`)));
      await page.evaluate(() => document.documentElement.style.removeProperty("font-size"));
      await window.resize(onItsSide);
      wrong.push(...(await faults(page, `${name}, on its side`)));
    }
    expect(wrong).toEqual([]);
    expect(await window.errors()).toEqual([]);
  });

  it("with the keys of a keyboard alone one goes through a step, always seeing where", async () => {
    const window = await stage.open({ demo: true });
    const { page } = window;
    const list = await new CheckList(page).open(stage.site.address);
    await list.check("Tern van, loaded").waitFor();
    await goToScreen(page, stage.site.address, `#/check/${demoRecord("arm-fits").id}/layout`);
    await page.evaluate(() => document.querySelector<HTMLElement>("h1")?.focus());
    const places: { place: number; ringed: boolean; inside: boolean; words: string }[] = [];
    for (let presses = 0; presses < 12; presses++) {
      await page.keyboard.press("Tab");
      places.push(
        (await page.evaluate(() => {
          const all = [...document.querySelectorAll("a, button, input, select, textarea, summary")];
          const at = document.activeElement as HTMLElement;
          const shown = at.closest("label") ?? at;
          const { top, bottom } = shown.getBoundingClientRect();
          const ring = [at, shown].map((each) => getComputedStyle(each));
          return {
            place: all.indexOf(at),
            // A window of a bare virtual screen never has the focus: no ring is drawn in it.
            ringed:
              !document.hasFocus() ||
              ring.some(
                ({ boxShadow, outlineStyle }) => boxShadow !== "none" && outlineStyle === "solid",
              ) ||
              (ring[0]?.outlineStyle === "solid" && ring[1]?.boxShadow !== "none"),
            inside: bottom > 0 && top < innerHeight,
            words: (shown.textContent || at.getAttribute("aria-label")) ?? "",
          };
        })) as (typeof places)[number],
      );
    }
    const reached = places.filter(({ place }) => place >= 0);
    expect(reached.length).toBeGreaterThan(3);
    expect(reached.filter(({ ringed }) => !ringed)).toEqual([]);
    expect(reached.filter(({ inside }) => !inside)).toEqual([]);
    // In the order of the page, until it begins again.
    const order = reached.map(({ place }) => place);
    const turns = order.filter((place, at) => place < (order[at - 1] ?? -1)).length;
    expect(turns).toBeLessThanOrEqual(1);
  });
}
