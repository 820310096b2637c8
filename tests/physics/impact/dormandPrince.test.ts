import { describe, expect, it } from "vitest";
import { DormandPrince, type OdeSystem } from "../../../src/physics/impact/dormandPrince.ts";
import { oscillator } from "../../published/dormandPrince.ts";

/*
 * The tableau of the pair: Dormand & Prince, J. Comput. Appl. Math. 6 (1980) 19, table 2; the weights of
 * its continuous extension: Hairer, Nørsett & Wanner, Solving Ordinary Differential Equations I, II.6 (all
 * from memory; the orders that they must have are tried in tests/published/dormandPrince.ts).
 */
const places = [0, 1 / 5, 3 / 10, 4 / 5, 8 / 9, 1, 1];
const stageWeights = [
  [],
  [1 / 5],
  [3 / 40, 9 / 40],
  [44 / 45, -56 / 15, 32 / 9],
  [19372 / 6561, -25360 / 2187, 64448 / 6561, -212 / 729],
  [9017 / 3168, -355 / 33, 46732 / 5247, 49 / 176, -5103 / 18656],
  [35 / 384, 0, 500 / 1113, 125 / 192, -2187 / 6784, 11 / 84],
];
const fifthOrder = [...(stageWeights[6] as number[]), 0];
const fourthOrder = [5179 / 57600, 0, 7571 / 16695, 393 / 640, -92097 / 339200, 187 / 2100, 1 / 40];
const extension = [
  -12715105075 / 11282082432,
  0,
  87487479700 / 32700410799,
  -10690763975 / 1880347072,
  701980252875 / 199316789632,
  -1453857185 / 822651844,
  69997945 / 29380423,
];

/** Two states that act on each other and on time, a quadrature, and a column that is only kept. */
const crooked: OdeSystem = {
  stateCount: 2,
  rowLength: 4,
  derivative(t, y, rows, offset) {
    const [a = 0, b = 0] = y;
    rows[offset] = Math.sin(3 * t) - a * b + 2;
    rows[offset + 1] = t * t - b + a ** 2;
    rows[offset + 2] = a * b + t;
    rows[offset + 3] = 7 * t;
  },
};

const start = [0.7, -0.4];
const time = 0.2;
const size = 0.15;

/** One step of the system by the tableau, column by column as it stands in the table. */
function stepByTable(): { readonly rows: number[][]; readonly next: number[] } {
  const rows: number[][] = [];
  const row = new Float64Array(4);
  const sums = (weights: readonly number[]) =>
    [0, 1].map(
      (i) =>
        (start[i] as number) +
        size * weights.reduce((sum, weight, stage) => sum + weight * (rows[stage]?.[i] ?? 0), 0),
    );
  for (const [stage, weights] of stageWeights.entries()) {
    crooked.derivative(
      time + (places[stage] as number) * size,
      Float64Array.from(sums(weights)),
      row,
      0,
    );
    rows.push([...row]);
  }
  return { rows, next: sums(fifthOrder) };
}

function solverOf(system: OdeSystem, state: readonly number[], from = time): DormandPrince {
  const solver = new DormandPrince(system);
  solver.state.set(state);
  solver.time = from;
  solver.restart();
  return solver;
}

function stepped(): DormandPrince {
  const solver = solverOf(crooked, start);
  solver.attempt(size);
  return solver;
}

const weighed = (weights: readonly number[], rows: readonly number[][], place: number) =>
  weights.reduce((sum, weight, stage) => sum + weight * (rows[stage]?.[place] as number), 0);

const near = (values: readonly number[]) => values.map((value) => expect.closeTo(value, 13));

