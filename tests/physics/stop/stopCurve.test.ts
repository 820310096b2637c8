import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { CurvePoint, Stop } from "../../../src/physics/fitment.ts";
import { stopDamping } from "../../../src/physics/stop/damping.ts";
import { secantRate } from "../../../src/physics/stop/stiffnessClass.ts";
import { type StopCurve, stopCurve } from "../../../src/physics/stop/stopCurve.ts";
import { unwrapped } from "../demoFitments.ts";

function stopOf(curve: readonly CurvePoint[], usableCompressionMm: number, height = 1000): Stop {
  return {
    name: "Test stop",
    duty: "impact",
    freeHeight: { values: [height], tol: 1 },
    usableCompressionMm,
    curve,
    damping: null,
    testedAtSpeed: false,
  };
}

const steps = fc.array(
  fc.record({
    depth: fc.double({ min: 0.2, max: 20, noNaN: true }),
    force: fc.double({ min: 1, max: 8000, noNaN: true }),
  }),
  { minLength: 1, maxLength: 9 },
);

const curves = steps.map((widths): readonly CurvePoint[] => {
  let depth = 0;
  let force = 0;
  return widths.map((step) => {
    depth += step.depth;
    force += step.force;
    return [depth, force] as const;
  });
});

/** A curve usable to a share of its tested depth. */
const stops = fc
  .record({ curve: curves, share: fc.double({ min: 0.3, max: 1.5, noNaN: true }) })
  .map(({ curve, share }) => ({
    curve,
    stop: unwrapped(stopCurve(stopOf(curve, share * (curve.at(-1)?.[0] ?? 1)))),
  }));

/** Simpson's rule on fine strips, none of which crosses a knot or the usable compression. */
function integral(stop: StopCurve, curve: readonly CurvePoint[], to: number): number {
  const breaks = [0, ...curve.map(([depth]) => depth), stop.usableCompressionMm, to]
    .filter((place) => place <= to)
    .sort((a, b) => a - b);
  let sum = 0;
  for (let index = 1; index < breaks.length; index++) {
    const from = breaks[index - 1] ?? 0;
    const width = (breaks[index] ?? 0) - from;
    sum +=
      (width / 6) *
      (stop.force(from) + 4 * stop.force(from + width / 2) + stop.force(from + width));
  }
  return sum;
}

