import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { CurvePoint } from "../../../src/physics/fitment.ts";
import { usableFromTest } from "../../../src/physics/stop/usableFromTest.ts";
import { unwrapped } from "../demoFitments.ts";
import { refusal } from "../refusal.ts";

const sampled = (force: (x: number) => number, last: number, count: number) =>
  Array.from({ length: count }, (_, index): CurvePoint => {
    const depth = (last * (index + 1)) / count;
    return [depth, force(depth)];
  });

describe("the usable compression of a stop of which only a test is known", () => {
  it("is the deepest point of a straight or a falling curve", () => {
    expect(unwrapped(usableFromTest([[40, 4000]]))).toBe(40);
    expect(unwrapped(usableFromTest(sampled(Math.sqrt, 30, 12)))).toBe(30);
  });

  it("is where the rate is ten times the secant rate: x³ tested to L has 3x² = 10·(L/2)²", () => {
    const usable = unwrapped(usableFromTest(sampled((x) => x ** 3, 50, 200)));
    expect(usable).toBeCloseTo(50 * Math.sqrt(10 / 12), 1);
  });

  it("is at the knee of a foam that densifies, however deep past it the test goes", () => {
    // 20 N/mm, then 900 N/mm from 40 mm on: the secant rate at half of 44 or 50 mm is 20.
    const foam = (x: number) => (x < 40 ? 20 * x : 800 + 900 * (x - 40));
    for (const last of [44, 50]) {
      const usable = unwrapped(usableFromTest(sampled(foam, last, 2 * last)));
      expect(usable).toBeGreaterThan(39);
      expect(usable).toBeLessThan(41);
    }
  });

  it("lies within the test, and scales with its depths whatever its forces are scaled by", () => {
    const curves = fc.array(
      fc.record({
        depth: fc.double({ min: 0.5, max: 20, noNaN: true }),
        force: fc.double({ min: 1, max: 8000, noNaN: true }),
      }),
      { minLength: 1, maxLength: 8 },
    );
    fc.assert(
      fc.property(curves, fc.double({ min: 0.1, max: 10, noNaN: true }), (steps, factor) => {
        let [depth, force] = [0, 0];
        const curve = steps.map((step): CurvePoint => {
          depth += step.depth;
          force += step.force;
          return [depth, force];
        });
        const usable = unwrapped(usableFromTest(curve));
        expect(usable).toBeGreaterThan(0);
        expect(usable).toBeLessThanOrEqual(depth);
        const stiffer = curve.map(([x, f]): CurvePoint => [x, factor * f]);
        expect(unwrapped(usableFromTest(stiffer))).toBeCloseTo(usable, 6);
        const longer = curve.map(([x, f]): CurvePoint => [factor * x, f]);
        expect(unwrapped(usableFromTest(longer)) / factor).toBeCloseTo(usable, 6);
      }),
    );
  });

  it("is named where the curve cannot be", () => {
    expect(refusal(usableFromTest([]))).toMatch(/^curveEmpty/);
    expect(refusal(usableFromTest([[10, Number.NaN]]))).toMatch(/^curveNotFinite/);
  });
});
