import { describe, expect, it } from "vitest";
import type { StaticPoint } from "../../../src/physics/stopTests/benchTest.ts";
import { levelMeans } from "../../../src/physics/stopTests/levelMeans.ts";
import { residualsFrom } from "../../../src/physics/stopTests/residuals.ts";
import {
  curveThrough,
  staticCurve,
  staticErrorAt,
} from "../../../src/physics/stopTests/staticCurve.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";
import { given } from "./outcomes.ts";

type Row = readonly [depthMm: number, forceN: number];

const depthsOf = (rows: readonly Row[]) => Float64Array.from(rows, ([depth]) => depth);
const forcesOf = (rows: readonly Row[]) => Float64Array.from(rows, ([, force]) => force);
const meansOf = (rows: readonly Row[]) => levelMeans(depthsOf(rows), forcesOf(rows));
const curveOf = (rows: readonly Row[]) => given(staticCurve(depthsOf(rows), forcesOf(rows)));

function refusal(rows: readonly Row[]): string {
  const outcome = staticCurve(depthsOf(rows), forcesOf(rows));
  return outcome.ok ? "none" : `${outcome.fault.code}: ${inModelUnits(outcome.fault.sentence)}`;
}

const point = (depthMm: number, forceN: number, standardErrorN = 0): StaticPoint => ({
  depthMm,
  forceN,
  standardErrorN,
  rows: 1,
});

describe("the means of the levels", () => {
  it("come by rising depth, whatever the order of the rows", () => {
    const means = meansOf([
      [20, 210],
      [10, 98],
      [30, 300],
      [10, 102],
      [20, 190],
    ]);
    expect(means.map(({ depthMm, forceN, rows }) => [depthMm, forceN, rows])).toEqual([
      [10, 100, 2],
      [20, 200, 2],
      [30, 300, 1],
    ]);
  });

  it("at one depth have the scatter about the mean over √rows", () => {
    const [two, three, one] = meansOf([
      [10, 98],
      [10, 102],
      [20, 203],
      [20, 200],
      [20, 197],
      [30, 300],
    ]);
    // Σ = 8 over 1, over 2 rows; Σ = 18 over 2, over 3 rows; one row tells nothing.
    expect(two?.standardErrorN).toBeCloseTo(Math.sqrt(8 / 2), 12);
    expect(three?.standardErrorN).toBeCloseTo(Math.sqrt(18 / 2 / 3), 12);
    expect(one?.standardErrorN).toBe(0);
  });

  it("over a few depths have the scatter about the level's own line over √rows", () => {
    const [level, slanted] = meansOf([
      [10, 107],
      [8, 90],
      [9, 103],
      [200, 500],
      [201, 600],
    ]);
    // The line of 8.5 N/mm through (9, 100) leaves −1.5 3 −1.5: Σ = 13.5 over 3 − 2, over 3 rows.
    expect(level?.depthMm).toBeCloseTo(9, 12);
    expect(level?.forceN).toBeCloseTo(100, 12);
    expect(level?.standardErrorN).toBeCloseTo(Math.sqrt(13.5 / 3), 9);
    // Two rows at two depths: any line goes through them.
    expect(slanted?.standardErrorN).toBe(0);
  });

  it("leave out the levels of a sweep that hold no row", () => {
    // 24 rows from 0 to 3.68 mm in steps of 0.16 mm and the last at 16 mm: 4 levels of 4 mm, two empty.
    const rows = Array.from({ length: 24 }, (_, at): Row => [0.16 * at, 16 * at]);
    const means = meansOf([...rows, [16, 1600]]);
    expect(means.map(({ rows: count }) => count)).toEqual([24, 1]);
  });
});

