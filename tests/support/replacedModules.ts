import { readFileSync } from "node:fs";
import { afterAll, expect, vi } from "vitest";

/*
 * Test files share the modules of their process. One that puts another module in a module's place
 * (`vi.mock`) gets all of them anew, and leaves none of them to the next.
 */
const { testPath } = expect.getState();
if (testPath !== undefined && readFileSync(testPath, "utf8").includes("vi.mock(")) {
  vi.resetModules();
  afterAll(() => {
    vi.resetModules();
  });
}