describe("the stop's static curve", () => {
  it("passes through every point, never falls and never overshoots a point", () => {
    fc.assert(
      fc.property(
        stops,
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        ({ curve, stop }, one, other) => {
          for (const [depth, force] of curve) {
            if (depth <= stop.usableCompressionMm) expect(stop.force(depth)).toBeCloseTo(force, 6);
          }
          const deepest = 1.3 * (curve.at(-1)?.[0] ?? 0);
          const [low, high] = [Math.min(one, other) * deepest, Math.max(one, other) * deepest];
          expect(stop.force(high)).toBeGreaterThanOrEqual(stop.force(low) * (1 - 1e-12));
          const above = curve.find(([depth]) => depth >= low);
          if (above !== undefined && low <= stop.usableCompressionMm) {
            expect(stop.force(low)).toBeLessThanOrEqual(above[1] * (1 + 1e-12));
          }
        },
      ),
      { numRuns: 500 },
    );
  });

  it("stores the integral of its force, past the last point and the full stop too", () => {
    fc.assert(
      fc.property(stops, fc.double({ min: 0, max: 1.6, noNaN: true }), ({ curve, stop }, share) => {
        const to = share * (curve.at(-1)?.[0] ?? 1);
        const wanted = integral(stop, curve, to);
        expect(Math.abs(stop.energy(to) - wanted)).toBeLessThanOrEqual(1e-9 * wanted + 1e-9);
      }),
      { numRuns: 1000 },
    );
  });

  it("has a slope that is the derivative of its force", () => {
    fc.assert(
      fc.property(
        stops,
        fc.double({ min: 0.01, max: 1.5, noNaN: true }),
        ({ curve, stop }, share) => {
          const x = share * (curve.at(-1)?.[0] ?? 1);
          const step = 1e-6;
          const knots = [...curve.map(([depth]) => depth), stop.usableCompressionMm];
          fc.pre(knots.every((knot) => Math.abs(knot - x) > 2 * step));
          const numerical = (stop.force(x + step) - stop.force(x - step)) / (2 * step);
          expect(Math.abs(stop.slope(x) - numerical)).toBeLessThan(1e-3 + 1e-4 * numerical);
        },
      ),
      { numRuns: 1000 },
    );
  });

  it("goes straight on past the last point, and ten times as steeply more past the full stop", () => {
    const points: readonly CurvePoint[] = [
      [10, 1000],
      [20, 3000],
      [30, 7000],
    ];
    const stop = unwrapped(stopCurve(stopOf(points, 35)));
    const endSlope = stop.slope(30 + 1e-9);
    // End slope by SciPy's rule: ((2·10 + 10)·400 − 10·200)/20 = 500.
    expect(endSlope).toBeCloseTo(500, 9);
    expect(stop.force(34)).toBeCloseTo(7000 + 4 * 500, 6);
    expect(stop.force(37)).toBeCloseTo(7000 + 7 * 500 + 2 * 10 * 500, 6);
    expect(stop.slope(37)).toBeCloseTo(11 * 500, 6);
  });

  it("is nothing where the stop is free, and finite for everything finite", () => {
    fc.assert(
      fc.property(stops, fc.double({ min: -1e6, max: 1e6, noNaN: true }), ({ stop }, x) => {
        for (const value of [stop.force(x), stop.slope(x), stop.energy(x)]) {
          expect(Number.isFinite(value) && value >= 0).toBe(true);
        }
        if (x < 0) expect(stop.force(x) + stop.slope(x) + stop.energy(x)).toBe(0);
      }),
    );
  });

  it("scales force, slope and energy alike", () => {
    const stop = unwrapped(
      stopCurve(
        stopOf(
          [
            [10, 800],
            [25, 5200],
          ],
          20,
        ),
      ),
    );
    const scaled = stop.scaled(1.6).scaled(2);
    for (const x of [0, 3, 12, 22, 40]) {
      expect(scaled.force(x)).toBeCloseTo(3.2 * stop.force(x), 8);
      expect(scaled.slope(x)).toBeCloseTo(3.2 * stop.slope(x), 8);
      expect(scaled.energy(x)).toBeCloseTo(3.2 * stop.energy(x), 6);
    }
    expect(scaled.usableCompressionMm).toBe(20);
  });

  it("takes a first point at (0, 0) as the one that is implied", () => {
    const implied = unwrapped(
      stopCurve(
        stopOf(
          [
            [10, 800],
            [25, 5200],
          ],
          20,
        ),
      ),
    );
    const given = unwrapped(
      stopCurve(
        stopOf(
          [
            [0, 0],
            [10, 800],
            [25, 5200],
          ],
          20,
        ),
      ),
    );
    expect(given.force(17)).toBe(implied.force(17));
  });

  it("has the force over the compression at half of δu as its secant rate", () => {
    expect(secantRate(unwrapped(stopCurve(stopOf([[40, 4000]], 40))))).toBeCloseTo(100, 9);
  });

  it.each<[string, Stop]>([
    ["curveEmpty", stopOf([], 10)],
    ["curveEmpty", stopOf([[0, 0]], 10)],
    [
      "curveNotRising",
      stopOf(
        [
          [10, 800],
          [20, 700],
        ],
        10,
      ),
    ],
    [
      "curveNotRising",
      stopOf(
        [
          [10, 800],
          [10, 900],
        ],
        10,
      ),
    ],
    ["curveNotRising", stopOf([[-1, 800]], 10)],
    ["curveNotFinite", stopOf([[10, Number.NaN]], 10)],
    ["curveNotFinite", stopOf([[Infinity, 10]], 10)],
    ["usableNotPositive", stopOf([[10, 800]], 0)],
    ["usableNotPositive", stopOf([[10, 800]], Number.NaN)],
    ["usableAboveFreeHeight", stopOf([[10, 800]], 40, 40)],
  ])("refuses with %s", (code, stop) => {
    expect(stopCurve(stop)).toMatchObject({ ok: false, fault: { code } });
  });
});

describe("the stop's damping", () => {
  const tested: Stop = {
    ...stopOf([[30, 3000]], 30),
    damping: [
      [0, 0.05, 0.12],
      [12, 0.2, 0.45],
      [34, 0.9, 1.6],
    ],
    testedAtSpeed: true,
  };

  it("is linear between the tests, held at the ends, by the sign of the speed", () => {
    const damping = unwrapped(stopDamping(tested));
    expect(damping.coefficient(6, 100)).toBeCloseTo(0.125, 12);
    expect(damping.coefficient(6, -100)).toBeCloseTo(0.285, 12);
    expect(damping.coefficient(12, 1)).toBeCloseTo(0.2, 12);
    expect(damping.coefficient(23, 1)).toBeCloseTo(0.55, 12);
    expect(damping.coefficient(90, 1)).toBe(0.9);
    expect(damping.coefficient(-5, -1)).toBe(0.12);
  });

  // Common practice, no source: a static test says nothing of damping.
  it("is nothing without tests at speed", () => {
    const untested = unwrapped(stopDamping({ ...tested, testedAtSpeed: false }));
    expect(untested.coefficient(12, 100)).toBe(0);
    expect(unwrapped(stopDamping({ ...tested, damping: null })).coefficient(12, 100)).toBe(0);
  });

  it.each<[string, Stop["damping"]]>([
    ["dampingNegative", [[0, -0.1, 0.1]]],
    [
      "dampingNotRising",
      [
        [5, 0.1, 0.1],
        [5, 0.2, 0.2],
      ],
    ],
    ["dampingNotFinite", [[0, Number.NaN, 0.1]]],
  ])("refuses with %s", (code, damping) => {
    expect(stopDamping({ ...tested, damping })).toMatchObject({ ok: false, fault: { code } });
  });
});