describe("the static curve", () => {
  it("is the means where they rise, with their doubt", () => {
    const { curve, remarks } = curveOf([
      [10, 98],
      [10, 102],
      [20, 300],
      [30, 620],
      [30, 580],
    ]);
    expect(curve.points).toEqual([
      { depthMm: 10, forceN: 100, standardErrorN: 2, rows: 2 },
      { depthMm: 20, forceN: 300, standardErrorN: 0, rows: 1 },
      { depthMm: 30, forceN: 600, standardErrorN: 20, rows: 2 },
    ]);
    expect(curve.rows).toBe(5);
    // What the rows are off the means: −2 2 0 20 −20.
    expect([...curve.residuals.residualN].map((residual) => Math.round(1e9 * residual))).toEqual(
      [-2, 2, 0, 20, -20].map((residual) => 1e9 * residual),
    );
    expect([...curve.residuals.depthMm]).toEqual([10, 10, 20, 30, 30]);
    expect(curve.residuals.rmsN).toBeCloseTo(Math.sqrt(808 / 5), 9);
    expect(curve.residuals.greatestN).toBeCloseTo(20, 9);
    expect(remarks).toEqual([]);
  });

  it("pools a level whose mean falls with its neighbour, by their rows", () => {
    const { curve, remarks } = curveOf([
      [10, 104],
      [10, 96],
      [20, 82],
      [20, 78],
      [20, 80],
      [20, 80],
      [30, 300],
    ]);
    // Two rows of 100 N at 10 mm and four of 80 N at 20 mm: 520/6 N at 100/6 mm. Errors: 4 N with a share
    // of 1/3 (Σ = 32 over 1, over 2 rows), √(8/3/4) N with one of 2/3.
    expect(curve.points).toHaveLength(2);
    const [pooled, last] = curve.points as [StaticPoint, StaticPoint];
    expect(pooled.depthMm).toBeCloseTo(100 / 6, 9);
    expect(pooled.forceN).toBeCloseTo(520 / 6, 9);
    expect(pooled.rows).toBe(6);
    expect(pooled.standardErrorN).toBeCloseTo(Math.hypot(4 / 3, (2 / 3) * Math.sqrt(2 / 3)), 9);
    expect(last).toEqual({ depthMm: 30, forceN: 300, standardErrorN: 0, rows: 1 });
    expect(remarks.map(({ code, sentence }) => [code, inModelUnits(sentence)])).toEqual([
      [
        "madeMonotone",
        "At 1 depth the mean force fell below that of a smaller depth. It was pooled with its neighbor so that the curve rises.",
      ],
    ]);
  });

  it("tells how many levels were pooled", () => {
    const { remarks } = curveOf([
      [10, 100],
      [20, 90],
      [30, 80],
      [40, 400],
      [50, 390],
      [60, 500],
    ]);
    expect(remarks.map(({ sentence }) => inModelUnits(sentence))).toEqual([
      "At 3 depths the mean force fell below that of a smaller depth. They were pooled with their neighbors so that the curve rises.",
    ]);
  });

  it("leaves what does not push, or is not deeper than 0, to its beginning", () => {
    const { curve, remarks } = curveOf([
      [-10, 5],
      [0, 10],
      [10, 200],
      [20, 400],
    ]);
    expect(curve.points.map(({ depthMm }) => depthMm)).toEqual([10, 20]);
    expect(remarks).toEqual([]);
    // −20 and −30 N at 5 and 10 mm are pooled, but nothing of the curve.
    const pulling = curveOf([
      [5, -20],
      [10, -30],
      [15, 0],
      [20, 400],
      [30, 600],
    ]);
    expect(pulling.curve.points.map(({ depthMm }) => depthMm)).toEqual([20, 30]);
    expect(pulling.remarks).toEqual([]);
  });

  it("is refused in a sentence where there is none", () => {
    expect(refusal([])).toBe(
      "noStaticRows: No row of this test was taken slowly. So the static curve is not known, and the force at speed says nothing. Add rows of a slow test.",
    );
    const tooFew =
      "tooFewStaticRows: The static rows push at fewer than two depths, which gives no curve. Press the stop slowly to several depths and test again.";
    expect(refusal([[10, 100]])).toBe(tooFew);
    expect(
      refusal([
        [0, 0],
        [10, 100],
      ]),
    ).toBe(tooFew);
    expect(
      refusal([
        [10, 100],
        [20, 200],
      ]),
    ).toBe("none");
  });
});

describe("the curve through points", () => {
  it("meets them, and goes on straight past the last one to ten times its depth", () => {
    const curve = curveThrough([point(10, 100), point(20, 300), point(30, 900)]);
    expect([0, 10, 20, 30].map((depth) => curve?.force(depth))).toEqual([0, 100, 300, 900]);
    const rate = curve?.slope(30) ?? 0;
    expect(rate).toBeGreaterThan(60);
    expect(curve?.force(300)).toBeCloseTo(900 + 270 * rate, 6);
  });

  it("is none through none", () => {
    expect(curveThrough([])).toBeNull();
  });
});

describe("residuals", () => {
  it("are all shown up to two thousand, a fair sample of more; their figures are of all", () => {
    const rows = (count: number) => Float64Array.from({ length: count }, (_, row) => row);
    const all = residualsFrom(rows(2000), rows(2000));
    expect(all.depthMm).toHaveLength(2000);
    const depths = rows(3999);
    // 3 and −4 in turn, and a −50 that is not of the sample, every second row.
    const residuals = depths.map((row) => (row === 1001 ? -50 : row % 2 === 0 ? 3 : -4));
    const found = residualsFrom(depths, residuals);
    expect(found.depthMm).toHaveLength(2000);
    expect([...found.depthMm.slice(0, 3)]).toEqual([0, 2, 4]);
    expect(found.residualN.every((residual) => residual === 3)).toBe(true);
    expect(found.greatestN).toBe(50);
    expect(found.rmsN).toBeCloseTo(Math.sqrt((2000 * 9 + 1998 * 16 + 2500) / 3999), 9);
  });

  it("of no rows are 0", () => {
    const none = residualsFrom(new Float64Array(), new Float64Array());
    expect(none).toMatchObject({ rmsN: 0, greatestN: 0 });
  });
});

describe("the doubt of the static force at a depth", () => {
  const points = [point(10, 100, 1), point(20, 200, 2), point(40, 500, 4)];

  it("is that of the nearest point, of the lesser where two are as near", () => {
    expect([-5, 10, 14, 15, 16, 29, 30, 31, 400].map((x) => staticErrorAt(points, x))).toEqual([
      1, 1, 1, 1, 2, 2, 2, 4, 4,
    ]);
  });

  it("is 0 without any", () => {
    expect(staticErrorAt([], 10)).toBe(0);
  });
});
