import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  coilSpringRate,
  steelShearModulus,
  wheelRateFromCoil,
} from "../../../src/physics/estimates/coilSpring.ts";
import {
  dampingFromShare,
  usualDampingShare,
  usualReboundPerBump,
} from "../../../src/physics/estimates/dampingFromShare.ts";
import {
  type Estimate,
  isPositive,
  powerTolerance,
  type Toleranced,
} from "../../../src/physics/estimates/estimate.ts";
import { wheelRateFromSag } from "../../../src/physics/estimates/wheelRateFromSag.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";
import { unwrapped } from "../demoFitments.ts";
import { refusal } from "../refusal.ts";

const coil = {
  wire: { value: 14, tol: 0.1 },
  meanCoil: { value: 110, tol: 1 },
  activeCoils: { value: 5.5, tol: 0.25 },
  shearModulus: steelShearModulus,
};

/** Half-width by numerical differences, JCGM 100:2008, 5.1.3: each input moved, the moves in quadrature. */
function byDifferences(
  inputs: readonly Toleranced[],
  value: (inputs: readonly Toleranced[]) => Estimate,
): number {
  const moves = inputs.map((input, index) => {
    const step = 1e-4 * input.value;
    const moved = (by: number) =>
      value(inputs.map((each, at) => (at === index ? { ...each, value: each.value + by } : each)))
        .value;
    return ((moved(step) - moved(-step)) / (2 * step)) * input.tol;
  });
  return Math.hypot(...moves);
}

describe("wheel rate from sag", () => {
  it("is load over sag (Hooke): 60 kg and 21 mm are 28.02 N/mm", () => {
    const rate = unwrapped(wheelRateFromSag({ value: 60, tol: 0.5 }, { value: 21, tol: 1 }, null));
    expect(rate.value).toBeCloseTo((60 * 9.80665) / 21, 12);
    expect(inModelUnits(rate.how)).toBe("from 21.0 mm of sag under 60 kg");
  });

  it("carries the doubt of both readings", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 10, max: 500, noNaN: true }),
        fc.double({ min: 2, max: 100, noNaN: true }),
        (load, sag) => {
          const inputs = [
            { value: load, tol: 0.02 * load },
            { value: sag, tol: 1 },
          ] as const;
          const value = ([a, b]: readonly Toleranced[]) =>
            unwrapped(wheelRateFromSag(a as Toleranced, b as Toleranced, null));
          expect(value(inputs).tol / byDifferences(inputs, value)).toBeCloseTo(1, 6);
        },
      ),
    );
  });

  const noLoad = "loadNotUsable: The load on this corner must be above 0. Weigh it again.";
  const noSag =
    "sagNotUsable: The ride height must fall under the load. Measure it without and with the load.";
  const touched =
    "stopTouched: With 60.0 mm of sag the stop already carries part of the load. Re-measure with a smaller load.";
  it.each([
    [{ value: 0, tol: 0 }, { value: 20, tol: 1 }, null, noLoad],
    [{ value: 60, tol: -1 }, { value: 20, tol: 1 }, null, noLoad],
    [{ value: 60, tol: 1 }, { value: -3, tol: 1 }, null, noSag],
    [{ value: 60, tol: 1 }, { value: Number.NaN, tol: 1 }, null, noSag],
    [{ value: 60, tol: 1 }, { value: 60, tol: 1 }, 57.9, touched],
    [{ value: 60, tol: 1 }, { value: 60, tol: 1 }, 60, touched],
    [{ value: 60, tol: 1 }, { value: 60, tol: 1 }, 60.1, "none"],
  ] as const)("names what is wrong: %o %o %o", (load, sag, contact, words) => {
    expect(refusal(wheelRateFromSag(load, sag, contact))).toBe(words);
  });

  it("has the half-width by hand: 2 % of the load and 5 % of the sag are 5.385 %", () => {
    const rate = unwrapped(wheelRateFromSag({ value: 60, tol: 1.2 }, { value: 20, tol: 1 }, null));
    expect(rate.tol / rate.value).toBeCloseTo(Math.sqrt(0.02 ** 2 + 0.05 ** 2), 12);
  });
});

describe("what an estimate may be made of", () => {
  it.each([
    [1, 0, true],
    [5e-324, 0, true],
    [0, 0, false],
    [-1, 0, false],
    [1, -1e-9, false],
    [Number.NaN, 0, false],
    [Number.POSITIVE_INFINITY, 0, false],
    [1, Number.NaN, false],
    [1, Number.POSITIVE_INFINITY, false],
  ])("%d ± %d: %s", (value, tol, usable) => {
    expect(isPositive({ value, tol })).toBe(usable);
  });

  // JCGM 100:2008, 5.1.6: y = x², u(x)/x = 0.1, so u(y)/y = 0.2; the sign of a power or a value is none
  // of a half-width's.
  it("has the half-width of a power", () => {
    expect(powerTolerance(100, [[{ value: 10, tol: 1 }, 2]])).toBeCloseTo(20, 12);
    expect(powerTolerance(-100, [[{ value: 10, tol: 1 }, -2]])).toBeCloseTo(20, 12);
    expect(powerTolerance(100, [])).toBe(0);
  });
});

