import { describe, expect, test } from "vitest";
import {
  compressionFactor,
  gentModulus,
  hardnessEstimateShare,
} from "../../src/physics/estimates/rubberBlock.ts";

/**
 * Hardness, E0 in MPa and k: Lindley, Engineering Design with Natural Rubber. 65 and 75 seen quoted as
 * 830 and 1340 lbf/in² with k 0.54 and 0.52; the others from memory.
 */
const lindley: readonly (readonly [hardness: number, modulus: number, factor: number])[] = [
  [30, 0.92, 0.93],
  [35, 1.18, 0.89],
  [40, 1.5, 0.85],
  [45, 1.8, 0.8],
  [50, 2.2, 0.73],
  [55, 3.25, 0.64],
  [60, 4.45, 0.57],
  [65, 5.85, 0.54],
  [70, 7.35, 0.53],
  [75, 9.4, 0.52],
];

describe("Gent, Rubber Chem. Technol. 31 (1958) 896", () => {
  // The relation worked by hand at three hardnesses: numerator and denominator apart.
  test.each([
    [40, (0.0981 * 360.9344) / (0.137505 * 152.4)],
    [50, (0.0981 * 437.168) / (0.137505 * 127)],
    [70, (0.0981 * 589.6352) / (0.137505 * 76.2)],
  ])("Shore A %i", (hardness, modulus) => {
    expect(gentModulus(hardness)).toBeCloseTo(modulus, 12);
  });

  test.each(lindley)(
    "IRHD %i: within the 25 % that the estimate states of %f MPa",
    (hardness, modulus) => {
      expect(Math.abs(gentModulus(hardness) / modulus - 1)).toBeLessThanOrEqual(
        hardnessEstimateShare + 0.005,
      );
    },
  );
});

test("the handbook's k at its own hardnesses, straight between them", () => {
  for (const [hardness, , factor] of lindley) expect(compressionFactor(hardness)).toBe(factor);
  expect(compressionFactor(52.5)).toBeCloseTo((0.73 + 0.64) / 2, 12);
  expect(compressionFactor(20)).toBe(0.93);
  expect(compressionFactor(80)).toBe(0.52);
});

test("65 and 75 IRHD: 830 and 1340 lbf/in² as quoted are the table's 5.85 and 9.40 MPa within 2 %", () => {
  const megapascals = 6894.757293168 / 1e6;
  expect(Math.abs((830 * megapascals) / 5.85 - 1)).toBeLessThan(0.025);
  expect(Math.abs((1340 * megapascals) / 9.4 - 1)).toBeLessThan(0.025);
});
