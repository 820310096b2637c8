import { describe, expect, it } from "vitest";
import type { DrawnReading } from "../../../src/physics/uncertainty/drawnReading.ts";
import {
  drawnReading,
  standardUncertainty,
} from "../../../src/physics/uncertainty/drawnReading.ts";
import {
  combinedUncertainty,
  doubtShares,
  firstOrderContributions,
} from "../../../src/physics/uncertainty/firstOrder.ts";

const readings = (["left.limits.0", "stop.freeHeight", "armAngle"] as const).map((id) =>
  drawnReading(id, { values: [10], tol: 3 }),
);
const u = standardUncertainty(readings[0] as DrawnReading);

describe("a reading's contribution", () => {
  it("is half the change of the result over ± u, with its sign", () => {
    const contributions = firstOrderContributions(
      readings,
      (index, value) => ([2, -3, 0][index] as number) * (value - 10),
      0,
    );
    expect([...contributions]).toEqual([2 * u, -3 * u, 0].map((c) => expect.closeTo(c, 12)));
  });

  it("is taken from the one side that the result is known on, and is none where it is on neither", () => {
    const contributions = firstOrderContributions(
      readings,
      (index, value) => {
        if (index === 0 && value > 10) return Number.NaN;
        if (index === 1 && value < 10) return Number.NaN;
        return index === 2 ? Number.NaN : 5 * value;
      },
      50,
    );
    expect([...contributions]).toEqual([5 * u, 5 * u, 0].map((c) => expect.closeTo(c, 12)));
  });

  it("is not asked for where the reading is exact", () => {
    const exact = [drawnReading("armAngle", { values: [10], tol: 0 })];
    const contributions = firstOrderContributions(
      exact,
      () => {
        throw new Error("asked for");
      },
      1,
    );
    expect([...contributions]).toEqual([0]);
  });
});

describe("the shares of the margin of error", () => {
  it("are of the variance, the greatest first, those without a part left out", () => {
    // 3² + 4² = 5² (JCGM 100:2008, equation 10)
    const contributions = Float64Array.of(3, -4, 0);
    expect(combinedUncertainty(contributions)).toBe(5);
    expect(doubtShares(readings, contributions)).toEqual([
      { reading: "stop.freeHeight", share: expect.closeTo(0.64, 12) },
      { reading: "left.limits.0", share: expect.closeTo(0.36, 12) },
    ]);
  });

  it("are in order of their names where they are the same, whatever order they came in", () => {
    const names = (list: readonly DrawnReading[]) =>
      doubtShares(list, Float64Array.of(1, 1, 1)).map(({ reading }) => reading);
    expect(names(readings)).toEqual(["armAngle", "left.limits.0", "stop.freeHeight"]);
    expect(names(readings.toReversed())).toEqual(["armAngle", "left.limits.0", "stop.freeHeight"]);
  });

  it("are none where there is no doubt, or it is not known", () => {
    expect(doubtShares(readings, Float64Array.of(0, 0, 0))).toEqual([]);
    expect(doubtShares(readings, Float64Array.of(Number.NaN, 0, 1))).toEqual([]);
  });

  it("are none of a doubt so small that its square is 0", () => {
    expect(doubtShares(readings, Float64Array.of(1e-200, 0, -1e-200))).toEqual([]);
  });
});