describe("wheel rate from coil dimensions", () => {
  it("is the coil's rate over the lever ratio squared (virtual work)", () => {
    const rate = unwrapped(coilSpringRate(coil));
    const atWheel = unwrapped(wheelRateFromCoil(coil, { value: 1.6, tol: 0 }));
    expect(atWheel.value).toBeCloseTo(rate.value / 2.56, 12);
    expect(atWheel.tol / atWheel.value).toBeCloseTo(rate.tol / rate.value, 12);
  });

  it("carries the doubt of every dimension, the wire's four times and the coil's three", () => {
    const inputs = [...Object.values(coil), { value: 1.6, tol: 0.05 }];
    const value = ([wire, meanCoil, activeCoils, shearModulus, ratio]: readonly Toleranced[]) =>
      unwrapped(
        wheelRateFromCoil(
          { wire, meanCoil, activeCoils, shearModulus } as typeof coil,
          ratio as Toleranced,
        ),
      );
    expect(value(inputs).tol / byDifferences(inputs, value)).toBeCloseTo(1, 6);
  });

  it("says in words what it was made of", () => {
    expect(inModelUnits(unwrapped(coilSpringRate(coil)).how)).toBe(
      "from the coil: wire 14.0 mm, mean diameter 110.0 mm, 5.5 active coils",
    );
    expect(inModelUnits(unwrapped(wheelRateFromCoil(coil, { value: 1.6, tol: 0 })).how)).toBe(
      "from the coil: wire 14.0 mm, mean diameter 110.0 mm, 5.5 active coils, at a lever ratio of 1.60 : 1",
    );
    expect(steelShearModulus).toEqual({ value: 79_300, tol: 2000 });
  });

  it("has the half-width by hand: 4 × 1 % of the wire and 3 × 2 % of the coil are 7.211 %", () => {
    const rate = unwrapped(
      coilSpringRate({
        wire: { value: 10, tol: 0.1 },
        meanCoil: { value: 100, tol: 2 },
        activeCoils: { value: 5, tol: 0 },
        shearModulus: { value: 79_300, tol: 0 },
      }),
    );
    expect(rate.tol / rate.value).toBeCloseTo(Math.sqrt(0.04 ** 2 + 0.06 ** 2), 12);
  });

  it("names a coil or a lever ratio that cannot be", () => {
    const none = { value: 0, tol: 0 };
    const noCoil =
      "coilNotUsable: Wire, coil diameter, number of coils and shear modulus must all be above 0. Re-measure.";
    const thick =
      "coilNotUsable: The wire cannot be as thick as the coil is wide. Re-measure both.";
    for (const name of ["wire", "meanCoil", "activeCoils", "shearModulus"]) {
      expect(refusal(coilSpringRate({ ...coil, [name]: none }))).toBe(noCoil);
    }
    expect(refusal(coilSpringRate({ ...coil, wire: { value: 120, tol: 0 } }))).toBe(thick);
    expect(refusal(coilSpringRate({ ...coil, wire: coil.meanCoil }))).toBe(thick);
    expect(refusal(wheelRateFromCoil({ ...coil, wire: none }, { value: 1, tol: 0 }))).toBe(noCoil);
    expect(refusal(wheelRateFromCoil(coil, none))).toBe(
      "leverRatioNotUsable: The spring's lever ratio, wheel travel per spring travel, must be above 0. Re-measure it.",
    );
  });
});

describe("damping as a share of critical", () => {
  const share = { value: 0.35, tol: 0.1 };
  const rate = { value: 28, tol: 1 };
  const mass = { value: 505, tol: 10 };

  it("has bump and rebound whose mean is that share of 2·√(k·m) (vibration texts)", () => {
    const { bump, rebound } = unwrapped(dampingFromShare(share, rate, mass, 2));
    const critical = 2 * Math.sqrt(28_000 * 505);
    expect((1000 * (bump.value + rebound.value)) / 2 / critical).toBeCloseTo(0.35, 12);
    expect(rebound.value / bump.value).toBeCloseTo(2, 12);
    expect(bump.tol / bump.value).toBeCloseTo(rebound.tol / rebound.value, 12);
    expect(inModelUnits(bump.how)).toBe("35 % of critical, rebound 2 × bump");
  });

  it("carries the doubt of share, rate and mass", () => {
    const inputs = [share, rate, mass];
    const value = ([a, b, c]: readonly Toleranced[]) =>
      unwrapped(dampingFromShare(a as Toleranced, b as Toleranced, c as Toleranced)).bump;
    expect(value(inputs).tol / byDifferences(inputs, value)).toBeCloseTo(1, 6);
  });

  it("is 0.35 ± 0.1 of critical and rebounds twice as hard unless told otherwise", () => {
    expect(usualDampingShare).toEqual({ value: 0.35, tol: 0.1 });
    expect(usualReboundPerBump).toBe(2);
    const { bump, rebound } = unwrapped(dampingFromShare(share, rate, mass));
    expect(rebound.value / bump.value).toBeCloseTo(2, 12);
  });

  it("names an input that cannot be", () => {
    const words =
      "dampingShareNotUsable: The share of critical damping must be above 0. So must the wheel rate, the sprung mass and the ratio of rebound to bump. Check them.";
    const none = { value: 0, tol: 0 };
    expect(refusal(dampingFromShare({ value: -0.1, tol: 0 }, rate, mass))).toBe(words);
    expect(refusal(dampingFromShare(share, none, mass))).toBe(words);
    expect(refusal(dampingFromShare(share, rate, none))).toBe(words);
    expect(refusal(dampingFromShare(share, rate, mass, 0))).toBe(words);
  });
});