// Its order stands in tests/published/dormandPrince.ts.
describe("the pair of Dormand and Prince", () => {
  it("takes its step by the published tableau", () => {
    const solver = stepped();
    const byTable = stepByTable();
    expect([...solver.rows]).toEqual(near(byTable.rows.flat()));
    expect([...solver.next]).toEqual(near(byTable.next));
    expect([...solver.state]).toEqual(start);
    expect([solver.time, solver.size]).toEqual([time, size]);
  });

  it("sums a quadrature with the weights of fifth order", () => {
    const { rows } = stepByTable();
    expect(stepped().quadrature(2)).toBeCloseTo(size * weighed(fifthOrder, rows, 2), 13);
  });

  it("takes for the error of a step what the two orders differ by, each over what is allowed", () => {
    const { rows, next } = stepByTable();
    const differences = [0, 1, 2].map(
      (place) => size * (weighed(fifthOrder, rows, place) - weighed(fourthOrder, rows, place)),
    );
    const allowed = [1e-4, 3e-4, 2e-4];
    const rootMeanSquare = (shares: readonly number[]) =>
      Math.sqrt(shares.reduce((sum, share) => sum + share ** 2, 0) / shares.length);
    const solver = stepped();
    const statesOnly = differences.slice(0, 2).map((one, i) => one / (allowed[i] as number));
    expect(solver.error(Float64Array.from(allowed.slice(0, 2)), 0)).toBeCloseTo(
      rootMeanSquare(statesOnly),
      10,
    );
    // A share of a state's own greater end is added; none of a quadrature's.
    const greater = start.map((one, i) => Math.max(Math.abs(one), Math.abs(next[i] as number)));
    const withRelative = differences.map(
      (one, i) => one / ((allowed[i] as number) + 1e-3 * (greater[i] ?? 0)),
    );
    expect(solver.error(Float64Array.from(allowed), 1e-3)).toBeCloseTo(
      rootMeanSquare(withRelative),
      10,
    );
  });

  it("joins the ends of a step by the published continuous extension", () => {
    const { rows, next } = stepByTable();
    const solver = stepped();
    const between = new Float64Array(2);
    solver.prepareInterpolation();
    for (const theta of [0, 0.13, 0.5, 0.8, 1]) {
      solver.interpolate(theta, between);
      const wanted = start.map((from, i) => {
        const first = size * (rows[0]?.[i] as number);
        const last = size * (rows[6]?.[i] as number);
        const difference = (next[i] as number) - from;
        const bend = first - difference;
        const rest = 1 - theta;
        const inner = difference - last - bend + rest * size * weighed(extension, rows, i);
        return from + theta * (difference + rest * (bend + theta * inner));
      });
      expect([...between]).toEqual(near(wanted));
    }
  });

  it("knows the slope of its continuous extension", () => {
    const solver = stepped();
    const at = (theta: number) => {
      const between = new Float64Array(2);
      solver.interpolate(theta, between);
      return between;
    };
    solver.prepareInterpolation();
    const apart = 1e-5;
    for (const component of [0, 1]) {
      for (const theta of [0.1, 0.37, 0.5, 0.9]) {
        const rise =
          (at(theta + apart)[component] as number) - (at(theta - apart)[component] as number);
        expect(solver.slopeAt(component, theta)).toBeCloseTo(rise / (2 * apart * size), 7);
      }
      expect(solver.slopeAt(component, 0)).toBeCloseTo(solver.rows[component] as number, 12);
      expect(solver.slopeAt(component, 1)).toBeCloseTo(solver.rows[24 + component] as number, 12);
    }
  });

  it("finds where a slope is greatest, to a twentieth of the step", () => {
    const topOf = (slope: (t: number) => number) => {
      const system: OdeSystem = {
        stateCount: 2,
        rowLength: 2,
        derivative(t, _, rows, offset) {
          rows[offset] = -slope(t);
          rows[offset + 1] = slope(t);
        },
      };
      const solver = solverOf(system, [0, 0]);
      solver.attempt(size);
      return solver.topOfSlope(1);
    };
    const parabola = (share: number) => topOf((t) => 5 - ((t - time) / size - share) ** 2);
    expect(parabola(0.35)).toBe(0.35);
    expect(parabola(0.36)).toBe(0.35);
    expect(parabola(0.62)).toBe(0.6);
    expect(topOf((t) => t)).toBe(1);
    expect(topOf((t) => -t)).toBe(0);
  });

  it("goes on where its step ended, with the last stage for the first, and not before", () => {
    const solver = stepped();
    const { rows, next } = stepByTable();
    solver.accept();
    expect(solver.time).toBeCloseTo(time + size, 15);
    expect([...solver.state]).toEqual(near(next));
    expect([...solver.rows.subarray(0, 4)]).toEqual(near(rows[6] as number[]));
    solver.restart();
    expect([...solver.rows.subarray(0, 4)]).toEqual(near(rows[6] as number[]));
    // A second step from there ends where a solver put there by hand ends.
    solver.attempt(0.1);
    const other = solverOf(crooked, [...solver.state], time + size);
    other.attempt(0.1);
    expect([...solver.next]).toEqual(near([...other.next]));
  });

  it("begins at time 0 with all at 0", () => {
    const solver = new DormandPrince(oscillator);
    expect([solver.time, solver.size, ...solver.state]).toEqual([0, 0, 0, 0]);
  });

  it("estimates a step's error from above within a hundredfold", () => {
    const solver = solverOf(oscillator, [1, 0], 0);
    solver.attempt(0.2);
    const estimate = solver.error(Float64Array.of(1, 1), 0);
    const actual = Math.hypot(
      (solver.next[0] as number) - Math.cos(0.2),
      (solver.next[1] as number) + Math.sin(0.2),
    );
    expect(estimate).toBeGreaterThan(actual / Math.SQRT2);
    expect(estimate).toBeLessThan(100 * actual);
  });
});
