import fc from "fast-check";
import { lusolve, type Matrix, matrix } from "mathjs";
import { describe, expect, it } from "vitest";
import {
  type LinearQuarterCar,
  sprungAccelerationVariance,
  travelSpeedVariance,
  travelVariance,
  tyreDeflectionVariance,
} from "../../src/physics/road/roadResponse.ts";
import { roadVelocityIntensity } from "../../src/physics/road/roughness.ts";
import { simulatedVariances } from "./linearQuarterCar.ts";

/*
 * Closed-form variances of the quarter car on white-noise road velocity, the subject of Dahlberg,
 * J. Sound Vib. 58 (1978) 179, and Gobbi, Levi & Mastinu, J. Sound Vib. 298 (2006) 1055. Checked
 * against the Lyapunov equation of the same model, written out and solved here, against a worked case,
 * and against a long seeded simulation.
 */

/** x' = A·x + b·w of x = [zs − zu, żs, zu − road, żu], w the road's velocity. */
function stateMatrix(car: LinearQuarterCar): number[][] {
  const { sprungMass: ms, unsprungMass: mu, wheelRate: ks, tyreRate: kt, damping: c } = car;
  return [
    [0, 1, 0, -1],
    [-ks / ms, -c / ms, 0, c / ms],
    [0, 0, 0, 1],
    [ks / mu, c / mu, -kt / mu, -c / mu],
  ];
}

/** Stationary covariance P of A·P + P·Aᵀ + D·b·bᵀ = 0, with b = [0, 0, −1, 0], as one linear system. */
function covariance(car: LinearQuarterCar, intensity: number): number[][] {
  const a = stateMatrix(car);
  const system = Array.from({ length: 16 }, () => new Array<number>(16).fill(0));
  const right = new Array<number>(16).fill(0);
  right[4 * 2 + 2] = -intensity;
  for (let i = 0; i < 4; i++) {
    for (let j = 0; j < 4; j++) {
      const row = system[4 * i + j] as number[];
      for (let k = 0; k < 4; k++) {
        row[4 * k + j] = (row[4 * k + j] as number) + (a[i]?.[k] as number);
        row[4 * i + k] = (row[4 * i + k] as number) + (a[j]?.[k] as number);
      }
    }
  }
  const solution = (lusolve(matrix(system), right) as Matrix).toArray() as number[][];
  return [0, 1, 2, 3].map((i) => [0, 1, 2, 3].map((j) => solution[4 * i + j]?.[0] as number));
}

function byLyapunov(car: LinearQuarterCar, intensity: number) {
  const p = covariance(car, intensity);
  const at = (i: number, j: number) => p[i]?.[j] as number;
  const acceleration = stateMatrix(car)[1] as number[];
  let sprung = 0;
  for (let i = 0; i < 4; i++) {
    for (let j = 0; j < 4; j++) {
      sprung += (acceleration[i] as number) * (acceleration[j] as number) * at(i, j);
    }
  }
  return {
    travel: at(0, 0),
    travelSpeed: at(1, 1) + at(3, 3) - 2 * at(1, 3),
    sprung,
    tyre: at(2, 2),
  };
}

function byClosedForm(car: LinearQuarterCar, intensity: number) {
  return {
    travel: travelVariance(intensity, car.sprungMass + car.unsprungMass, car.damping),
    travelSpeed: travelSpeedVariance(intensity, car.tyreRate, car.damping),
    sprung: sprungAccelerationVariance(intensity, car),
    tyre: tyreDeflectionVariance(intensity, car),
  };
}

function expectNear(got: number, wanted: number, relative: number) {
  expect(Math.abs(got / wanted - 1)).toBeLessThan(relative);
}

const workedCase: LinearQuarterCar = {
  sprungMass: 505,
  unsprungMass: 55,
  wheelRate: 28_000,
  tyreRate: 240_000,
  damping: 2700,
};
const workedIntensity = roadVelocityIntensity("C", 60 / 3.6);

describe("the quarter car on a rough road (Dahlberg 1978; Gobbi, Levi & Mastinu 2006)", () => {
  it("gives the worked case: class C, 60 km/h (references.md, recomputed)", () => {
    const { travel, sprung, tyre } = byClosedForm(workedCase, workedIntensity);
    expectNear(travel, 8.73399e-5, 1e-6);
    expectNear(tyre, 1.364585e-5, 1e-6);
    expectNear(sprung, 1.338494, 1e-6);
  });

  it("solves the Lyapunov equation, whatever the car", () => {
    fc.assert(
      fc.property(
        fc.record({
          sprungMass: fc.double({ min: 100, max: 3000, noNaN: true }),
          unsprungMass: fc.double({ min: 15, max: 400, noNaN: true }),
          wheelRate: fc.double({ min: 5e3, max: 2e5, noNaN: true }),
          tyreRate: fc.double({ min: 5e4, max: 1e6, noNaN: true }),
          damping: fc.double({ min: 300, max: 2e4, noNaN: true }),
        }),
        (car) => {
          const wanted = byLyapunov(car, workedIntensity);
          const got = byClosedForm(car, workedIntensity);
          for (const name of ["travel", "travelSpeed", "sprung", "tyre"] as const) {
            expectNear(got[name], wanted[name], 1e-7);
          }
        },
      ),
    );
  });

  it("is what a long seeded simulation shows, within its 99 % confidence interval of ± 4 % or less", () => {
    const simulated = simulatedVariances(stateMatrix(workedCase), workedIntensity, {
      seed: 20260502,
      seconds: 12_000,
      stepS: 0.001,
      batches: 60,
    });
    const wanted = byClosedForm(workedCase, workedIntensity);
    for (const name of ["travel", "travelSpeed", "sprung", "tyre"] as const) {
      const { mean, halfWidth99 } = simulated[name];
      expect(halfWidth99 / mean, name).toBeLessThan(0.04);
      expect(Math.abs(mean - wanted[name]), name).toBeLessThan(halfWidth99);
    }
  });
});
