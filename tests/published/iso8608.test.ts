import { describe, expect, it } from "vitest";
import {
  displacementPsd,
  roadClasses,
  roadVelocityIntensity,
  roughness,
} from "../../src/physics/road/roughness.ts";

/* ISO 8608:2016, Table C.2 (read in a secondary source): geometric means at n0 = 0.1 cycle/m, w = 2. */
describe("road classes (ISO 8608:2016)", () => {
  it("have the geometric means of Table C.2, each four times the class before", () => {
    expect(roughness).toEqual({ A: 16e-6, B: 64e-6, C: 256e-6, D: 1024e-6, E: 4096e-6 });
    expect(roadClasses).toEqual(["A", "B", "C", "D", "E"]);
  });

  it("fall with the square of spatial frequency", () => {
    expect(displacementPsd("C", 0.1)).toBeCloseTo(256e-6, 15);
    expect(displacementPsd("C", 1)).toBeCloseTo(2.56e-6, 15);
  });

  it("make road velocity white: half its one-sided PSD at any frequency is the intensity", () => {
    const speed = 20;
    for (const frequency of [0.5, 3, 17]) {
      const n = frequency / speed;
      const velocityPsd = ((2 * Math.PI * frequency) ** 2 * displacementPsd("D", n)) / speed;
      expect(velocityPsd / 2 / roadVelocityIntensity("D", speed)).toBeCloseTo(1, 12);
    }
  });
});
