import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { hitchLoad, upToRating } from "../../../src/physics/estimates/axleLoad.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";
import { unwrapped } from "../demoFitments.ts";
import { refusal } from "../refusal.ts";

const exact = (value: number) => ({ value, tol: 0 });
const metres = fc.double({ min: 0.1, max: 0.9, noNaN: true });
const hitch = (tongue: number, overhangMm: number, wheelbaseMm: number) => ({
  tongue: exact(tongue),
  overhang: exact(overhangMm),
  wheelbase: exact(wheelbaseMm),
});

describe("a trailer on the hitch", () => {
  it("puts more on the rear axle than its tongue weighs: 200 kg, 1.2 m behind, on 3.0 m are 280 kg", () => {
    // Moments about the front axle: R·3.0 = 200·(3.0 + 1.2).
    const rear = unwrapped(hitchLoad(hitch(200, 1200, 3000), "rear"));
    expect(rear.value).toBeCloseTo(140, 9);
    expect(inModelUnits(rear.how)).toContain("280");
    expect(inModelUnits(rear.how)).toMatch(/^half of /);
  });

  it("lifts the front, by 40 kg a wheel, and counts as no payload there", () => {
    const front = unwrapped(hitchLoad(hitch(200, 1200, 3000), "front"));
    expect(front.value).toBe(0);
    expect(inModelUnits(front.how)).toMatch(/lifts 40\.?0? kg off each front wheel/);
  });

  it("front and rear together bear the tongue weight, moments about the hitch balance", () => {
    fc.assert(
      fc.property(metres, (share) => {
        const wheelbase = 3000;
        const overhang = share * wheelbase;
        const rear = 2 * unwrapped(hitchLoad(hitch(150, overhang, wheelbase), "rear")).value;
        const front = 150 - rear;
        expect(front * (wheelbase + overhang) + rear * overhang).toBeCloseTo(0, 6);
      }),
    );
  });

  it("is as doubtful as its parts: 10 % of the tongue, 20 mm of each length", () => {
    const { value, tol } = unwrapped(
      hitchLoad(
        {
          tongue: { value: 200, tol: 20 },
          overhang: { value: 1200, tol: 20 },
          wheelbase: { value: 3000, tol: 20 },
        },
        "rear",
      ),
    );
    // By differences: ±14 by the tongue, ±0.667 by the overhang, ±0.267 by the wheelbase.
    expect(value).toBeCloseTo(140, 9);
    expect(tol).toBeCloseTo(
      Math.hypot(14, (200 * 20) / 3000 / 2, (200 * 1200 * 20) / 3000 ** 2 / 2),
      9,
    );
  });

  it("is refused where the lengths can't be", () => {
    expect(refusal(hitchLoad(hitch(200, 3100, 3000), "rear"))).toMatch(/^hitchNotUsable/);
    expect(refusal(hitchLoad(hitch(0, 1200, 3000), "rear"))).toMatch(/^hitchNotUsable/);
  });
});

describe("up to the axle's rating", () => {
  it("leaves half of the rating less what stands on the wheel: 1500/2 − 560 = 190 kg", () => {
    const { value, tol, how } = unwrapped(upToRating(exact(1500), { value: 560, tol: 12 }));
    expect(value).toBe(190);
    expect(tol).toBe(12);
    expect(inModelUnits(how)).toContain("upper bound");
  });

  it("says so where the axle weighs more than its rating", () => {
    expect(refusal(upToRating(exact(1000), exact(560)))).toMatch(
      /^ratingPassed: This axle weighs 1120/,
    );
    expect(refusal(upToRating(exact(0), exact(560)))).toMatch(/^ratingNotUsable/);
  });
});
