import { describe, expect, it } from "vitest";
import { orientRows } from "../../../src/physics/stopTests/orientation.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";
import { fromRows } from "./generatedTests.ts";
import { faultCode, given } from "./outcomes.ts";

type Row = readonly [number, number, number];

const codes = (rows: readonly Row[], staticSpeedMmPerS?: number) =>
  given(
    orientRows(fromRows(rows), staticSpeedMmPerS === undefined ? {} : { staticSpeedMmPerS }),
  ).remarks.map(({ code }) => code);

const sentences = (rows: readonly Row[]) =>
  given(orientRows(fromRows(rows))).remarks.map(({ sentence }) => inModelUnits(sentence));

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

  /** Runs of so many rows in turn, pressing first, 1 mm a row from 50 mm on, 100 N/mm. */
  const path = (runs: readonly number[], speed: number): Row[] => {
    let depth = 50;
    return runs.flatMap((count, run) =>
      Array.from({ length: count }, (_, at): Row => {
        if (run > 0 || at > 0) depth += run % 2 === 0 ? 1 : -1;
        return [depth, speed, 100 * depth];
      }),
    );
  };
  const signs = (rows: readonly Row[], staticSpeedMmPerS?: number) =>
    Array.from(
      given(
        orientRows(fromRows(rows), staticSpeedMmPerS === undefined ? {} : { staticSpeedMmPerS }),
      ).rows.speedMmPerS,
    );
  const times = (count: number, value: number) => Array.from({ length: count }, () => value);

  it("are told from twenty rows on, whichever sign all have", () => {
    const told = [...times(10, 50), ...times(10, -50)];
    expect(signs(path([10, 10], 50))).toEqual(told);
    expect(signs(path([10, 10], -50))).toEqual(told);
    expect(codes(path([10, 9], 50))).toEqual([]);
    expect(codes(path([10, 9], -50))).toEqual([]);
  });

  it("are told in words", () => {
    expect(sentences(path([10, 10], 50))).toEqual([
      "The file gives speeds without a sign; pressing and coming back were told from the order of the rows.",
    ]);
  });

  it("stay unless more than a fifth of the rows goes the other way", () => {
    expect(codes(path([16, 4], 50))).toEqual([]);
    expect(codes(path([15, 5], 50))).toEqual(["speedUnsigned"]);
    expect(codes(path([4, 16], 50))).toEqual([]);
    expect(codes(path([5, 15], 50))).toEqual(["speedUnsigned"]);
    // Rows at rest go neither way.
    const rest = Array.from({ length: 16 }, (): Row => [50, 50, 5000]);
    expect(codes([...rest, ...path([20], 50)])).toEqual([]);
  });

  it("stay where the rows turn once in six rows or more often", () => {
    expect(codes(path([5, 5, 5, 5], 50))).toEqual(["speedUnsigned"]);
    expect(codes(path([4, 4, 4, 4, 4], 50))).toEqual([]);
    expect(codes(path([5, 5, 5, 5, 4], 50))).toEqual([]);
    expect(codes(path([5, 5, 5, 5, 5], 50))).toEqual(["speedUnsigned"]);
  });

  it("of slow rows stay, whichever way those run", () => {
    const slow = path([2, 2, 2, 2, 2, 2, 2, 2, 2, 2], 60);
    const rows = [...slow, ...path([10, 10], 80)];
    expect(signs(rows, 60)).toEqual([...times(20, 60), ...times(10, 80), ...times(10, -80)]);
    // One that is just not slow as it comes back.
    expect(codes([[50, -60, 5000], ...rows], 60)).toEqual(["speedUnsigned"]);
    expect(codes([[50, -61, 5000], ...rows], 60)).toEqual([]);
    // Ten at speed are too few, beside ten slow ones.
    expect(codes([...path([5, 5], 60), ...path([5, 5], 80)], 60)).toEqual([]);
    expect(codes([...path([5, 5], -60), ...path([5, 5], -80)], 60)).toEqual([]);
  });
});

