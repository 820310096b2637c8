import { describe, expect, it } from "vitest";
import { DormandPrince, type OdeSystem } from "../../../src/physics/impact/dormandPrince.ts";

/* y'' = −y, y(0) = 1, y'(0) = 0: cos t; the quadrature is of y². */
const oscillator: OdeSystem = {
  stateCount: 2,
  rowLength: 3,
  derivative(_, y, rows, offset) {
    const [position = 0, speed = 0] = y;
    rows[offset] = speed;
    rows[offset + 1] = -position;
    rows[offset + 2] = position * position;
  },
};

/** Errors after time 2 in equal steps: of the state, of the quadrature, and within the steps. */
function errorsOf(steps: number): { state: number; quadrature: number; dense: number } {
  const solver = new DormandPrince(oscillator);
  const between = new Float64Array(2);
  solver.state[0] = 1;
  solver.restart();
  let quadrature = 0;
  let dense = 0;
  for (let step = 0; step < steps; step++) {
    solver.attempt(2 / steps);
    solver.prepareInterpolation();
    for (const theta of [0.2, 0.5, 0.9]) {
      solver.interpolate(theta, between);
      const exact = Math.cos(solver.time + theta * solver.size);
      dense = Math.max(dense, Math.abs((between[0] as number) - exact));
    }
    quadrature += solver.quadrature(2);
    solver.accept();
  }
  return {
    state: Math.hypot(
      (solver.state[0] as number) - Math.cos(2),
      (solver.state[1] as number) + Math.sin(2),
    ),
    quadrature: Math.abs(quadrature - (1 + Math.sin(4) / 4)),
    dense,
  };
}

describe("the pair of Dormand and Prince", () => {
  // Hairer, Nørsett & Wanner, Solving Ordinary Differential Equations I, II.5 and II.6 (from memory):
  // order 5; the continuous extension is of order 4, an error of the fifth power within a step.
  it("is of the order that its authors give", () => {
    const coarse = errorsOf(20);
    const fine = errorsOf(40);
    expect(Math.log2(coarse.state / fine.state)).toBeGreaterThan(4.9);
    expect(Math.log2(coarse.quadrature / fine.quadrature)).toBeGreaterThan(4.9);
    expect(Math.log2(coarse.dense / fine.dense)).toBeGreaterThan(4.9);
    expect(fine.state).toBeLessThan(1e-9);
  });

  it("estimates a step's error from above within a hundredfold", () => {
    const solver = new DormandPrince(oscillator);
    solver.state[0] = 1;
    solver.restart();
    solver.attempt(0.2);
    const estimate = solver.error(Float64Array.of(1, 1), 0);
    const actual = Math.hypot(
      (solver.next[0] as number) - Math.cos(0.2),
      (solver.next[1] as number) + Math.sin(0.2),
    );
    expect(estimate).toBeGreaterThan(actual / Math.SQRT2);
    expect(estimate).toBeLessThan(100 * actual);
  });

  it("joins both ends of a step and starts the next where it ended", () => {
    const solver = new DormandPrince(oscillator);
    const between = new Float64Array(2);
    solver.state[0] = 1;
    solver.restart();
    solver.attempt(0.3);
    solver.prepareInterpolation();
    solver.interpolate(0, between);
    expect([...between]).toEqual([...solver.state]);
    solver.interpolate(1, between);
    between.forEach((value, i) => {
      expect(value).toBeCloseTo(solver.next[i] as number, 14);
    });
    solver.accept();
    expect(solver.time).toBe(0.3);
    const kept = [...solver.rows.subarray(0, 3)];
    solver.restart();
    expect([...solver.rows.subarray(0, 3)]).toEqual(kept);
  });
});
