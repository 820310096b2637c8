import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { CurvePoint, Stop } from "../../../src/physics/fitment.ts";
import { isProgressive } from "../../../src/physics/stop/stiffnessClass.ts";
import { type StopCurve, stopCurve } from "../../../src/physics/stop/stopCurve.ts";
import { unwrapped } from "../demoFitments.ts";

function curveOf(curve: readonly CurvePoint[], usableCompressionMm: number): StopCurve {
  const stop: Stop = {
    name: "Test stop",
    duty: "impact",
    freeHeight: { values: [1000], tol: 0 },
    usableCompressionMm,
    curve,
    damping: null,
    testedAtSpeed: false,
  };
  return unwrapped(stopCurve(stop));
}

describe("the end of a stop's curve", () => {
  // A test machine at its limit: 20 kN, all but flat from 40 mm on.
  const saturated: readonly CurvePoint[] = [
    [20, 4000],
    [30, 12_000],
    [40, 19_990],
    [50, 20_000],
  ];

  it("never goes flat where a test does: at least F(δu)/δu, so that bottoming has its force", () => {
    const usable = 45;
    const curve = curveOf(saturated, usable);
    const slope = curve.force(usable) / usable;
    expect(slope).toBeGreaterThan(400);
    // Past δu ten times as much on top.
    expect(curve.slope(50.001)).toBeCloseTo(11 * slope, 6);
    expect(curve.force(60) - curve.force(50)).toBeCloseTo(110 * slope, 6);
  });

  it("is F/x at the last point where δu lies past it: F(δu)/δu is then that very slope", () => {
    const curve = curveOf(saturated, 70);
    expect(curve.slope(60)).toBeCloseTo(400, 9);
    expect(curve.force(70) / 70).toBeCloseTo(400, 9);
    expect(curve.slope(70.001)).toBeCloseTo(4400, 6);
  });

  it("is the last segment's secant where that is steeper than the PCHIP's end", () => {
    // Secants 100, 300, 200: end slope ((2·10 + 10)·200 − 10·300)/20 = 150; F/x is 200 as well.
    const bent: readonly CurvePoint[] = [
      [10, 1000],
      [20, 4000],
      [30, 6000],
    ];
    expect(curveOf(bent, 29).slope(29.9)).toBeGreaterThan(150);
    expect(curveOf(bent, 40).slope(35)).toBeCloseTo(200, 9);
  });

  it("is the PCHIP's where that is the steepest", () => {
    const rising: readonly CurvePoint[] = [
      [10, 1000],
      [20, 3000],
      [30, 7000],
    ];
    expect(curveOf(rising, 40).slope(35)).toBeCloseTo(500, 9);
  });

  it("rises as steeply as the last segment and as F(δu)/δu, of any curve", () => {
    const steps = fc.array(
      fc.record({
        depth: fc.double({ min: 0.2, max: 20, noNaN: true }),
        force: fc.double({ min: 1, max: 8000, noNaN: true }),
      }),
      { minLength: 1, maxLength: 8 },
    );
    fc.assert(
      fc.property(steps, fc.double({ min: 0.3, max: 1.6, noNaN: true }), (widths, share) => {
        let [depth, force] = [0, 0];
        const points = widths.map((step): CurvePoint => {
          depth += step.depth;
          force += step.force;
          return [depth, force];
        });
        const last = widths.at(-1);
        const usable = share * depth;
        const curve = curveOf(points, usable);
        const rise = curve.force(depth + 2) - curve.force(depth + 1);
        const secant = (last?.force ?? 0) / (last?.depth ?? 1);
        expect(rise).toBeGreaterThanOrEqual(secant * (1 - 1e-9));
        expect(rise).toBeGreaterThanOrEqual((curve.force(usable) / usable) * (1 - 1e-9));
      }),
    );
  });
});

describe("a progressive stop", () => {
  const halfway = (force: number) =>
    curveOf(
      [
        [6, 300],
        [30, force],
      ],
      30,
    );

  it("has a secant over its whole δu of at least twice that at a fifth: 50 and 100 N/mm", () => {
    expect(isProgressive(halfway(3000))).toBe(true);
    expect(isProgressive(halfway(2999.9))).toBe(false);
  });

  it("is not one that is straight, or falls", () => {
    expect(isProgressive(curveOf([[30, 3000]], 30))).toBe(false);
    expect(
      isProgressive(
        curveOf(
          [
            [10, 2000],
            [30, 3000],
          ],
          30,
        ),
      ),
    ).toBe(false);
  });
});
