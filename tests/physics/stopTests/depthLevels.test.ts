import { describe, expect, it } from "vitest";
import { depthLevels } from "../../../src/physics/stopTests/depthLevels.ts";

const of = (...depths: readonly number[]) => depthLevels(Float64Array.from(depths));
const steps = (count: number, step: number) => Array.from({ length: count }, (_, at) => at * step);

describe("depths that were held", () => {
  it("are levels, parted half-way between their ends, whatever their order", () => {
    const { count, levelOf } = of(20, 0, 10.1, 0.1, 10, 19.9);
    expect(count).toBe(3);
    // Half-way: 5.05 and 15.
    expect([-5, 0, 5.04, 5.06, 10, 14.9, 15.1, 300].map(levelOf)).toEqual([0, 0, 0, 1, 1, 1, 2, 2]);
    // A depth just half-way belongs to the lesser.
    expect(of(0, 10, 20).levelOf(5)).toBe(0);
    expect(of(0, 10, 20).levelOf(15)).toBe(1);
  });

  it("are one where there is but one", () => {
    expect(of(7).count).toBe(1);
    expect(of(7, 7, 7).levelOf(7)).toBe(0);
    // Apart by a millionth of a micrometre, at most.
    expect(of(7, 7 + 1e-12).count).toBe(1);
    expect(of(0, 1e-9).count).toBe(1);
  });

  it("are found in order by halving, however many", () => {
    const { count, levelOf } = of(...steps(40, 10));
    expect(count).toBe(40);
    expect(steps(40, 10).map(levelOf)).toEqual(steps(40, 1));
  });

  it("are a hundredth of the range apart at least", () => {
    expect(of(0, 1.01, 100).count).toBe(3);
    expect(of(0, 0.99, 100).count).toBe(2);
    expect(of(1000, 1001.01, 1100).count).toBe(3);
  });

  it("may drift by half of the narrowest gap", () => {
    // A run of 7 mm with 15 mm to the next, then one of 8 mm.
    expect(of(...steps(8, 1), 22, 100).count).toBe(3);
    // One of 7.5 mm with 15 mm to the next: just half.
    const half = of(...steps(16, 0.5), 22.5, 100);
    expect([14.9, 15.1, 61, 62].map(half.levelOf)).toEqual([0, 1, 1, 2]);
    // 8 rows over 8 mm beside a gap of 15 mm: swept, and few rows make two levels.
    const swept = of(...steps(9, 1), 23, 100);
    expect(swept.count).toBe(2);
    expect([0, 49, 51, 100].map(swept.levelOf)).toEqual([0, 0, 1, 1]);
    // The last run counts as well.
    expect(of(0, 15, ...steps(8, 1).map((x) => 93 + x)).count).toBe(3);
    expect(of(0, 15, ...steps(9, 1).map((x) => 92 + x)).count).toBe(2);
  });
});

describe("depths that were swept", () => {
  it("are cut into equal widths of at least six rows, 40 at most", () => {
    expect(of(...steps(120, 0.1)).count).toBe(20);
    expect(of(...steps(125, 0.1)).count).toBe(20);
    expect(of(...steps(6000, 0.01)).count).toBe(40);
    // Too many to be held depths: 41 of them, six rows each.
    expect(of(...steps(41, 10)).count).toBe(6);
  });

  it("belong to the end levels beyond the ends", () => {
    // 241 rows from 5 to 29 mm: 40 levels of 0.6 mm.
    const { count, levelOf } = of(...steps(241, 0.1).map((x) => 5 + x));
    expect(count).toBe(40);
    expect([0, 5, 5.59, 5.61, 16.9, 17.1, 28.39, 28.41, 29, 50].map(levelOf)).toEqual([
      0, 0, 0, 1, 19, 20, 38, 39, 39, 39,
    ]);
  });
});
