import { readFileSync } from "node:fs";
import { afterAll, expect, vi } from "vitest";

/*
 * Test files share the modules of their process. One that puts another module in a module's place
 * (`vi.mock`) gets all of them anew, and leaves none of them to the next; nor does one that ends with
 * something unsaved, which a store would go on holding.
 */
const { testPath } = expect.getState();
if (testPath !== undefined && readFileSync(testPath, "utf8").includes("vi.mock(")) {
  vi.resetModules();
  afterAll(() => {
    vi.resetModules();
  });
}

/** The page asks before it is closed: a store of this file holds what it could not write. */
function holdsUnsaved(): boolean {
  if (typeof window === "undefined") return false;
  const leaving = new Event("beforeunload", { cancelable: true });
  window.dispatchEvent(leaving);
  return leaving.defaultPrevented;
}

afterAll(() => {
  if (holdsUnsaved()) vi.resetModules();
});
