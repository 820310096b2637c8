import { describe, expect, it } from "vitest";
import type { Fitment, Reading } from "../../../src/physics/fitment.ts";
import { demoFitment } from "../demoFitments.ts";
import { exact, tyreLimit, uprightStrut, within } from "../staticFitments.ts";
import { takenAnew } from "./bruteForce.ts";
import { caliper, planFor, withLeft } from "./planFor.ts";

const putGap = (fitment: Fitment, gap: Reading) => withLeft(fitment, { gap });

describe("what taking a reading again is expected to do, against doing it", () => {
  const arm = demoFitment("arm-fits");
  const cases: readonly (readonly [string, Fitment])[] = [
    ["an arm, gap read once", withLeft(arm, { gap: within(28, 3) })],
    ["an arm, gap read three times", withLeft(arm, { gap: { values: [27, 29, 28.6], tol: 2.5 } })],
    [
      "a strut whose gap is most of the margin of error",
      uprightStrut({ gap: within(65, 4), limits: [tyreLimit(within(96, 1))] }),
    ],
  ];

  it.each(cases)("%s: width and chance to settle", (_, fitment) => {
    const first = planFor(fitment).items[0];
    expect(first?.reading).toBe("left.gap");
    const gap = fitment.corners[0]?.gap ?? exact(0);
    const brute = takenAnew({
      fitment,
      reading: gap,
      put: putGap,
      tol: caliper.halfWidth,
      side: "left",
      check: "clearance",
      times: 160,
    });
    expect(first?.forecast?.halfWidthThenMm).toBeGreaterThan(0.97 * brute.halfWidth);
    expect(first?.forecast?.halfWidthThenMm).toBeLessThan(1.03 * brute.halfWidth);
    // 160 throws scatter by at most 0.04: three times that.
    expect(Math.abs((first?.forecast?.settlesQuestion ?? 0) - brute.settled)).toBeLessThan(0.12);
  });

  it("two limits that touch almost together, each with a wide ±: through the whole formulas", () => {
    const fitment = uprightStrut({
      gap: within(65, 0.3),
      limits: [tyreLimit(within(97, 6)), { kind: "metal", at: "wheel", reading: within(97, 6) }],
    });
    const item = planFor(fitment).items.find(({ reading }) => reading === "left.limits.0");
    const [first, second] = fitment.corners[0]?.limits ?? [];
    if (!first || !second) throw new Error("no limits");
    const brute = takenAnew({
      fitment,
      reading: first.reading,
      put: (before, reading) => withLeft(before, { limits: [{ ...first, reading }, second] }),
      tol: caliper.halfWidth,
      side: "left",
      check: "clearance",
      times: 160,
    });
    expect(item?.forecast?.halfWidthThenMm).toBeCloseTo(brute.halfWidth, 0);
    expect(Math.abs((item?.forecast?.settlesQuestion ?? 0) - brute.settled)).toBeLessThan(0.16);
  });
});
