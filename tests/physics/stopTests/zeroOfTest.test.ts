import { describe, expect, it } from "vitest";
import type { LevelMean } from "../../../src/physics/stopTests/levelMeans.ts";
import { zeroOfTest } from "../../../src/physics/stopTests/zeroOfTest.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";
import { faultCode, given } from "./outcomes.ts";

/** Levels [depth mm, force N] of one row each, without scatter. */
function levels(...points: readonly (readonly [number, number])[]): readonly LevelMean[] {
  return points.map(([depthMm, forceN]) => ({ depthMm, forceN, standardErrorN: 0, rows: 1 }));
}

function told(of: readonly LevelMean[]) {
  const { depthMm, forceN, remarks } = given(zeroOfTest(of));
  return { depthMm, forceN, remarks: remarks.map(({ code }) => code) };
}

describe("where a test begins", () => {
  it("is left alone with too few levels to tell", () => {
    expect(told([])).toEqual({ depthMm: 0, forceN: 0, remarks: [] });
    expect(told(levels([0, 50], [10, 500]))).toEqual({ depthMm: 0, forceN: 0, remarks: [] });
  });

  it("an approach that ends at the file's own 0 takes the load cell's zero alone", () => {
    expect(told(levels([-10, 20], [-5, 20], [0, 20], [5, 520], [10, 1020]))).toEqual({
      depthMm: 0,
      forceN: 20,
      remarks: ["forceZero"],
    });
  });

  it("an approach that ends elsewhere takes the first touch, where the line comes down to it", () => {
    // 100 N/mm from 12 mm on: between the levels of 10 and 15 mm.
    const found = told(levels([0, 0], [5, 0], [10, 0], [15, 300], [20, 800], [25, 1300]));
    expect(found).toEqual({ depthMm: 12, forceN: 0, remarks: ["depthZero"] });
  });

  it("a test that never touches ends at its last level", () => {
    const flat = told(levels([10, 3], [20, 3], [30, 3]));
    expect(flat).toEqual({ depthMm: 30, forceN: 3, remarks: ["forceZero", "depthZero"] });
  });

  it("an approach with a single level after it has its touch at its own end", () => {
    const found = told(levels([20, 0], [30, 0], [40, 1000]));
    expect(found).toEqual({ depthMm: 30, forceN: 0, remarks: ["depthZero"] });
  });

  it("a very progressive stop's own 0 stays, with a word", () => {
    // Flat to a thousandth of 9000 N up to 15 mm; the next 4 N/mm come down to 1.25 N at 15.3 mm.
    const { remarks, depthMm } = given(
      zeroOfTest(levels([0, 0], [5, 0], [10, 0], [15, 5], [20, 20], [30, 60], [60, 9000])),
    );
    expect(depthMm).toBe(0);
    expect(remarks.map(({ sentence }) => inModelUnits(sentence))).toEqual([
      "Up to 15.3 mm there is almost no force. That is taken as a very progressive stop. If it was touched only there, count the depths in the file from there.",
    ]);
  });

  it("a force at depth 0 is the load cell's", () => {
    expect(told(levels([0, 60], [10, 560], [20, 1060]))).toEqual({
      depthMm: 0,
      forceN: 60,
      remarks: ["forceZero"],
    });
    expect(told(levels([0, 5], [10, 505], [20, 1005])).forceN).toBe(0);
  });

  it("positions far from 0 at almost no force are taken from their first", () => {
    expect(told(levels([200, 10], [220, 1000], [240, 2000]))).toEqual({
      depthMm: 200,
      forceN: 0,
      remarks: ["depthZero"],
    });
    expect(told(levels([-50, 10], [-30, 1000], [-10, 2000])).depthMm).toBe(-50);
  });

  it("a stop that pushes below 0 is refused", () => {
    const outcome = zeroOfTest(levels([-10, 500], [0, 1000], [10, 1500]));
    expect(faultCode(outcome)).toBe("depthNotTold");
    expect(outcome.ok ? "" : inModelUnits(outcome.fault.sentence)).toBe(
      "The stop already pushes at depths below 0, so it cannot be told where it is first touched. Measure the depth from the first touch, or let the test begin before it.",
    );
  });

  it("what may be an offset of force is a remark", () => {
    // 100 N/mm through 300 N at depth 0.
    const { remarks } = given(zeroOfTest(levels([5, 800], [15, 1800], [25, 2800])));
    expect(remarks.map(({ sentence }) => inModelUnits(sentence))).toEqual([
      "Carried on in a straight line to depth 0 the force is 300 N, not 0. Whether the load cell's zero was off can't be told from this file. Let the test begin before the stop is touched.",
    ]);
    expect(told(levels([5, 500], [15, 1500], [25, 2500])).remarks).toEqual([]);
  });
});

