import { describe, expect, it } from "vitest";
import { forceNoise, whitened } from "../../../src/physics/stopTests/forceNoise.ts";
import { RandomSource } from "../../../src/physics/uncertainty/randomSource.ts";

const count = 4000;
const timeS = Float64Array.from({ length: count }, (_, row) => 0.004 * row);
const used = new Uint8Array(count).fill(1);

/** White noise of 5 N, and as asked a part of 20 N that holds together over 0.1 s. */
function noise(seed: number, held: boolean): Float64Array {
  const source = RandomSource.stream(seed, "noise");
  const kept = Math.exp(-0.004 / 0.1);
  let wander = held ? 20 * source.nextNormal() : 0;
  return Float64Array.from(timeS, () => {
    if (held) wander = kept * wander + Math.sqrt(1 - kept * kept) * 20 * source.nextNormal();
    return wander + 5 * source.nextNormal();
  });
}

/** Correlation of neighbours. */
function together(values: Float64Array): number {
  let [products, squares] = [0, 0];
  for (const [row, value] of values.entries()) {
    products += value * (values[row + 1] ?? 0);
    squares += value * value;
  }
  return products / squares;
}

describe("the noise of a load cell", () => {
  it.each([1, 2, 3, 4])(
    "that holds together is known by its time and its size: draw %i",
    (seed) => {
      const found = forceNoise(timeS, used, noise(seed, true));
      expect([0.05, 0.1, 0.2]).toContain(found?.tauS);
      // (20/5)² is 16.
      expect([10, 30]).toContain(found?.ratio);
    },
  );

  it("that is white is taken for nothing else", () => {
    for (let seed = 1; seed <= 20; seed++) {
      expect(forceNoise(timeS, used, noise(seed, false))).toBeNull();
    }
  });

  it("is white, of one size, once it is whitened; rows that are not used are 0", () => {
    const given = noise(5, true);
    const some = used.map((_, row) => (row % 7 === 0 ? 0 : 1));
    const white = whitened(timeS, some, given, { tauS: 0.1, ratio: 16 });
    expect(together(given)).toBeGreaterThan(0.8);
    const left = white.filter((_, row) => some[row] === 1);
    expect(Math.abs(together(left))).toBeLessThan(0.05);
    const spread = Math.sqrt(left.reduce((sum, value) => sum + value * value, 0) / left.length);
    expect(Math.abs(spread / 5 - 1)).toBeLessThan(0.05);
    expect(white.filter((_, row) => some[row] === 0).every((value) => value === 0)).toBe(true);
  });

  it("whitens a sum as the sum of its parts, so that a fit of columns stays one", () => {
    const [one, other] = [noise(6, true), noise(7, true)];
    const model = { tauS: 0.2, ratio: 3 };
    const sum = whitened(
      timeS,
      used,
      one.map((value, row) => 2 * value - (other[row] ?? 0)),
      model,
    );
    const [first, second] = [one, other].map((each) => whitened(timeS, used, each, model));
    for (const row of [0, 1, 100, 3999]) {
      expect(sum[row]).toBeCloseTo(2 * (first?.[row] ?? 0) - (second?.[row] ?? 0), 9);
    }
  });
});
