import { describe, expect, it } from "vitest";
import { inModelUnits } from "../../../src/physics/sentence.ts";
import type { LevelMean } from "../../../src/physics/stopTests/staticCurve.ts";
import { zeroOfTest } from "../../../src/physics/stopTests/zeroOfTest.ts";
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
      "Up to 15.3 mm there is almost no force. That is taken as a very progressive stop; if it was touched only there, count the depths in the file from there.",
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
    expect(faultCode(zeroOfTest(levels([-10, 500], [0, 1000], [10, 1500])))).toBe("depthNotTold");
  });

  it("what may be an offset of force is a remark", () => {
    // 100 N/mm through 300 N at depth 0.
    const { remarks } = given(zeroOfTest(levels([5, 800], [15, 1800], [25, 2800])));
    expect(remarks.map(({ sentence }) => inModelUnits(sentence))).toEqual([
      "Carried on in a straight line to depth 0 the force is 300 N, not 0. Whether the load cell's zero was off cannot be told from this file: let the test begin before the stop is touched.",
    ]);
    expect(told(levels([5, 500], [15, 1500], [25, 2500])).remarks).toEqual([]);
  });
});