describe("what was put right", () => {
  it("is told in words", () => {
    const { remarks } = given(zeroOfTest(levels([0, 100], [30, 100], [60, 350], [100, 1100])));
    // 18.75 N/mm come down to 100 N at 60 − 250/18.75 mm.
    expect(remarks.map(({ sentence }) => inModelUnits(sentence))).toEqual([
      "Free of load the file shows 100 N; that was taken off every force.",
      "The stop is first touched at 46.7 mm in the file; every depth was taken from there.",
    ]);
  });
});

// From here on all depths span 100 mm and all forces 1000 N, so that a share of a hundredth is 1 mm and 10 N.

describe("an approach", () => {
  it("takes the mean of its forces off, from half a hundredth of the span on, either way", () => {
    const resting = (force: number) =>
      told(levels([-20, force], [-10, force], [0, force], [40, 500 + force], [80, 1000 + force]));
    expect(resting(5)).toEqual({ depthMm: 0, forceN: 0, remarks: [] });
    expect(resting(5.5)).toEqual({ depthMm: 0, forceN: 5.5, remarks: ["forceZero"] });
    expect(resting(-5.5)).toEqual({ depthMm: 0, forceN: -5.5, remarks: ["forceZero"] });
    const uneven = levels([-20, 20], [-10, 20.25], [0, 21], [40, 520], [80, 1020]);
    expect(told(uneven).forceN).toBeCloseTo(61.25 / 3, 12);
  });

  it("leaves the depth alone within two hundredths of the span", () => {
    // 12.5 N/mm down to 2, 2.5 and −5 mm.
    expect(told(levels([-20, 0], [-10, 0], [0, 0], [42, 500], [80, 975])).depthMm).toBe(0);
    expect(told(levels([-20, 0], [-10, 0], [0, 0], [42.5, 500], [80, 968.75])).depthMm).toBe(2.5);
    expect(told(levels([-20, 0], [-10, 0], [35, 500], [80, 1062.5]))).toEqual({
      depthMm: -5,
      forceN: 0,
      remarks: ["depthZero"],
    });
  });

  it("ends between its last level and the next one", () => {
    // 2.5 N/mm would come down to −140 mm, a fall of 10 N/mm to 110 mm.
    expect(told(levels([0, 0], [30, 0], [60, 500], [100, 600])).depthMm).toBe(30);
    expect(told(levels([0, 0], [30, 0], [60, 500], [100, 100])).depthMm).toBe(60);
  });

  it("is flat to a thousandth of the span of force", () => {
    const second = (force: number) =>
      told(levels([0, 0], [30, force], [60, 250], [100, 1000])).remarks;
    expect(second(1)).toEqual(["depthZero"]);
    expect(second(1.1)).toEqual([]);
    expect(told(levels([0, 1], [30, 0], [60, 251], [100, 1000])).remarks).toEqual(["depthZero"]);
    expect(told(levels([0, 1.1], [30, 0], [60, 251], [100, 1000])).remarks).toEqual([]);
  });

  it("is flat to four of the greatest standard errors in it", () => {
    const doubted = (...errors: readonly number[]) =>
      told(
        levels([0, 0], [30, 40], [60, 400], [100, 1000]).map((level, place) => ({
          ...level,
          standardErrorN: errors[place] ?? 0,
        })),
      ).remarks;
    expect(doubted(10, 0)).toEqual(["forceZero", "depthZero"]);
    expect(doubted(3, 10)).toEqual(["forceZero", "depthZero"]);
    expect(doubted(9, 9)).toEqual([]);
  });

  it("has two levels at least, over a fifth of the depths or up to about 0", () => {
    expect(told(levels([10, 0], [30, 0], [60, 500], [110, 1000])).remarks).toEqual(["depthZero"]);
    expect(told(levels([10, 0], [29, 0], [60, 500], [110, 1000])).remarks).toEqual([]);
    // 12.5 N/mm down to the end at 2 mm; one that ends at 2.5 mm begins below 0 all the same.
    expect(told(levels([-3, 0], [2, 0], [47, 562.5], [97, 1187.5])).depthMm).toBe(0);
    expect(told(levels([-3, 0], [2.5, 0], [47, 562.5], [97, 1187.5])).depthMm).toBe(-3);
  });
});

