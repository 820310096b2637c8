import { expect, it } from "vitest";
import type { TestDoubt } from "../../../src/physics/fitment.ts";
import { afterHit } from "../../../src/screens/answer/afterHit/afterHit.ts";
import { eventsFromTest, failsByTest } from "../../../src/screens/answer/afterHit/fromTest.ts";
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

it("each hit has its ± from the stop's test, and one faster than the test says how much", () => {
  const fitment = demoFitment("foam-stop-tested");
  const law = (share: number) => ({ damping: null, branches: [{ tauS: 0.01, share }] });
  const of = (testDoubt: TestDoubt) => {
    const [corner] = assessed({ ...fitment, stop: { ...fitment.stop, testDoubt } }).corners;
    if (corner === undefined) throw new Error("no corner");
    return corner;
  };
  const corner = of({ fastestMmPerS: 400, laws: [0.1, 0.2, 0.3, 0.4, 0.5].map(law) });
  const [bump, hump] = eventsFromTest(corner, "mm") ?? [];
  expect(bump?.rows.map(({ off }) => off)).not.toContain("± 0 mm");
  expect(bump?.faster).toMatch(
    /^It closes the stop at 96[56].mm\/\u2060s, 2.4 times as fast as its test went/,
  );
  expect(hump?.faster).toMatch(/1.6 times/);
  for (const unit of ["mm", "in"] as const) {
    for (const { rows } of eventsFromTest(corner, unit) ?? []) {
      for (const { off } of rows) expect(off).toMatch(/^± (under )?.*[1-9]/);
    }
  }
  // Without all of its losses the stop bottoms in the landing, as it does by its test.
  expect(failsByTest(corner)).toMatch(/^With all that its test allows, the stop fails/);
  const quick = of({ fastestMmPerS: 5000, laws: [0.1, 0.2, 0.3, 0.4, 0.5].map(law) });
  expect(eventsFromTest(quick, "mm")?.map(({ faster }) => faster)).toEqual([null, null, null]);
  expect(eventsFromTest({ events: quick.events, fromTest: null }, "mm")).toBeNull();
});
