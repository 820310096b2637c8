import { describe, expect, it } from "vitest";
import { assessFitment } from "../../../src/physics/assess.ts";
import type { Fitment } from "../../../src/physics/fitment.ts";
import type { QuantityId } from "../../../src/physics/readings/readingId.ts";
import { isRead, otherRemedy } from "../../../src/physics/remeasure/otherWays.ts";
import { planRemeasure } from "../../../src/physics/remeasure/planRemeasure.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";
import { demoFitment, unwrapped } from "../demoFitments.ts";
import { tyreLimit, within } from "../staticFitments.ts";

const cause = (id: QuantityId, halfWidth: number, standardError = 0) => ({
  id,
  mean: 1,
  halfWidth,
  standardError,
});

describe("what narrows a doubt that is no reading's", () => {
  it("the other arm, for how the wheel moves with this one; not under a strut", () => {
    const remedy = otherRemedy(cause("wheelPerOuter", 0.06), 120, true);
    expect(remedy).toMatchObject({ way: "otherArm", after: { halfWidth: 0.01, standardError: 0 } });
    expect(otherRemedy(cause("wheelPerOuter", 0.06), 120, false)).toBeNull();
    // Typed with its own ± and known closely already.
    expect(otherRemedy(cause("wheelPerOuter", 0.01), 120, true)).toBeNull();
  });

  it("the travel found by hand within 2 mm, for what the model itself may be off", () => {
    const remedy = otherRemedy(cause("linkage", 0, 0.02), 100, true);
    expect(remedy).toMatchObject({ way: "byHand", after: { halfWidth: 0.02 } });
    expect(otherRemedy(cause("left.linkage", 0, 0.03), 100, true)).toMatchObject({
      way: "byHandToFullStop",
      after: { halfWidth: 0, standardError: 0 },
    });
  });

  it("the maker, for the usable compression; nothing for friction or a reading", () => {
    const remedy = otherRemedy(cause("stop.usableCompressionMm", 1.5), 100, true);
    expect(remedy).toMatchObject({ way: "maker", after: { halfWidth: 0.75 } });
    expect(otherRemedy(cause("left.settle", 4), 100, true)).toBeNull();
    expect(otherRemedy(cause("left.gap", 4), 100, true)).toBeNull();
    expect((["left.settle", "linkage", "left.gap", "armAngle"] as const).map(isRead)).toEqual([
      false,
      false,
      true,
      true,
    ]);
  });
});

describe("a plan of what to measure again", () => {
  /** An arm whose other arm was not measured, its reserve within its doubt. */
  function unsure(): Fitment {
    const fitment = demoFitment("kappa-not-measured");
    const [corner] = unwrapped(assessFitment(fitment)).corners;
    const limit = Number(corner?.wheelTravelToFullStopMm) + 4;
    return {
      ...fitment,
      rules: { events: [{ kind: "landing", heightM: 0.01 }] },
      corners: fitment.corners.slice(0, 1).map((each) => ({
        ...each,
        limits: [tyreLimit(within(limit, 2))],
      })),
    };
  }

  it("tells what the other arm and the check by hand would do, the most first", () => {
    const fitment = unsure();
    const { items, others } = planRemeasure(fitment, unwrapped(assessFitment(fitment)), {});
    expect(items.every(({ reading }) => isRead(reading))).toBe(true);
    expect(others.map(({ forecast }) => forecast.way)).toContain("otherArm");
    for (const { forecast } of others) {
      expect(forecast.halfWidthThenMm).toBeLessThan(forecast.halfWidthNowMm);
    }
    const shares = others.map(({ forecast }) => forecast.halfWidthThenMm / forecast.halfWidthNowMm);
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
    const words = others.map(({ sentence }) => inModelUnits(sentence)).join("\n");
    expect(words).toMatch(
      /^The other arm measured as well: takes the margin of error of the reserve from ±\d+\.\d mm to ±\d+\.\d mm\.$/m,
    );
  });

  it("has the verdict name the other arm, and why", () => {
    const [corner] = unwrapped(assessFitment(unsure())).corners;
    const clearance = corner?.checks.find(({ id }) => id === "clearance");
    expect(clearance).toMatchObject({ state: "unsure", reading: "otherArmAngle" });
    expect(clearance && inModelUnits(clearance.sentence)).toMatch(
      /Measure the other arm as well: \d+ % of the margin of error is how the wheel moves with this arm\.$/,
    );
  });
});
