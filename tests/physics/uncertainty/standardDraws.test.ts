import { describe, expect, it } from "vitest";
import {
  standardNormal,
  standardRectangular,
} from "../../../src/physics/uncertainty/standardDraws.ts";

describe("standard draws of a reading", () => {
  it("are remembered, and the same again once they were forgotten", () => {
    const first = standardRectangular("left.gap", 7, 100);
    expect(standardRectangular("left.gap", 7, 100)).toBe(first);
    for (let other = 0; other < 64; other++) standardRectangular(`other ${other}`, 7, 100);
    const again = standardRectangular("left.gap", 7, 100);
    expect(again).not.toBe(first);
    expect([...again]).toEqual([...first]);
  });

  it("are remembered of 64 readings", () => {
    const first = standardRectangular("of many", 11, 10);
    for (let other = 1; other < 64; other++) standardRectangular(`other ${other}`, 11, 10);
    expect(standardRectangular("of many", 11, 10)).toBe(first);
  });

  it("forget the one used longest ago", () => {
    const kept = standardRectangular("kept", 9, 10);
    for (let other = 0; other < 100; other++) {
      standardRectangular(`other ${other}`, 9, 10);
      expect(standardRectangular("kept", 9, 10)).toBe(kept);
    }
  });

  it("are others by another name, seed or sort", () => {
    const rectangular = standardRectangular("left.gap", 7, 10);
    for (const other of [
      standardRectangular("right.gap", 7, 10),
      standardRectangular("left.gap", 8, 10),
      standardNormal("left.gap", 7, 10),
    ]) {
      expect([...other]).not.toEqual([...rectangular]);
    }
  });
});
