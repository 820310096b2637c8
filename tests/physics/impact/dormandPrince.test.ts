import { describe, expect, it } from "vitest";
import { DormandPrince } from "../../../src/physics/impact/dormandPrince.ts";
import { oscillator } from "../../published/dormandPrince.ts";

// Its order stands in tests/published/dormandPrince.ts.
describe("the pair of Dormand and Prince", () => {
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
