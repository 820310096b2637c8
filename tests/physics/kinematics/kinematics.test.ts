import fc from "fast-check";
import { compile } from "mathjs";
import { describe, expect, it } from "vitest";
import type { Layout } from "../../../src/physics/fitment.ts";
import { type Kinematics, kinematicsOf } from "../../../src/physics/kinematics/kinematics.ts";
import { unwrapped } from "../demoFitments.ts";
import { arms, dampers, layoutOf, layouts, number, reading, sides } from "./arbitraryLayouts.ts";

/** A place within the range, by share; straight guides are tried within a vehicle's travel. */
function placeIn({ range }: Kinematics, share: number): number {
  const least = Math.max(range[0], -600);
  const greatest = Math.min(range[1], 600);
  return least + share * (greatest - least);
}

describe("kinematics of every layout", () => {
  it("inverts itself: z(s(z)) = z within 1e-9 of 1 mm over the whole range", () => {
    fc.assert(
      fc.property(
        layouts,
        sides,
        fc.constantFrom("both", "one"),
        number(0, 1),
        (layout, side, movement, share) => {
          const outcome = kinematicsOf(layout, side, movement as "both" | "one");
          fc.pre(outcome.ok);
          const kinematics = unwrapped(outcome);
          const z = placeIn(kinematics, share);
          const s = unwrapped(kinematics.closing(z));
          // A rounding of s, below 1e-12 mm, counts R times where the lever nearly vanishes.
          const allowed = 1e-9 + 1e-12 * unwrapped(kinematics.ratio(z));
          expect(Math.abs(unwrapped(kinematics.wheelTravel(s)) - z)).toBeLessThan(allowed);
        },
      ),
      { numRuns: 600 },
    );
  });

  it("has a ratio that is the numerical derivative, and a second derivative too", () => {
    fc.assert(
      fc.property(layouts, sides, number(0.02, 0.98), (layout, side, share) => {
        const outcome = kinematicsOf(layout, side);
        fc.pre(outcome.ok);
        const kinematics = unwrapped(outcome);
        const z = placeIn(kinematics, share);
        const step = 1e-3;
        const at = (place: number) => {
          const out = new Float64Array(3);
          kinematics.evaluate(place, out);
          return [...out] as [number, number, number];
        };
        const [s, slope, bend] = at(z);
        const [sAbove, slopeAbove] = at(z + step);
        const [sBelow, slopeBelow] = at(z - step);
        expect(s).toBeCloseTo(unwrapped(kinematics.closing(z)), 9);
        expect(slope).toBeGreaterThan(0);
        expect(Math.abs((sAbove - sBelow) / (2 * step) / slope - 1)).toBeLessThan(1e-5);
        expect(Math.abs((slopeAbove - slopeBelow) / (2 * step) - bend)).toBeLessThan(
          1e-6 + 1e-4 * Math.abs(bend),
        );
        expect(1 / unwrapped(kinematics.ratio(z))).toBeCloseTo(slope, 8);
      }),
      { numRuns: 500 },
    );
  });

  it("closes more the higher the wheel, over the whole range", () => {
    fc.assert(
      fc.property(layouts, sides, number(0, 1), number(0, 1), (layout, side, one, other) => {
        const outcome = kinematicsOf(layout, side);
        fc.pre(outcome.ok && Math.abs(one - other) > 1e-6);
        const kinematics = unwrapped(outcome);
        const lower = placeIn(kinematics, Math.min(one, other));
        const upper = placeIn(kinematics, Math.max(one, other));
        expect(unwrapped(kinematics.closing(upper))).toBeGreaterThan(
          unwrapped(kinematics.closing(lower)),
        );
        // Lengths up to 700 mm, a few roundings: below 1e-12.
        expect(Math.abs(unwrapped(kinematics.closing(0)))).toBeLessThan(1e-11);
      }),
      { numRuns: 400 },
    );
  });

  it("gives a named outcome and never NaN beyond what it can reach", () => {
    fc.assert(
      fc.property(
        layouts,
        fc.oneof(fc.double(), fc.constantFrom(Number.NaN, Infinity, -Infinity, 0, 1e308)),
        (layout, anything) => {
          const outcome = kinematicsOf(layout);
          fc.pre(outcome.ok);
          const kinematics = unwrapped(outcome);
          for (const result of [
            kinematics.closing(anything),
            kinematics.wheelTravel(anything),
            kinematics.ratio(anything),
          ]) {
            if (result.ok) expect(Number.isFinite(result.value)).toBe(true);
            else expect(result.fault.code).toBe("unreachable");
          }
          expect(kinematics.range.every(Number.isFinite)).toBe(true);
        },
      ),
      { numRuns: 500 },
    );
  });

  it("ends its range where it says: a little outside is out of reach", () => {
    for (const layout of [
      layoutOf("arm", { pivotToStop: 150, pivotToOuter: 400, armAngle: 10, stopLean: 5 }),
      layoutOf("damper", {
        pivotToMount: 268,
        pivotToOuter: 405,
        armAngle: 6,
        stopLean: 17,
        damperLength: 412,
      }),
    ]) {
      const kinematics = unwrapped(kinematicsOf(layout));
      const [least, greatest] = kinematics.range;
      expect(kinematics.closing(least).ok).toBe(true);
      expect(kinematics.closing(greatest).ok).toBe(true);
      expect(kinematics.closing(least - 1).ok).toBe(false);
      expect(kinematics.closing(greatest + 1).ok).toBe(false);
      const out = new Float64Array(3);
      kinematics.evaluate(greatest + 500, out);
      expect(out[0]).toBeCloseTo(unwrapped(kinematics.closing(greatest)), 9);
      expect([...out].every(Number.isFinite)).toBe(true);
    }
  });
});

