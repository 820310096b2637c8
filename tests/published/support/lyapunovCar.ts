import { lusolve, type Matrix, matrix } from "mathjs";
import type { LinearQuarterCar } from "../../../src/physics/road/roadResponse.ts";

/** x' = A·x + b·w of x = [zs − zu, żs, zu − road, żu], w the road's velocity. */
export function stateMatrix(car: LinearQuarterCar): number[][] {
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

/** Variances of suspension travel, its speed, sprung acceleration and tyre deflection. */
export function byLyapunov(car: LinearQuarterCar, intensity: number) {
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
