import { describe, expect, it } from "vitest";
import { cyclesOf } from "../../../src/physics/stopTests/cycles.ts";

const of = (displacementMm: readonly number[], timeS: readonly number[] = []) =>
  cyclesOf(
    Float64Array.from(displacementMm, (_, place) => timeS[place] ?? place),
    Float64Array.from(displacementMm),
  );

describe("the cycles of a displacement", () => {
  it("run from one upward passage of the middle of the stroke to the next", () => {
    // A zigzag from 90 to 110 mm, a second a sample: up through 100 mm at 1 s, 5 s and 9 s.
    expect(of([90, 100, 110, 100, 90, 100, 110, 100, 90, 100, 110])).toEqual([
      { startS: 1, endS: 5, from: 2, to: 5 },
      { startS: 5, endS: 9, from: 6, to: 9 },
    ]);
  });

  it("have their passages between samples", () => {
    // From −10 to 10 mm in one step of 2 s: through 0 half-way.
    expect(of([-10, 10, 0, -10, 10], [20, 22, 23, 24, 26])).toEqual([
      { startS: 21, endS: 25, from: 1, to: 4 },
    ]);
  });

  it("hold the samples between their ends, where they follow on each other or a second begins late", () => {
    const found = of([-10, 10, -10, 10, -10, 10]);
    expect(found).toEqual([
      { startS: 0.5, endS: 2.5, from: 1, to: 3 },
      { startS: 2.5, endS: 4.5, from: 3, to: 5 },
    ]);
  });

  it("are none of fewer than two passages", () => {
    expect(of([])).toEqual([]);
    expect(of([5, 5, 5, 5])).toEqual([]);
    expect(of([-10, 0, 10, 0, -10, 0])).toEqual([]);
    // It begins above the middle: what it comes down from is no passage.
    expect(of([10, 0, -10, 0, 10])).toEqual([]);
  });

  it("are not made by noise within three tenths of the half stroke", () => {
    // Half stroke 10 mm: to and fro between −3 and 3 mm is one rise, and so it is on the way down.
    expect(of([-10, -3, 3, -3, 3, 10, 3, -3, 3, -3, -10, 0, 10])).toHaveLength(1);
    expect(of([-10, 3.1, -3, 3.1, 10, -10, 10])).toHaveLength(1);
    expect(of([-10, 3.1, -3.1, 3.1, 10, -10, 10])).toHaveLength(2);
  });
});

describe("a passage", () => {
  it("is placed by the line through all samples of its rise", () => {
    // x − x̄ = −4.5 −1.5 0.5 5.5 at t − t̄ = −1.5 −0.5 0.5 1.5: Σxt = 16, Σt² = 5, so the line through
    // (1.5, 0.5) meets 0 at 1.5 − 0.5·5/16. The later rise, −10 and 10, does at 5.5.
    const [cycle] = of([-4, -1, 1, 6, -10, 10]);
    expect(cycle?.startS).toBeCloseTo(1.5 - (0.5 * 5) / 16, 12);
    expect(cycle?.endS).toBeCloseTo(4.5, 12);
    const [late] = of(
      [-4, -1, 1, 6, -10, 10].map((x) => x + 40),
      [7, 8, 9, 10, 11, 12],
    );
    expect(late?.startS).toBeCloseTo(8.5 - (0.5 * 5) / 16, 12);
  });

  it("ends with the first sample that is well above, by more than three tenths of the half stroke", () => {
    // −10 3 10 at 0 1 2 s: a line of 10 mm/s through (1, 1), so 0 at 0.9 s.
    expect(of([-10, 3, 10, -10, 10])[0]?.startS).toBeCloseTo(0.9, 12);
    // −10 3.1 at 0 1 s.
    expect(of([-10, 3.1, 10, -10, 10])[0]?.startS).toBeCloseTo(10 / 13.1, 12);
  });

  it("is placed from the last sample that is well below", () => {
    // From −4 at 2 s by 2 and 8 mm: a line of 6 mm/s through (3, 2), so 0 at 2⅔ s.
    const [cycle] = of([-10, -10, -4, 2, 8, -10, 10]);
    expect(cycle?.startS).toBeCloseTo(8 / 3, 12);
    expect(cycle?.endS).toBeCloseTo(5.5, 12);
  });
});
