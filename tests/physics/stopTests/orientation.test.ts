import { describe, expect, it } from "vitest";
import { inModelUnits } from "../../../src/physics/sentence.ts";
import { orientRows } from "../../../src/physics/stopTests/orientation.ts";
import { fromRows } from "./generatedTests.ts";
import { given } from "./outcomes.ts";

type Row = readonly [number, number, number];

const codes = (rows: readonly Row[], staticSpeedMmPerS?: number) =>
  given(
    orientRows(fromRows(rows), staticSpeedMmPerS === undefined ? {} : { staticSpeedMmPerS }),
  ).remarks.map(({ code }) => code);

function refusal(rows: readonly Row[]): string {
  const outcome = orientRows(fromRows(rows));
  return outcome.ok ? "none" : `${outcome.fault.code}: ${inModelUnits(outcome.fault.sentence)}`;
}

describe("columns that cannot be", () => {
  it("nothing changes", () => {
    expect(
      refusal([
        [10, 1, 500],
        [10, 2, 500],
        [10, 3, 500],
      ]),
    ).toBe(
      "columnsNotUsable: Neither depth nor force changes in this file. Check that the right columns are chosen.",
    );
  });

  it("depth changes and force does not", () => {
    expect(
      refusal([
        [10, 1, 500],
        [20, 1, 500],
        [30, 1, 500],
      ]),
    ).toMatch(/^columnsNotUsable: The force does not follow the depth in this file/);
  });

  it("force changes and depth does not: no more can be told of it", () => {
    expect(
      codes([
        [10, 1, 500],
        [10, 1, 700],
        [10, 1, 900],
      ]),
    ).toEqual([]);
  });
});

describe("speeds without a sign", () => {
  /** Strokes of 0 to 20 mm and back in steps of 2 mm, 100 N/mm, at 50 mm/s, after a rest. */
  const strokes = (rest: number): Row[] => {
    const rows: Row[] = Array.from({ length: rest }, () => [0, 50, 0]);
    for (let stroke = 0; stroke < 3; stroke++) {
      for (let depth = 0; depth < 20; depth += 2) rows.push([depth, 50, 100 * depth]);
      for (let depth = 20; depth > 0; depth -= 2) rows.push([depth, 50, 100 * depth]);
    }
    return rows;
  };

  it("take theirs from the order of the rows; one that does not move yet keeps its own", () => {
    const { rows, remarks } = given(orientRows(fromRows(strokes(3))));
    expect(remarks.map(({ code }) => code)).toEqual(["speedUnsigned"]);
    // Two rows at rest, the third about to move; then pressing, and coming back from 20 mm on.
    expect([...rows.speedMmPerS.slice(0, 12)]).toEqual(Array.from({ length: 12 }, () => 50));
    expect([...rows.speedMmPerS.slice(14, 22)]).toEqual(Array.from({ length: 8 }, () => -50));
  });

  it("stay where every row counts as slow, or where pressing and coming back are told apart", () => {
    expect(codes(strokes(0), 60)).toEqual([]);
    const signed = strokes(0).map(([depth, speed, force], row): Row => {
      return [depth, row % 20 < 10 ? speed : -speed, force];
    });
    expect(codes(signed)).toEqual([]);
  });

  it("stay where the rows run one way only", () => {
    const once = Array.from({ length: 30 }, (_, row): Row => [row, 50, 100 * row]);
    expect(codes(once)).toEqual([]);
  });
});
