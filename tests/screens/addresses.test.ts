import { expect, it } from "vitest";
import { goTo, stepHref } from "../../src/screens/addresses.ts";

it("a check that goes on by itself takes nobody back who has just left it", () => {
  const within = stepHref("one");
  location.hash = stepHref("one", "gap");
  goTo(stepHref("one", "cautions"), { replace: true, within });
  expect(location.hash).toBe(stepHref("one", "cautions"));

  location.hash = "#/open";
  goTo(stepHref("one", "gap"), { replace: true, within });
  expect(location.hash).toBe("#/open");
});
