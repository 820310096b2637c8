import { expect, it } from "vitest";
import { afterHit } from "../../../src/screens/answer/afterHit/afterHit.ts";
import { assessed, demoFitment } from "./demoChecks.ts";

it("a stop tested at speed keeps energy and lifts the body less than the same one undamped", () => {
  const [corner] = assessed(demoFitment("damper-shaft")).corners;
  if (corner === undefined) throw new Error("no corner");
  const after = afterHit(corner, "mm");
  const [leaves, , rise, kept] = after?.rows ?? [];
  expect(leaves?.own).toBeLessThan(leaves?.undamped ?? 0);
  expect(rise?.own).toBeLessThanOrEqual(rise?.undamped ?? 0);
  expect(kept?.own).toBeGreaterThan(kept?.undamped ?? 1);
  // Undamped, what goes in comes out again: it keeps nothing but what the end of the run cuts off.
  expect(kept?.undamped).toBeLessThan(0.05);
  expect(after?.sentence).toMatch(/^It keeps \d+.% of what it takes up, and the body rises/);
});

it("nothing is said of a stop that was not tested at speed", () => {
  const [corner] = assessed(demoFitment("arm-fits")).corners;
  if (corner === undefined) throw new Error("no corner");
  expect(afterHit(corner, "mm")).toBeNull();
});
