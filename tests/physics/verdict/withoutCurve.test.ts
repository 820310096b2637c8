import { describe, expect, it } from "vitest";
import { assessStatic } from "../../../src/physics/assess.ts";
import {
  travelWithoutCurve,
  withoutCurveSentences,
} from "../../../src/physics/verdict/withoutCurve.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";
import { demoFitment, unwrapped } from "../demoFitments.ts";
import { exact, tyreLimit, uprightStrut, within } from "../staticFitments.ts";

const told = (fitment: Parameters<typeof travelWithoutCurve>[0]) =>
  unwrapped(travelWithoutCurve(fitment, 5)).map((corner) =>
    withoutCurveSentences(corner).map(inModelUnits).join(" "),
  );

describe("what needs no curve of the stop", () => {
  it.each(["arm-fits", "two-arms-measured", "axle-towing-early", "sitting-on-its-stop"])(
    "%s: contact, gap and limit are those of the whole assessment",
    (name) => {
      const fitment = demoFitment(name);
      const { corners } = unwrapped(assessStatic(fitment));
      const travel = unwrapped(travelWithoutCurve(fitment, 5));
      expect(travel.map(({ side }) => side)).toEqual(corners.map(({ side }) => side));
      for (const [index, { contactMm, contactRangeMm, limit }] of travel.entries()) {
        const whole = corners[index];
        expect(contactMm).toBeCloseTo(whole?.wheelTravelToContactMm ?? Number.NaN, 6);
        const [least = 0, greatest = 0] = whole?.intervals.wheelTravelToContactMm ?? [];
        // Both are Monte Carlo by the same draws; a draw may leave the reach with the stop pressed alone.
        expect(contactRangeMm?.[0]).toBeCloseTo(least, 0);
        expect(contactRangeMm?.[1]).toBeCloseTo(greatest, 0);
        expect(limit?.travelMm).toBeCloseTo(whole?.wheelTravelToHardLimitMm ?? Number.NaN, 6);
      }
    },
  );

  it("upright, 45 mm of gap and a tire at 95: 95 − 5 − 45 = 45 mm of compression have room", () => {
    const strut = uprightStrut({ gap: within(45, 1), limits: [tyreLimit(exact(95))] });
    const [corner] = unwrapped(travelWithoutCurve(strut, 5));
    expect(corner?.limit?.compressionMm).toBeCloseTo(45, 2);
    expect(told(strut)[0]).toMatch(
      /^The stop touches after 45\.0 mm .* The tire touches after 95\.0 mm\. A stop fits this travel if it is fully compressed within 45\.0 mm of compression\.$/,
    );
  });

  it("a limit that comes before the stop is a no whatever its curve, without a limit nothing touches first", () => {
    const never = uprightStrut({ gap: within(45, 1), limits: [tyreLimit(within(30, 2))] });
    expect(unwrapped(travelWithoutCurve(never, 5))[0]?.neverMet).toBe(true);
    expect(told(never)[0]).toContain("The tire touches first, after 30.0 mm");
    expect(told(uprightStrut({ limits: [] }))[0]).toContain("can't be said what touches first");
  });
});
