import type { Page } from "playwright-core";
import { afterAll, afterEach, beforeEach, describe, inject } from "vitest";
import { demoKey } from "../../../src/screens/home/demoDue.ts";
import { Site } from "../../browser/support/site.ts";
import type { Engine, EngineWindow } from "./engines.ts";

/** What a test works with; set before each. */
export interface Stage {
  readonly engine: Engine;
  site: Site;
  readonly dist: string;
  /** A window with nothing stored; `demo`: the demo checks come with the first look at the list. */
  open(options?: { readonly demo?: boolean }): Promise<EngineWindow>;
}

/** As if they had been there and deleted; told to a picture of the site, as nothing of the app runs in it. */
async function keepDemoAway(page: Page, address: string): Promise<void> {
  await page.goto(`${address}icon.svg`);
  await page.evaluate((key) => localStorage.setItem(key, "loaded"), demoKey);
}

/** The cases in one engine; where it is not installed they count as skipped. */
export function onEngine(engine: Engine, ...cases: readonly ((stage: Stage) => void)[]): void {
  describe.skipIf(engine.missing.length > 0)(engine.name, () => {
    const windows: EngineWindow[] = [];
    const stage: Stage = {
      engine,
      site: new Site(),
      dist: inject("dist"),
      open: async ({ demo = false } = {}) => {
        const window = await engine.open({ width: 360, height: 740 });
        windows.push(window);
        if (!demo) await keepDemoAway(window.page, stage.site.address);
        return window;
      },
    };
    beforeEach(async () => {
      stage.site = new Site();
      await stage.site.publish(stage.dist);
    });
    afterEach(async () => {
      await Promise.all(windows.splice(0).map((window) => window.close()));
      await stage.site.close();
    });
    afterAll(() => engine.quit());
    for (const define of cases) define(stage);
  });
}
