import { describe, expect, it } from "vitest";
import { causeDoubt, readingWords } from "../../../src/screens/answer/formulas/readingById.ts";
import { demoFitment } from "../../physics/demoFitments.ts";

describe("what causes doubt without being a reading", () => {
  const fitment = demoFitment("axle-tire-clearance");

  it("is named, with its own ± and where that comes from", () => {
    const { stop } = fitment;
    expect(readingWords(fitment, "stop.usableCompressionMm")).toBe(
      "how much stops of this kind vary",
    );
    const scattered = { ...fitment, stop: { ...stop, usableTolMm: 2 } };
    expect(causeDoubt(scattered, "stop.usableCompressionMm")).toEqual({
      halfWidthMm: 2,
      from: "of its usable compression",
    });
    const { usableTolMm: _, ...untold } = stop;
    const usual = causeDoubt({ ...fitment, stop: untold }, "stop.usableCompressionMm");
    // model.md 2: 5 % of the usable compression where it is not given.
    expect(usual?.halfWidthMm).toBeCloseTo(0.05 * stop.usableCompressionMm, 12);
    expect(usual?.from).toContain("5 %");
  });

  it("is friction where the ride height was read after lifting and pushing down", () => {
    const [corner] = fitment.corners;
    expect(readingWords(fitment, "left.settle")).toBe("friction in the suspension");
    expect(causeDoubt(fitment, `${corner?.side}.settle`)?.halfWidthMm).toBe(4.5);
    expect(causeDoubt(fitment, "left.gap")).toBeNull();
  });
});