describe("which column is which", () => {
  /** Five rows by their ranks: depth 1 … 5, in units of 10, 50 and 100. */
  const ranked = (speed: readonly number[], force: readonly number[]): Row[] =>
    [1, 2, 3, 4, 5].map(
      (depth, row): Row => [10 * depth, 50 * (speed[row] as number), 100 * (force[row] as number)],
    );

  // Of ranks 1 … 5 the correlation is 1 − Σd²/20.
  it("speed and force change places where speed follows depth by 0.9, force by 0.2 less", () => {
    const swappedPlaces = ["columnsSwapped"];
    // Speed by 0.9 (Σd² = 2), force by 0.3 (14), force follows speed by 0.1 (18).
    expect(codes(ranked([1, 2, 3, 5, 4], [3, 1, 5, 2, 4]))).toEqual(swappedPlaces);
    // Speed by 0.8 (4).
    expect(codes(ranked([2, 1, 4, 3, 5], [3, 1, 5, 2, 4]))).toEqual([]);
    // Speed by 1, force by 0.7 (6) and by 0.8 (4).
    expect(codes(ranked([1, 2, 3, 4, 5], [1, 2, 4, 5, 3]))).toEqual(swappedPlaces);
    expect(codes(ranked([1, 2, 3, 4, 5], [2, 1, 4, 3, 5]))).toEqual([]);
  });

  it("they stay where another exchange would explain the numbers as well", () => {
    // Speed follows depth by 0.9 (Σd² = 2) and force speed by 0.9 (2), but force depth by 0.7 (6).
    expect(codes(ranked([1, 2, 3, 5, 4], [1, 2, 4, 5, 3]))).toEqual([]);
  });

  it("a force that follows its depth by 0.3 is just enough", () => {
    const speed = [3, 3, 3, 3, 3];
    expect(codes(ranked(speed, [3, 1, 5, 2, 4]))).toEqual([]);
    // 0.2: Σd² = 16.
    expect(refusal(ranked(speed, [4, 1, 2, 5, 3]))).toBe(
      "columnsNotUsable: The force does not follow the depth in this file, whichever column is taken for which. Check the headings, or choose the columns.",
    );
  });

  /** What comes of columns read with these factors: 2 mm, 4 mm/s and 10 N a number of the file. */
  const put = (rows: readonly Row[]) => {
    const factors = { depth: 2, speed: 4, force: 10 };
    const read = rows.map(([depth, speed, force]): Row => [2 * depth, 4 * speed, 10 * force]);
    const { rows: found, remarks } = given(orientRows(fromRows(read), { factors }));
    return {
      depth: [...found.depthMm],
      speed: [...found.speedMmPerS],
      force: [...found.forceN],
      told: remarks.map(({ sentence }) => inModelUnits(sentence)),
    };
  };
  const inPlace = (which: string) => ({
    depth: [2, 4, 6, 8, 10],
    speed: [200, -200, 200, -200, 200],
    force: [200, 400, 600, 800, 1000],
    told: [`The columns of ${which} were taken for each other in the file; they were put right.`],
  });
  const depth = [1, 2, 3, 4, 5];
  const speed = [50, -50, 50, -50, 50];
  const force = [20, 40, 60, 80, 100];
  const columns = (...three: readonly (readonly number[])[]) =>
    [0, 1, 2, 3, 4].map((row) => three.map((column) => column[row]) as unknown as Row);

  it("columns that change places take each other's units", () => {
    expect(put(columns(depth, force, speed))).toEqual(inPlace("speed and force"));
    expect(put(columns(speed, depth, force))).toEqual(inPlace("depth and speed"));
    const deep = [1000, 2000, 3000, 4000, 5000];
    expect(put(columns(deep, speed, depth))).toEqual({
      ...inPlace("depth and force"),
      force: deep.map((each) => 10 * each),
    });
    expect(put(columns(depth, speed, force))).toEqual({ ...inPlace(""), told: [] });
  });
});

describe("a stop that would be softer or deeper than any", () => {
  const line = (deepest: number, greatest: number): Row[] =>
    [0, 0.25, 0.5, 0.75, 1].map((share): Row => [share * deepest, 1, share * greatest]);
  const notBelievable =
    "columnsNotUsable: By these numbers the stop would be far softer or deeper than any. Check the units in the headings, or choose the columns.";

  it("is none of half a newton per millimetre or more", () => {
    expect(codes(line(20, 10))).toEqual([]);
    expect(codes(line(20, 9))).toEqual(["columnsSwapped"]);
  });

  it("has depth and force exchanged unless that is deeper than 400 mm", () => {
    expect(codes(line(1000, 400))).toEqual(["columnsSwapped"]);
    expect(refusal(line(1000, 401))).toBe(notBelievable);
  });

  it("has them exchanged only where that is stiffer than 1 N/mm", () => {
    const factors = { depth: 2, speed: 1, force: 1 };
    // 40 mm are 20 N, and 10 N are 20 mm.
    expect(faultCode(orientRows(fromRows(line(40, 10)), { factors }))).toBe("columnsNotUsable");
    expect(faultCode(orientRows(fromRows(line(40, 9)), { factors }))).toBe("none");
    expect(faultCode(orientRows(fromRows(line(40, 11)), { factors }))).toBe("columnsNotUsable");
  });

  it("is refused from more than 800 mm on", () => {
    expect(refusal(line(800, 10_000))).toBe("none");
    expect(refusal(line(801, 10_000))).toBe(notBelievable);
  });
});

describe("which way depth and force count", () => {
  const forces = (...force: readonly number[]): Row[] =>
    force.map((each, row): Row => [10 * row, 1, each]);

  it("a force that is turned, and a depth with its speed, are told in words", () => {
    const rows = forces(100, 200, 300, 400).map(([depth, speed, force]): Row => {
      return [-depth, -speed, -force];
    });
    const { rows: found } = given(orientRows(fromRows(rows)));
    expect([...found.depthMm]).toEqual([0, 10, 20, 30]);
    expect([...found.speedMmPerS]).toEqual([1, 1, 1, 1]);
    expect([...found.forceN]).toEqual([100, 200, 300, 400]);
    expect(sentences(rows)).toEqual([
      "The file counts a pushing force as negative; it was turned.",
      "In the file the depth falls as the stop is pressed; it was turned.",
    ]);
  });

  it("the large forces tell, not how many are small", () => {
    expect(codes(forces(-12, -11, -10, -9, -8, 300, 1000))).toEqual([]);
    expect(codes(forces(12, 11, 10, 9, 8, -300, -1000))).toEqual(["forceReversed"]);
  });

  it("those beyond half of the greatest are large", () => {
    expect(codes(forces(-500, -500, 0, 1000))).toEqual([]);
    expect(codes(forces(-501, -501, 0, 1000))).toEqual(["forceReversed", "depthReversed"]);
    // As many either way.
    expect(codes(forces(-1000, 0, 1000))).toEqual([]);
  });
});
