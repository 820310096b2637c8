import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  compressionFactor,
  compressionModulus,
  gentModulus,
  rubberBlockCurve,
} from "../../../src/physics/estimates/rubberBlock.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";
import { refusal } from "../refusal.ts";
import { given } from "../stopTests/outcomes.ts";

const exactly = (value: number) => ({ value, tol: 0 });

describe("a block of 60 Shore A, 50 mm wide and 40 mm high", () => {
  const block = () =>
    given(rubberBlockCurve({ shoreA: exactly(60), diameter: exactly(50), height: exactly(40) }));

  // Gent & Lindley 1959: S = d/4h, Ec = E0(1 + 2kS²); k = 0.57 at 60 (Lindley, from memory).
  test("shape factor, compression modulus and rate", () => {
    const found = block();
    expect(found.shapeFactor).toBe(0.3125);
    const modulus = gentModulus(60) * (1 + 2 * 0.57 * 0.3125 ** 2);
    expect(found.compressionModulus).toBeCloseTo(modulus, 12);
    expect(found.rateNPerMm.value).toBeCloseTo((modulus * Math.PI * 625) / 40, 9);
  });

  test("± 25 % where the readings are exact; 15 % of the height as design limit", () => {
    const found = block();
    expect(found.forceShare).toBeCloseTo(0.25, 12);
    expect(found.rateNPerMm.tol).toBeCloseTo(0.25 * found.rateNPerMm.value, 9);
    expect(found.usableCompressionMm).toBeCloseTo(6, 12);
    expect(found.curve.at(-1)?.[0]).toBeCloseTo(6, 12);
  });

  test("the curve starts at that rate and grows steeper", () => {
    const found = block();
    const [depth, force] = found.curve[0] as readonly [number, number];
    expect(force / depth / found.rateNPerMm.value).toBeCloseTo(1 + depth / 40, 2);
  });

  test("says everywhere that it is an estimate, and from what", () => {
    const found = block();
    expect(inModelUnits(found.how)).toBe(
      "estimate from 60 Shore A, diameter 50.0 mm, height 40.0 mm",
    );
    expect(found.rateNPerMm.how).toBe(found.how);
  });

  // Small strain: F·h/(A·Ec) = (1/λ² − λ)/3, here at 15 %: (1/0.7225 − 0.85)/3.
  test("the curve's last force by hand", () => {
    const found = block();
    const area = Math.PI * 625;
    expect(found.curve.map(([depth]) => depth)).toEqual(
      [0.2, 0.4, 0.6, 0.8, 1].map((share) => share * found.usableCompressionMm),
    );
    expect(found.curve.at(-1)?.[1]).toBeCloseTo(
      (area * found.compressionModulus * (1 / 0.7225 - 0.85)) / 3,
      9,
    );
    expect(found.youngsModulus).toBe(gentModulus(60));
  });
});

test("the tolerance grows as the readings' own: a Monte Carlo comparison to first order", () => {
  const block = {
    shoreA: { value: 60, tol: 4 },
    diameter: { value: 50, tol: 1 },
    height: { value: 40, tol: 1 },
  };
  const rate = (hardness: number, diameter: number, height: number) =>
    (compressionModulus(hardness, diameter / (4 * height)) * Math.PI * diameter ** 2) / 4 / height;
  const middle = rate(60, 50, 40);
  const part = (more: number, less: number) => (more - less) / 2 / middle;
  const parts = [
    part(rate(61, 50, 40), rate(59, 50, 40)) * 4,
    part(rate(60, 51, 40), rate(60, 49, 40)),
    part(rate(60, 50, 41), rate(60, 50, 39)),
  ];
  expect(given(rubberBlockCurve(block)).forceShare).toBeCloseTo(Math.hypot(0.25, ...parts), 2);
});

