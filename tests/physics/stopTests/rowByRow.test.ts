import { describe, expect, it } from "vitest";
import { analyseRows } from "../../../src/physics/stopTests/analyseRows.ts";
import type { RowsOptions } from "../../../src/physics/stopTests/benchTest.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";
import { fromRows } from "./generatedTests.ts";
import { given } from "./outcomes.ts";

/*
 * Rows of a stop of 100 N/mm with a dashpot of 0.5 N·s/mm: [depth mm, speed mm/s, force N].
 */
type Row = readonly [number, number, number];

const row = (depth: number, speed: number, more = 0): Row => [
  depth,
  speed,
  100 * depth + (Math.abs(speed) > 5 ? 0.5 * speed : 0) + more,
];
const still: readonly Row[] = [10, 20, 30, 40].map((depth) => row(depth, 0));

const analysed = (rows: readonly Row[], options?: RowsOptions) =>
  given(analyseRows(fromRows(rows), options));
const sentences = (rows: readonly Row[]) =>
  analysed(rows).remarks.map(({ sentence }) => inModelUnits(sentence));

function refusal(rows: readonly Row[]): string {
  const outcome = analyseRows(fromRows(rows));
  return outcome.ok ? "none" : `${outcome.fault.code}: ${inModelUnits(outcome.fault.sentence)}`;
}

describe("the rows of a test", () => {
  it("are four at least", () => {
    expect(refusal(still.slice(1))).toBe(
      "tooFewRows: The file holds fewer than four usable rows. A curve needs more: test at several depths.",
    );
    expect(refusal(still)).toBe("none");
  });

  it("are counted, with the range of their depth", () => {
    expect(analysed([row(15, 0), ...still, row(12, 0)])).toMatchObject({
      kind: "rows",
      rows: 6,
      staticSpeedMmPerS: 5,
      depthRangeMm: [10, 40],
    });
  });

  it("are static up to 5 mm/s, or another speed that is given, either way", () => {
    const rows = [...still, row(25, 5), row(35, -5), row(15, 5.1), row(15, -5.1)];
    const found = analysed(rows);
    expect(given(found.staticCurve).rows).toBe(6);
    expect(found.speeds.map(({ speedMmPerS }) => speedMmPerS)).toEqual([0, 5.1, -5.1]);
    const slower = analysed(rows, { staticSpeedMmPerS: 4.9 });
    expect(slower.staticSpeedMmPerS).toBe(4.9);
    expect(given(slower.staticCurve).rows).toBe(4);
  });

  it("take each other's units where depth and force change places", () => {
    // A number of the file is 2 mm as a depth and 10 N as a force; each stands in the other's column.
    const found = analysed(
      still.map(([depth, speed, force]): Row => [2 * (force / 10), speed, 10 * (depth / 2)]),
      { factors: { depth: 2, speed: 1, force: 10 } },
    );
    expect(found.remarks.map(({ code }) => code)).toEqual(["columnsSwapped"]);
    expect(given(found.staticCurve).points.map((each) => [each.depthMm, each.forceN])).toEqual([
      [10, 1000],
      [20, 2000],
      [30, 3000],
      [40, 4000],
    ]);
  });

  it("have the approach and the load cell's zero taken off", () => {
    // The touch at 112 mm, 25 N before it, at the greatest static speed.
    const approach = [-20, -10, 0].map((depth): Row => [depth + 112, 5, 25]);
    const pressed = [...still, row(20, 100), row(30, 100)].map(([depth, speed, force]): Row => {
      return [depth + 112, speed, force + 25];
    });
    const found = analysed([...approach, ...pressed]);
    expect(found.remarks.map(({ code }) => code)).toEqual(["forceZero", "depthZero"]);
    expect(found.depthRangeMm).toEqual([-20, 40]);
    expect(found.speeds.map((each) => [[...each.depthMm], [...each.forceN]])).toEqual([
      [
        [-20, -10, 0, 10, 20, 30, 40],
        [0, 0, 0, 1000, 2000, 3000, 4000],
      ],
      [
        [20, 30],
        [2050, 3050],
      ],
    ]);
    expect(given(found.staticCurve).points.map((each) => [each.depthMm, each.forceN])).toEqual([
      [10, 1000],
      [20, 2000],
      [30, 3000],
      [40, 4000],
    ]);
  });
});

