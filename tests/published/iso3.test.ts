import { describe, expect, it } from "vitest";
import { stiffnessClasses, stiffnessClassOf } from "../../src/physics/stop/stiffnessClass.ts";

// Source: ISO 3:1973, preferred numbers, series R5: 1.00 1.60 2.50 4.00 6.30 in each decade.
const r5 = [1, 1.6, 2.5, 4, 6.3];

describe("stiffness classes after ISO 3, series R5", () => {
  it("are the preferred numbers from 10 to 1000 N/mm", () => {
    const wanted = [10, 100].flatMap((decade) => r5.map((number) => number * decade));
    expect(stiffnessClasses).toEqual([...wanted.map((number) => Math.round(number)), 1000]);
  });

  it("are each their own nearest", () => {
    for (const stiffnessClass of stiffnessClasses) {
      expect(stiffnessClassOf(stiffnessClass)).toBe(stiffnessClass);
    }
  });

  it("change half-way in log10 between the exact ratios 10^(1/5)", () => {
    for (const [index, lower] of stiffnessClasses.slice(0, -1).entries()) {
      const boundary = 10 ** ((index + 5.5) / 5);
      expect(stiffnessClassOf(boundary * 0.9999)).toBe(lower);
      expect(stiffnessClassOf(boundary * 1.0001)).toBe(stiffnessClasses[index + 1]);
    }
  });

  it("end at 10 and 1000: a rate beyond takes the class at the end", () => {
    expect(stiffnessClassOf(0.3)).toBe(10);
    expect(stiffnessClassOf(2600)).toBe(1000);
  });

  // Common practice, no source: such stops are made from 50 to 6000 lbf/in.
  it("span what is made, 50 to 6000 lbf/in", () => {
    expect(stiffnessClassOf(50 * 0.175126835246476)).toBe(10);
    expect(stiffnessClassOf(6000 * 0.175126835246476)).toBe(1000);
  });
});