test("the tolerance by differences of every reading, to seven figures", () => {
  const block = {
    shoreA: { value: 62.5, tol: 1e-3 },
    diameter: { value: 80, tol: 3 },
    height: { value: 25, tol: 0.4 },
  };
  const rate = (hardness: number, diameter: number, height: number) =>
    (compressionModulus(hardness, diameter / (4 * height)) * Math.PI * diameter ** 2) / 4 / height;
  const middle = rate(62.5, 80, 25);
  const step = 1e-4;
  const part = (more: number, less: number) => (more - less) / (2 * step) / middle;
  const wide = part(rate(62.5, 80 + step, 25), rate(62.5, 80 - step, 25)) * 3;
  const high = part(rate(62.5, 80, 25 + step), rate(62.5, 80, 25 - step)) * 0.4;
  const found = given(rubberBlockCurve(block));
  expect(found.forceShare).toBeCloseTo(Math.hypot(0.25, wide, high), 6);
  expect(found.rateNPerMm.tol).toBeCloseTo(found.forceShare * found.rateNPerMm.value, 9);
  const hard = (rate(63, 80, 25) - rate(62, 80, 25)) / middle;
  const doubtful = given(rubberBlockCurve({ ...block, shoreA: { value: 62.5, tol: 5 } }));
  expect(doubtful.forceShare).toBeCloseTo(Math.hypot(0.25, 5 * hard, wide, high), 9);
});

test("hardness out of range and sizes that cannot be are refused in a sentence", () => {
  const block = { shoreA: exactly(60), diameter: exactly(50), height: exactly(40) };
  const outOfRange =
    "hardnessOutOfRange: The estimate holds for a hardness of 20 to 80 Shore A. Re-measure the hardness; a harder block has to be tested.";
  const noBlock =
    "blockNotUsable: The diameter and height of the block must be above 0. Re-measure them.";
  for (const [hardness, words] of [
    [19.9, outOfRange],
    [20, "none"],
    [80, "none"],
    [80.1, outOfRange],
    [Number.NaN, outOfRange],
  ] as const) {
    expect(refusal(rubberBlockCurve({ ...block, shoreA: exactly(hardness) }))).toBe(words);
  }
  const doubtful = { value: 60, tol: Number.NaN };
  expect(refusal(rubberBlockCurve({ ...block, shoreA: doubtful }))).toBe(outOfRange);
  expect(refusal(rubberBlockCurve({ ...block, diameter: exactly(0) }))).toBe(noBlock);
  expect(refusal(rubberBlockCurve({ ...block, height: exactly(0) }))).toBe(noBlock);
});

test("always: a rising finite curve, stiffer for a harder, wider or flatter block", () => {
  const sizes = fc.record({
    hardness: fc.double({ min: 20, max: 79, noNaN: true }),
    diameter: fc.double({ min: 10, max: 200, noNaN: true }),
    height: fc.double({ min: 10, max: 200, noNaN: true }),
  });
  fc.assert(
    fc.property(sizes, ({ hardness, diameter, height }) => {
      const block = {
        shoreA: exactly(hardness),
        diameter: exactly(diameter),
        height: exactly(height),
      };
      const found = given(rubberBlockCurve(block));
      let last: readonly [number, number] = [0, 0];
      for (const point of found.curve) {
        expect(point[0]).toBeGreaterThan(last[0]);
        expect(point[1]).toBeGreaterThan(last[1]);
        last = point;
      }
      expect(found.forceShare).toBeGreaterThanOrEqual(0.25 - 1e-12);
      const stiffer = (change: Partial<typeof block>) =>
        given(rubberBlockCurve({ ...block, ...change })).rateNPerMm.value;
      const rate = found.rateNPerMm.value;
      expect(stiffer({ diameter: exactly(1.1 * diameter) })).toBeGreaterThan(rate);
      expect(stiffer({ height: exactly(0.9 * height) })).toBeGreaterThan(rate);
      expect(compressionFactor(hardness)).toBeLessThanOrEqual(0.93);
    }),
  );
});