describe("what is told of a test", () => {
  it("comes in the order of the work: zeros, curve, damping", () => {
    const rows = [
      ...still,
      row(25, 0, -600),
      row(20, 100),
      row(20, 200),
      row(30, 100),
      row(30, 200),
    ];
    expect(analysed(rows).remarks.map(({ code }) => code)).toEqual([
      "madeMonotone",
      "reboundNotTested",
    ]);
  });
});

describe("the series of a plot", () => {
  it("are one a speed: at rest, pressed and let back, slowest first, each by its depth", () => {
    const found = analysed([
      row(30, 299),
      row(10, 301),
      row(20, -100),
      ...[...still].reverse(),
      row(20, 101),
      row(30, -300),
      row(10, 99),
      row(15, -100),
    ]);
    expect(
      found.speeds.map((each) => [
        each.speedMmPerS,
        each.rows,
        [...each.depthMm],
        [...each.forceN],
      ]),
    ).toEqual([
      [0, 4, [10, 20, 30, 40], [1000, 2000, 3000, 4000]],
      [100, 2, [10, 20], [1049.5, 2050.5]],
      [300, 2, [10, 30], [1150.5, 3149.5]],
      [-100, 2, [15, 20], [1450, 1950]],
      [-300, 1, [30], [2850]],
    ]);
  });

  it("are none of rows at rest where there are none, and none at speed where there are none", () => {
    const moving = analysed([10, 20, 30, 40].map((depth) => row(depth, 100)));
    expect(moving.speeds.map(({ speedMmPerS }) => speedMmPerS)).toEqual([100]);
    expect(analysed(still).speeds.map(({ speedMmPerS }) => speedMmPerS)).toEqual([0]);
  });

  it("show five hundred rows at most", () => {
    const swept = Array.from({ length: 999 }, (_, at) => row(40 - at * 0.04, 0));
    const [all] = analysed(swept.slice(0, 500)).speeds;
    expect(all?.depthMm).toHaveLength(500);
    const [sample] = analysed(swept).speeds;
    expect(sample?.rows).toBe(999);
    expect(sample?.depthMm).toHaveLength(500);
    // Every second row, from the deepest on: 0.08 mm apart.
    expect(sample?.depthMm[0]).toBeCloseTo(40 - 998 * 0.04, 9);
    expect(sample?.depthMm[499]).toBeCloseTo(40, 9);
    expect(sample?.forceN[499]).toBeCloseTo(4000, 6);
  });
});

describe("a speed that is counted the other way", () => {
  /** Four rows at 100 mm/s with these forces beyond the static one. */
  const pushing = (...beyond: readonly number[]): Row[] => [
    ...still,
    ...beyond.map((more, at): Row => [10 + 10 * at, 100, 1000 + 1000 * at + more]),
  ];

  it("is turned where the force falls with it by a correlation of more than 0.2", () => {
    // Σy/√(4·Σy²): −12/56 and −10/√2800.
    const turned = analysed(pushing(10, 10, -10, -22));
    expect(turned.remarks[0]?.code).toBe("speedReversed");
    expect(turned.speeds.map(({ speedMmPerS }) => speedMmPerS)).toEqual([0, -100]);
    const kept = analysed(pushing(10, 10, -10, -20));
    expect(kept.remarks).toEqual([]);
    expect(kept.speeds.map(({ speedMmPerS }) => speedMmPerS)).toEqual([0, 100]);
  });

  it("is told in words, and damping is that of the turned rows", () => {
    const rows = [20, 30].flatMap((depth) =>
      [100, 200, -100, -200].map((speed): Row => [depth, -speed, 100 * depth + 0.5 * speed]),
    );
    expect(sentences([...still, ...rows])).toEqual([
      "The file counts speed as positive while the stop comes back; it was turned, as damping never adds energy.",
    ]);
    const { table } = given(analysed([...still, ...rows]).damping);
    for (const [place, depth] of [20, 30].entries()) {
      expect(table[place]?.[0]).toBe(depth);
      expect(table[place]?.[1]).toBeCloseTo(0.5, 9);
      expect(table[place]?.[2]).toBeCloseTo(0.5, 9);
    }
  });
});