describe("the arm", () => {
  // Both lines turn alike, so that dz/ds = κb·cos(θ0 − α)/(a·cos(θ0 − α)).
  it("has R = κb/a at every angle where the stop line is the arm and the stop stands square", () => {
    fc.assert(
      fc.property(
        number(60, 500),
        number(150, 700),
        number(-40, 40),
        number(0.7, 1.5),
        number(0, 1),
        (a, b, armAngle, wheelPerOuter, share) => {
          const layout = layoutOf(
            "arm",
            { pivotToStop: a, pivotToOuter: b, armAngle },
            wheelPerOuter,
          );
          const kinematics = unwrapped(kinematicsOf(layout));
          const ratio = unwrapped(kinematics.ratio(placeIn(kinematics, 0.01 + 0.98 * share)));
          expect(Math.abs(ratio / ((wheelPerOuter * b) / a) - 1)).toBeLessThan(1e-10);
        },
      ),
    );
  });

  it("agrees with the formulas of the model written out in another library", () => {
    const formula = compile(
      "[a*(sin(p0 + be) - sin(p0 + be - al)), k*b*(sin(t0) - sin(t0 - al)), k*b*cos(t0 - al)/(a*cos(p0 + be - al))]",
    );
    fc.assert(
      fc.property(arms, number(-0.35, 0.35), ({ readings, wheelPerOuter }, rotation) => {
        const radians = (degrees: number) => (degrees * Math.PI) / 180;
        const result = formula.evaluate({
          a: readings.pivotToStop,
          b: readings.pivotToOuter,
          t0: radians(readings.armAngle),
          p0: radians(readings.stopLineAngle),
          be: radians(readings.stopLean),
          k: wheelPerOuter,
          al: rotation,
        });
        const [s, z, ratio] = result.toArray() as [number, number, number];
        const kinematics = unwrapped(kinematicsOf(layoutOf("arm", readings, wheelPerOuter)));
        fc.pre(z > kinematics.range[0] && z < kinematics.range[1]);
        expect(unwrapped(kinematics.closing(z))).toBeCloseTo(s, 8);
        expect(unwrapped(kinematics.wheelTravel(s))).toBeCloseTo(z, 8);
        expect(Math.abs(unwrapped(kinematics.ratio(z)) / ratio - 1)).toBeLessThan(1e-8);
      }),
      { numRuns: 300 },
    );
  });
});

describe("the damper", () => {
  it("agrees with the distance between its mounts in another library", () => {
    const formula = compile(`[
      L0 - norm([a*cos(p0) - L0*sin(be) - a*cos(p0 - al), -a*sin(p0) + L0*cos(be) + a*sin(p0 - al)]),
      k*b*(sin(t0) - sin(t0 - al))]`);
    fc.assert(
      fc.property(dampers, number(-0.3, 0.3), ({ readings, wheelPerOuter }, rotation) => {
        const radians = (degrees: number) => (degrees * Math.PI) / 180;
        const result = formula.evaluate({
          a: readings.pivotToMount,
          b: readings.pivotToOuter,
          L0: readings.damperLength,
          t0: radians(readings.armAngle),
          p0: radians(readings.mountLineAngle),
          be: radians(readings.stopLean),
          k: wheelPerOuter,
          al: rotation,
        });
        const [s, z] = result.toArray() as [number, number];
        const outcome = kinematicsOf(layoutOf("damper", readings, wheelPerOuter));
        fc.pre(outcome.ok);
        const kinematics = unwrapped(outcome);
        fc.pre(z > kinematics.range[0] && z < kinematics.range[1]);
        expect(unwrapped(kinematics.closing(z))).toBeCloseTo(s, 8);
        expect(unwrapped(kinematics.wheelTravel(s))).toBeCloseTo(z, 7);
      }),
      { numRuns: 300 },
    );
  });
});

