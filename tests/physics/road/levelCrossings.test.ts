import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  crossingShare,
  levelOfShare,
  levelPassedPerKm,
  type RandomTravel,
  upcrossingsPerKm,
  zeroUpcrossingsPerSecond,
} from "../../../src/physics/road/levelCrossings.ts";

const speed = 60 / 3.6;
const even: RandomTravel = {
  sigma: 9.3,
  zeroUpcrossings: zeroUpcrossingsPerSecond(240_000, 560),
  speed,
  kurtosis: 3,
};
const uneven: RandomTravel = { ...even, kurtosis: 5 };

/** Mean of exp(−z²/2v) over a gamma distributed v of mean 1 and shape 3/2, by Simpson's rule in √v. */
function gammaMixture(z: number): number {
  const most = 8;
  const parts = 4000;
  const apart = most / parts;
  // v = r²: the density of v, 1.5^1.5/Γ(1.5)·√v·exp(−1.5·v), times dv = 2r·dr. Γ(3/2) = √π/2.
  const integrand = (r: number) =>
    r === 0
      ? 0
      : ((1.5 ** 1.5 * 2) / Math.sqrt(Math.PI)) *
        2 *
        r *
        r *
        Math.exp(-1.5 * r * r - (z * z) / (2 * r * r));
  let sum = 0;
  for (let part = 0; part <= parts; part++) {
    const weight = part === 0 || part === parts ? 1 : part % 2 === 1 ? 4 : 2;
    sum += weight * integrand(part * apart);
  }
  return (sum * apart) / 3;
}

describe("the share of crossings", () => {
  it("of an uneven road is the mean over a gamma distributed variance, by numeric integration", () => {
    for (const z of [2.1, 2.5, 3, 4, 5, 6]) {
      expect(crossingShare(z, 5)).toBeCloseTo(gammaMixture(z), 10);
      expect(crossingShare(z, 5) / gammaMixture(z)).toBeCloseTo(1, 8);
    }
  });

  it("of an uneven road has a kurtosis of 5: 3·E[v²]/E[v]², E[v²] = 1 + 1/1.5", () => {
    expect(3 * (1 + 1 / 1.5)).toBeCloseTo(5, 12);
  });

  it("is 3.1 times as great at 3σ on an uneven road, and the even road's below 2σ", () => {
    expect(crossingShare(3, 5) / crossingShare(3, 3)).toBeCloseTo(3.09, 2);
    for (const z of [-1, 0, 0.5, 1, 1.5, 1.9])
      expect(crossingShare(z, 5)).toBe(crossingShare(z, 3));
    expect(crossingShare(2.1, 5)).toBeGreaterThan(crossingShare(2.1, 3));
    expect(crossingShare(-3, 5)).toBe(1);
  });

  // W₋₁ at −0.1, −0.01 and −1e−6: SciPy 1's lambertw; −(1 + u) = W₋₁(−E/e).
  it.each([
    [-0.1, -3.577152063957297],
    [-0.01, -6.472775124394005],
    [-1e-6, -16.62650890137247],
  ])("is inverted by the lower branch of Lambert's function at %d", (argument, lambert) => {
    const level = levelOfShare(-argument * Math.E, 5);
    const fromLambert = (-1 - lambert) / Math.sqrt(3);
    const evenLevel = Math.sqrt(2 * -Math.log(-argument * Math.E));
    expect(level).toBeCloseTo(Math.max(fromLambert, evenLevel), 12);
  });

  it("inverts, for any share", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e-12, max: 1 - 1e-9, noNaN: true }),
        fc.constantFrom(3 as const, 5 as const),
        (share, kurtosis) => {
          const level = levelOfShare(share, kurtosis);
          expect(level).toBeGreaterThan(0);
          expect(Math.abs(crossingShare(level, kurtosis) / share - 1)).toBeLessThan(1e-9);
        },
      ),
    );
  });

  it("is met at the mean by a share of 1 or more", () => {
    for (const share of [1, 1.5, Number.POSITIVE_INFINITY]) {
      expect(levelOfShare(share, 3)).toBe(0);
      expect(levelOfShare(share, 5)).toBe(0);
    }
  });
});

describe("level crossings", () => {
  it.each([even, uneven])(
    "invert: the level passed N times per km is, at kurtosis $kurtosis",
    (travel) => {
      for (const allowed of [0.01, 2, 50, 90]) {
        const level = levelPassedPerKm(allowed, travel);
        expect(level).toBeGreaterThan(0);
        expect(upcrossingsPerKm(level, travel)).toBeCloseTo(allowed, 9);
      }
    },
  );

  it("never pass a level below the mean more often than the mean", () => {
    expect(upcrossingsPerKm(-20, even)).toBe(upcrossingsPerKm(0, even));
  });

  it("allow a stop to be met half as often as the mean is passed, at most", () => {
    const mean = upcrossingsPerKm(0, even);
    for (const travel of [even, uneven]) {
      const least = levelPassedPerKm(mean / 2, travel);
      expect(least).toBeCloseTo(9.3 * Math.sqrt(2 * Math.LN2), 9);
      for (const allowed of [0.6 * mean, mean, 50 * mean]) {
        expect(levelPassedPerKm(allowed, travel)).toBe(least);
      }
      expect(levelPassedPerKm(0.4 * mean, travel)).toBeGreaterThan(least);
    }
  });
});
