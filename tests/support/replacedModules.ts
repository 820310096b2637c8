import { readFileSync } from "node:fs";
import { afterAll, expect, vi } from "vitest";

/*
 * Test files share the modules of their process. One that puts another module in a module's place
 * (`vi.mock`), or looks whether the page may be closed, which whatever a store before could not write
 * forbids, gets all of them anew and leaves none of them to the next.
 */
const { testPath } = expect.getState();
const wantsOwn = /vi\.mock\(|beforeunload/;
if (testPath !== undefined && wantsOwn.test(readFileSync(testPath, "utf8"))) {
  vi.resetModules();
  afterAll(() => {
    vi.resetModules();
  });
}
