import { afterEach, beforeEach, describe, inject } from "vitest";
import { Site } from "../../browser/support/site.ts";
import { type Engine, type EngineWindow, engines } from "./engines.ts";

/** What a test works with; set before each. */
export interface Stage {
  site: Site;
  readonly dist: string;
  /** A window with nothing stored. */
  open(): Promise<EngineWindow>;
}

/** The same tests in each engine that is installed; in one that is not they count as skipped. */
export function onEveryEngine(define: (stage: Stage, engine: Engine, skip: boolean) => void): void {
  describe.each(engines)("$name", (engine) => {
    const windows: EngineWindow[] = [];
    const stage: Stage = {
      site: new Site(),
      dist: inject("dist"),
      open: async () => {
        const window = await engine.open({ width: 360, height: 740 });
        windows.push(window);
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
    define(stage, engine, engine.missing.length > 0);
  });
}
