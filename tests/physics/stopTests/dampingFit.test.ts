import { describe, expect, it } from "vitest";
import { inModelUnits } from "../../../src/physics/sentence.ts";
import type { StaticPoint } from "../../../src/physics/stopTests/benchTest.ts";
import { dampingFit, pushWithSpeed } from "../../../src/physics/stopTests/dampingFit.ts";
import { faultCode, given } from "./outcomes.ts";

/** A stop of 100 N/mm, so that what a row at speed pushes beyond is its damping. */
const points: readonly StaticPoint[] = [10, 20, 30].map((depthMm) => ({
  depthMm,
  forceN: 100 * depthMm,
  standardErrorN: 0,
  rows: 1,
}));

type Row = readonly [depth: number, speed: number, beyond: number];

function moving(rows: readonly Row[]) {
  return {
    depthMm: Float64Array.from(rows, ([depth]) => depth),
    speedMmPerS: Float64Array.from(rows, ([, speed]) => speed),
    forceN: Float64Array.from(rows, ([depth, , beyond]) => 100 * depth + beyond),
  };
}

/** Rows of force c·v beyond the static one at each depth and speed, twice each. */
function rowsOf(
  depths: readonly number[],
  speeds: readonly number[],
  damping: (depth: number, speed: number) => number,
): Row[] {
  return depths.flatMap((depth) =>
    speeds.flatMap((speed): Row[] => {
      const row: Row = [depth, speed, damping(depth, speed) * speed];
      return [row, row];
    }),
  );
}

const told = (rows: readonly Row[]) => {
  const { table, remarks } = given(dampingFit(moving(rows), points));
  return { table, remarks: remarks.map(({ sentence }) => inModelUnits(sentence)) };
};

const notTested = (motion: string) =>
  `The stop was not tested at two speeds and two depths while ${motion}: its damping in that direction is taken as none.`;

describe("a direction that was not tested", () => {
  it("coming back: 0, and told", () => {
    const found = told(rowsOf([10, 20], [100, 200], () => 0.5));
    expect(found.remarks).toEqual([notTested("let back")]);
    expect(found.table.map((row) => row[1])).toEqual([
      expect.closeTo(0.5, 9),
      expect.closeTo(0.5, 9),
    ]);
    expect(found.table.map((row) => row[2])).toEqual([0, 0]);
  });

  it("pressing: 0, and told", () => {
    const found = told(rowsOf([10, 20], [-100, -200], () => 0.5));
    expect(found.remarks).toEqual([notTested("pressed")]);
    expect(found.table.map((row) => row[1])).toEqual([0, 0]);
  });
});

describe("a depth tested one way only", () => {
  it("takes the other way from its neighbours, and from the nearest past the ends", () => {
    const both = rowsOf([20, 30], [100, 200, -100, -200], (depth) => depth / 50);
    const pressed = rowsOf([10, 25, 35], [100, 200], (depth) => depth / 50);
    const { table } = told([...both, ...pressed]);
    const rebound = table.map(([depth, , value]) => [Math.round(depth), Number(value.toFixed(9))]);
    expect(rebound).toEqual([
      [10, 0.4],
      [20, 0.4],
      [25, 0.5],
      [30, 0.6],
      [35, 0.6],
    ]);
  });
});

describe("a damping that is not in proportion to speed", () => {
  const start = (grows: string, share: string) =>
    `The damping ${grows} with speed: the faster half of the speeds gives ${share} of the slower half's. The table is a mean of both; test near the speeds that matter.`;
  const speeds = [50, 100, 400, 800];
  const faster = (fast: number) => (_: number, speed: number) => (speed < 200 ? 0.4 : fast);

  it.each([
    [0.8, start("grows", "200 %")],
    [0.2, start("falls", "50 %")],
    [-0.1, start("falls", "0 %")],
  ])("fast %d, slow 0.4", (fast, sentence) => {
    expect(told(rowsOf([10, 20], speeds, faster(fast))).remarks).toContain(sentence);
  });

  it("is not told within a quarter, nor where the slow half shows none", () => {
    for (const damping of [faster(0.5), (_: number, speed: number) => (speed < 200 ? -0.2 : 0.4)]) {
      expect(told(rowsOf([10, 20], speeds, damping)).remarks).toEqual([notTested("let back")]);
    }
  });
});

describe("rows that give no damping", () => {
  it.each<[string, readonly Row[], readonly StaticPoint[], string]>([
    ["none", [], points, "staticRowsOnly"],
    ["no static curve", rowsOf([10, 20], [100, 200], () => 0.5), [], "noStaticRows"],
    ["one speed", rowsOf([10, 20], [100], () => 0.5), points, "tooFewSpeeds"],
    [
      "another speed at each depth",
      [...rowsOf([10], [100], () => 0.5), ...rowsOf([20], [200], () => 0.5)],
      points,
      "tooFewSpeeds",
    ],
    ["one depth", rowsOf([10], [100, 200], () => 0.5), points, "tooFewDepths"],
  ])("%s", (_, rows, curve, code) => {
    expect(faultCode(dampingFit(moving(rows), curve))).toBe(code);
  });
});

describe("whether the stop pushes with its speed", () => {
  const rows = rowsOf([10, 20], [100, -100], () => 0.5);

  it("1 where it does, −1 where the speed is counted the other way", () => {
    expect(pushWithSpeed(moving(rows), points)).toBeCloseTo(1, 12);
    const turned = rows.map(([depth, speed, beyond]): Row => [depth, -speed, beyond]);
    expect(pushWithSpeed(moving(turned), points)).toBeCloseTo(-1, 12);
  });

  it("0 where nothing tells, by the approach or without a curve", () => {
    expect(pushWithSpeed(moving(rows), [])).toBe(0);
    expect(pushWithSpeed(moving([[-5, 100, 3]]), points)).toBe(0);
  });
});
