import { describe, expect, it } from "vitest";
import { pchipSlopes } from "../../../src/physics/stop/pchip.ts";

// Worked by hand from the rules of Fritsch & Butland and of SciPy's ends; SciPy's own figures for rising
// data stand in tests/published/scipyPchip.ts.
describe("slopes at the knots", () => {
  it.each<[string, number[], number[], number[]]>([
    ["two knots: the secant at both", [0, 4], [0, 10], [2.5, 2.5]],
    ["a straight line: its slope", [0, 1, 3], [0, 2, 6], [2, 2, 2]],
    // Inside: w 2·2+1 = 5 and 2+2·1 = 4: 9/(5/1 + 4/2) = 9/7. Ends: (4·1 − 1·2)/3, (5·2 − 2·1)/3.
    ["uneven widths", [0, 1, 3], [0, 1, 5], [2 / 3, 9 / 7, 8 / 3]],
    ["a peak: level there", [0, 1, 2], [0, 1, 0], [2, 0, -2]],
    ["a level piece: level at both its ends", [0, 1, 2, 3], [0, 1, 1, 2], [1.5, 0, 0, 1.5]],
    // The end's three-point slope would be (3·1 + 10)/2 = 6.5: held at three times the secant.
    ["a fall far steeper than the rise before it", [0, 1, 2], [0, 1, -9], [3, 0, -15.5]],
    // (3·1 + 3)/2 = 3 is three times the secant exactly, and stays.
    ["a fall three times as steep", [0, 1, 2], [0, 1, -2], [3, 0, -5]],
    // (3·1 − 4)/2 is against the end secant: level.
    ["a rise that grows fourfold", [0, 1, 2], [0, 1, 5], [0, 1.6, 5.5]],
  ])("%s", (_, x, y, slopes) => {
    const got = pchipSlopes(x, y);
    expect(got).toHaveLength(slopes.length);
    slopes.forEach((slope, knot) => {
      expect(got[knot]).toBeCloseTo(slope, 12);
    });
  });
});