describe("an approach that holds the file's own 0", () => {
  /** Flat up to `end`, 4 N/mm from 2.5 mm before `end + 5` on, then far steeper. */
  const creeping = (first: number, end: number, deepest: number, offset = 0) =>
    told(
      levels(
        [first, offset],
        [first + 8, offset],
        [end, offset],
        [end + 5, 10 + offset],
        [end + 15, 50 + offset],
        [deepest, 9000 + offset],
      ),
    );

  it("is a soft start where the force creeps up from there", () => {
    const soft = { depthMm: 0, forceN: 0, remarks: ["softStart"] };
    expect(creeping(2, 25, 102)).toEqual(soft);
    // The force leaves 0 at 3.5 mm, 2.5 mm before 6 mm.
    expect(told(levels([-30, 0], [-20, 0], [-2, 0], [6, 10], [16, 50], [70, 9000]))).toEqual(soft);
    expect(creeping(2, 25, 102, 60)).toEqual({
      depthMm: 0,
      forceN: 60,
      remarks: ["forceZero", "softStart"],
    });
  });

  it("holds it within two hundredths of the span", () => {
    expect(creeping(2.5, 25, 102.5)).toEqual({
      depthMm: 27.5,
      forceN: 0,
      remarks: ["depthZero"],
    });
    expect(told(levels([-30, 0], [-20, 0], [-3, 0], [6, 10], [16, 50], [70, 9000]))).toEqual({
      depthMm: 3.5,
      forceN: 0,
      remarks: ["depthZero"],
    });
  });

  it("is none where 3 % of the force are there at 15 % of the remaining depth", () => {
    // Left at 27.5 mm: 15 % of the 80 mm to the deepest are 12 mm.
    const at = (force: number, offset: number) =>
      told(
        levels(
          [2, offset],
          [10, offset],
          [25, offset],
          [30, 10 + offset],
          [34, 26 + offset],
          [39.5, force + offset],
          [50, 5000 + offset],
          [107.5, 9000 + offset],
        ),
      ).remarks;
    expect(at(270, 0)).toEqual(["depthZero"]);
    expect(at(269, 0)).toEqual(["softStart"]);
    expect(at(270, 60)).toEqual(["forceZero", "depthZero"]);
    expect(at(269, 60)).toEqual(["forceZero", "softStart"]);
  });
});

describe("a test that begins about depth 0", () => {
  it("has the load cell's zero where its first line meets 0, beyond a hundredth of the span", () => {
    const zero = (...points: readonly (readonly [number, number])[]) =>
      told(levels(...points)).forceN;
    // 10 N/mm through 60 N at 2 mm.
    expect(zero([2, 60], [12, 160], [102, 1060])).toBe(40);
    expect(zero([2, -20], [12, 80], [102, 980])).toBe(-40);
    expect(zero([-2, 20], [8, 120], [98, 1020])).toBe(40);
    expect(zero([2, 30], [12, 130], [102, 1030])).toBe(0);
    expect(zero([2, 30.5], [12, 130.5], [102, 1030.5])).toBe(10.5);
    expect(zero([2, 9.5], [12, 109.5], [102, 1009.5])).toBe(-10.5);
  });

  it("begins there within two hundredths of the span", () => {
    expect(told(levels([2.5, 65], [12.5, 165], [102.5, 1065]))).toEqual({
      depthMm: 0,
      forceN: 0,
      remarks: ["zeroNotTold"],
    });
  });
});

describe("a test that begins far from depth 0", () => {
  const from = (depth: number, force: number) =>
    told(levels([depth, force], [depth + 40, 500 + force], [depth + 100, 1000 + force])).depthMm;

  it("is of positions where its first force is within 3 % of the span, either way", () => {
    expect(from(200, 30)).toBe(200);
    expect(from(200, 31)).toBe(0);
    expect(from(200, -30)).toBe(200);
    expect(from(200, -31)).toBe(0);
  });

  it("begins at more than three tenths of the deepest", () => {
    expect(told(levels([30, 10], [60, 500], [100, 1010])).depthMm).toBe(0);
    expect(told(levels([31, 10], [60, 500], [100, 1010])).depthMm).toBe(31);
  });
});

describe("what cannot be told from a test that begins past the first touch", () => {
  it("is a flat stretch of three levels before the force rises at once", () => {
    // 15 % of the 90 mm from 15 mm on are 13.5 mm.
    const stretch = (force: number, offset: number) =>
      given(
        zeroOfTest(
          levels(
            [5, offset],
            [10, offset],
            [15, offset],
            [28.5, force + offset],
            [60, 500 + offset],
            [105, 1000 + offset],
          ),
        ),
      ).remarks.map(({ sentence }) => inModelUnits(sentence).slice(0, 43));
    expect(stretch(30, 0)).toEqual(["Up to 15.0 mm there is almost no force. Tha"]);
    expect(stretch(29, 0)).toEqual([]);
    expect(stretch(30, 20)).toEqual(["Up to 15.0 mm there is almost no force. Tha"]);
    expect(stretch(29, 20)).toEqual([]);
    expect(told(levels([5, 0], [15, 0], [28.5, 500], [105, 1000])).remarks).toEqual([]);
  });

  const carriedTo = (atZero: number, ...errors: readonly number[]) =>
    told(
      levels([5, 100 + atZero], [15, 300 + atZero], [105, 1100 + atZero]).map((level, place) => ({
        ...level,
        standardErrorN: errors[place] ?? 0,
      })),
    ).remarks;

  it("is a force that its first line has at 0, of more than 2 % of the span", () => {
    expect(carriedTo(20)).toEqual([]);
    expect(carriedTo(20.5)).toEqual(["zeroNotTold"]);
  });

  it("is none within four standard errors of either of the two", () => {
    expect(carriedTo(50, 12, 12)).toEqual(["zeroNotTold"]);
    expect(carriedTo(50, 12.5, 0)).toEqual([]);
    expect(carriedTo(50, 0, 12.5)).toEqual([]);
  });
});
