import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  coilSpringRate,
  steelShearModulus,
  wheelRateFromCoil,
} from "../../../src/physics/estimates/coilSpring.ts";
import { dampingFromShare } from "../../../src/physics/estimates/dampingFromShare.ts";
import type { Estimate, Toleranced } from "../../../src/physics/estimates/estimate.ts";
import { wheelRateFromSag } from "../../../src/physics/estimates/wheelRateFromSag.ts";
import { unwrapped } from "../demoFitments.ts";

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
    expect(rate.how).toBe("from 21.0 mm of sag under 60 kg");
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

  it.each([
    [{ value: 0, tol: 0 }, { value: 20, tol: 1 }, null, "loadNotUsable"],
    [{ value: 60, tol: 1 }, { value: -3, tol: 1 }, null, "sagNotUsable"],
    [{ value: 60, tol: 1 }, { value: Number.NaN, tol: 1 }, null, "sagNotUsable"],
    [{ value: 60, tol: 1 }, { value: 60, tol: 1 }, 57.9, "stopTouched"],
  ] as const)("names what is wrong: %o %o %o", (load, sag, contact, code) => {
    expect(wheelRateFromSag(load, sag, contact)).toMatchObject({ ok: false, fault: { code } });
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

  it("names a coil or a lever ratio that cannot be", () => {
    const none = { value: 0, tol: 0 };
    expect(coilSpringRate({ ...coil, activeCoils: none })).toMatchObject({
      ok: false,
      fault: { code: "coilNotUsable" },
    });
    expect(coilSpringRate({ ...coil, wire: { value: 120, tol: 0 } })).toMatchObject({
      ok: false,
      fault: { code: "coilNotUsable" },
    });
    expect(wheelRateFromCoil(coil, none)).toMatchObject({
      ok: false,
      fault: { code: "leverRatioNotUsable" },
    });
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
    expect(bump.how).toBe("35 % of critical, rebound 2 × bump");
  });

  it("carries the doubt of share, rate and mass", () => {
    const inputs = [share, rate, mass];
    const value = ([a, b, c]: readonly Toleranced[]) =>
      unwrapped(dampingFromShare(a as Toleranced, b as Toleranced, c as Toleranced)).bump;
    expect(value(inputs).tol / byDifferences(inputs, value)).toBeCloseTo(1, 6);
  });

  it("names an input that cannot be", () => {
    expect(dampingFromShare({ value: -0.1, tol: 0 }, rate, mass)).toMatchObject({
      ok: false,
      fault: { code: "dampingShareNotUsable" },
    });
  });
});