describe("the beam axle", () => {
  it("closes (T + S)/2T as much with one wheel up", () => {
    const layout = layoutOf("axle", { track: 1600, stopSpacing: 960, stopLean: 10 });
    const both = unwrapped(kinematicsOf(layout, {}, "both"));
    const one = unwrapped(kinematicsOf(layout, {}, "one"));
    const cosine = Math.cos((10 * Math.PI) / 180);
    expect(unwrapped(both.closing(100))).toBeCloseTo(100 * cosine, 12);
    expect(unwrapped(one.closing(100))).toBeCloseTo(80 * cosine, 12);
  });
});

describe("readings that give no motion", () => {
  const cases: readonly [string, string, Layout["kind"], Record<string, number>][] = [
    ["armTooSteep", "armAngle", "arm", { pivotToStop: 150, pivotToOuter: 400, armAngle: 89.99 }],
    [
      "leverLost",
      "stopLean",
      "arm",
      { pivotToStop: 150, pivotToOuter: 400, armAngle: 40, stopLean: 55 },
    ],
    [
      "degenerateTriangle",
      "damperLength",
      "damper",
      {
        pivotToMount: 300,
        pivotToOuter: 400,
        mountLineAngle: 60,
        stopLean: 29.9,
        damperLength: 300,
      },
    ],
    [
      "leverLost",
      "stopLean",
      "damper",
      { pivotToMount: 300, pivotToOuter: 400, mountLineAngle: 60, stopLean: 35, damperLength: 400 },
    ],
    ["stopLeansFlat", "stopLean", "strut", { stopLean: 89.96 }],
    ["angleTooSteep", "stopLean", "strut", { stopLean: 90 }],
    ["lengthNotPositive", "pivotToStop", "arm", { pivotToStop: -150, pivotToOuter: 400 }],
    ["lengthNotPositive", "track", "axle", { track: 0, stopSpacing: 900 }],
    ["readingNotFinite", "pivotToOuter", "arm", { pivotToStop: 150, pivotToOuter: Infinity }],
    ["readingNotFinite", "armAngle", "arm", { pivotToStop: 1, pivotToOuter: 1, armAngle: NaN }],
    ["readingMissing", "damperLength", "damper", { pivotToMount: 300, pivotToOuter: 400 }],
  ];

  it.each(cases)("%s names %s (%s)", (code, blamed, kind, readings) => {
    const outcome = kinematicsOf(layoutOf(kind, readings));
    expect(outcome).toMatchObject({ ok: false, fault: { code, reading: blamed } });
  });

  it("refuses a wheel travel per outer joint of zero", () => {
    const layout = layoutOf("arm", { pivotToStop: 150, pivotToOuter: 400 }, 0);
    expect(kinematicsOf(layout)).toMatchObject({
      ok: false,
      fault: { code: "wheelPerOuterNotPositive" },
    });
  });
});

describe("a corner's own geometry", () => {
  const layout = layoutOf("arm", { pivotToStop: 150, pivotToOuter: 400, armAngle: 10 });

  it("goes before the layout's", () => {
    const own = unwrapped(kinematicsOf(layout, { geometry: { pivotToStop: reading(200) } }));
    expect(unwrapped(own.ratio(0))).toBeCloseTo(2, 12);
  });

  it("is the stop line's angle too where only the arm angle was measured apart", () => {
    const own = unwrapped(kinematicsOf(layout, { geometry: { armAngle: reading(25) } }));
    expect(unwrapped(own.ratio(50))).toBeCloseTo(400 / 150, 12);
  });

  it("is named with its side in a fault", () => {
    const outcome = kinematicsOf(layout, { geometry: { pivotToStop: reading(-1) }, side: "right" });
    expect(outcome).toMatchObject({ ok: false, fault: { reading: "right.pivotToStop" } });
  });
});
