import { describe, expect, it } from "vitest";
import {
  drawnReading,
  standardUncertainty,
} from "../../../src/physics/uncertainty/drawnReading.ts";
import { ReadingDraws } from "../../../src/physics/uncertainty/readingDraws.ts";
import {
  standardNormal,
  standardRectangular,
} from "../../../src/physics/uncertainty/standardDraws.ts";
import { within } from "../staticFitments.ts";

describe("what is known of a reading", () => {
  it("has no scatter by one value", () => {
    expect(drawnReading("left.gap", within(40, 1.5))).toEqual({
      id: "left.gap",
      mean: 40,
      halfWidth: 1.5,
      standardError: 0,
    });
  });

  it("has the scatter of two values: half of what lies between them", () => {
    // s = √((2² + 2²)/1), over √2: 2.
    expect(drawnReading("track", { values: [8, 12], tol: 1 }).standardError).toBeCloseTo(2, 14);
  });

  it("has the experimental standard deviation of the mean of more", () => {
    // Of 10, 12, 17, 21: mean 15, squares 25 + 9 + 4 + 36 = 74; √(74/3/4) (JCGM 100:2008, 4.2.3).
    expect(drawnReading("track", { values: [10, 12, 17, 21], tol: 1 }).standardError).toBeCloseTo(
      Math.sqrt(74 / 12),
      14,
    );
  });

  it("is uncertain by the tool and by the scatter, as the root of their squares", () => {
    // 3/√3 and 1: √(3 + 1).
    const reading = { id: "track", mean: 0, halfWidth: 3, standardError: 1 };
    expect(standardUncertainty(reading)).toBeCloseTo(2, 14);
  });
});

describe("the draws of a reading", () => {
  const seed = 5;
  const samples = 40;
  const indices = Array.from({ length: samples }, (_, draw) => draw);

  it("of one value are its mean and the tool's part alone", () => {
    const draws = new ReadingDraws(drawnReading("left.gap", within(40, 1.5)), seed, samples);
    const standard = standardRectangular("left.gap", seed, samples);
    expect(draws.normal).toBeNull();
    for (const draw of indices) expect(draws.at(draw)).toBe(40 + 1.5 * Number(standard[draw]));
  });

  it("of repeats have the part of their scatter added", () => {
    const reading = drawnReading("left.gap", { values: [38, 42], tol: 1.5 });
    const draws = new ReadingDraws(reading, seed, samples);
    const byTool = standardRectangular("left.gap", seed, samples);
    const byScatter = standardNormal("left.gap", seed, samples);
    for (const draw of indices) {
      expect(draws.at(draw)).toBeCloseTo(
        40 + 1.5 * Number(byTool[draw]) + 2 * Number(byScatter[draw]),
        12,
      );
    }
  });
});
