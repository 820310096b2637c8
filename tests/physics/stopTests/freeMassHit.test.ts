import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type StopAtSpeed, staticOnly } from "../../../src/physics/stop/stopAtSpeed.ts";
import { freeMassHit } from "../../../src/physics/stopTests/freeMassHit.ts";
import { curveThrough } from "../../../src/physics/stopTests/staticCurve.ts";
import { faultCode, given } from "./outcomes.ts";

/** A stop of one rate, N/mm. */
function spring(rate: number) {
  const curve = curveThrough(
    [50, 100].map((depthMm) => ({ depthMm, forceN: rate * depthMm, standardErrorN: 0, rows: 1 })),
  );
  if (curve === null) throw new Error("no curve");
  return curve;
}

const dashpot = (c: number): StopAtSpeed => ({
  ...staticOnly,
  dashpot: { coefficient: () => c },
});

describe("a free mass on a stop", () => {
  it("of one rate: v·√(m·k) of force, v·√(m/k) deep, and all of its speed back (any text on vibration)", () => {
    const [mass, k, v] = [100, 200, 1.5];
    const hit = given(freeMassHit(spring(k), staticOnly, mass, v));
    expect(hit.peakForceN / (v * Math.sqrt(mass * k * 1000))).toBeCloseTo(1, 5);
    expect(hit.peakCompressionMm / (1000 * v * Math.sqrt(mass / (k * 1000)))).toBeCloseTo(1, 5);
    expect(hit.leaveSpeedMmPerS).toBeCloseTo(1500, 1);
    expect(hit.energyInJ).toBeCloseTo((mass * v * v) / 2, 3);
    expect(hit.energyOutJ).toBeCloseTo(hit.energyInJ, 3);
  });

  it("of a spring and dashpot that only push: the mass leaves as the force ends", () => {
    // ẍ + 2ζωẋ + ω²x = 0, ẋ(0) = v; the force ends at tan(ω′t) = −ω′/(ζω)·(1 − 2ζ²)⁻¹·2ζ², solved here as
    // F(t) = 0: speed v·exp(−ζωt)·(cos ω′t − ζω/ω′·sin ω′t), textbook free vibration.
    const [mass, k, v, zeta] = [100, 200, 1.5, 0.2];
    const omega = Math.sqrt((k * 1000) / mass);
    const damped = omega * Math.sqrt(1 - zeta * zeta);
    const c = (2 * zeta * omega * mass) / 1000;
    const x = (t: number) => (v / damped) * Math.exp(-zeta * omega * t) * Math.sin(damped * t);
    const speed = (t: number) =>
      v *
      Math.exp(-zeta * omega * t) *
      (Math.cos(damped * t) - ((zeta * omega) / damped) * Math.sin(damped * t));
    let [low, high] = [Math.PI / damped / 2, Math.PI / damped];
    for (let halving = 0; halving < 60; halving++) {
      const middle = (low + high) / 2;
      if (k * 1000 * x(middle) + 1000 * c * speed(middle) > 0) low = middle;
      else high = middle;
    }
    const hit = given(freeMassHit(spring(k), dashpot(c), mass, v));
    expect(hit.leaveSpeedMmPerS / (-1000 * speed(low))).toBeCloseTo(1, 4);
  });

  it("of a rest loss h: the energy that comes back is (1 − h)/(1 + h) of what went in", () => {
    const h = 0.1;
    const hit = given(freeMassHit(spring(200), { ...staticOnly, restLoss: h }, 100, 1.5));
    expect(hit.energyOutJ / hit.energyInJ).toBeCloseTo((1 - h) / (1 + h), 2);
  });

  it("of a branch far slower than the hit: a spring of e + g times the rate", () => {
    const slow = { ...staticOnly, branches: [{ tauS: 1000, share: 0.5 }] };
    const hit = given(freeMassHit(spring(200), slow, 100, 1.5));
    expect(hit.peakForceN / (1.5 * Math.sqrt(100 * 300 * 1000))).toBeCloseTo(1, 3);
    expect(hit.leaveSpeedMmPerS).toBeCloseTo(1500, -1);
  });

  it("never gives back more than it took, whatever the parts", () => {
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    const parts = fc.record({
      c: fc.double({ min: 0, max: 3, noNaN: true }),
      h: fc.double({ min: 0, max: 0.4, noNaN: true }),
      g: share,
      tauS: fc.double({ min: 0.001, max: 1, noNaN: true }),
      mass: fc.double({ min: 10, max: 300, noNaN: true }),
      v: fc.double({ min: 0.2, max: 3, noNaN: true }),
    });
    fc.assert(
      fc.property(parts, ({ c, h, g, tauS, mass, v }) => {
        const stop: StopAtSpeed = {
          ...dashpot(c),
          restLoss: h,
          branches: [{ tauS, share: g }],
        };
        const hit = given(freeMassHit(spring(150), stop, mass, v));
        expect(hit.energyInJ).toBeLessThan((mass * v * v) / 2 + 0.01);
        expect(hit.energyOutJ).toBeLessThanOrEqual(hit.energyInJ);
        expect(hit.leaveSpeedMmPerS).toBeLessThanOrEqual(1000 * v * 1.0001);
      }),
      { numRuns: 60 },
    );
  });

  it("needs a mass and a speed", () => {
    expect(faultCode(freeMassHit(spring(100), staticOnly, 0, 1))).toBe("hitNotUsable");
    expect(faultCode(freeMassHit(spring(100), staticOnly, 10, Number.NaN))).toBe("hitNotUsable");
  });
});
