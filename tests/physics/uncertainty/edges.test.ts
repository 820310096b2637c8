import { describe, expect, it, vi } from "vitest";
import { assessStatic } from "../../../src/physics/assess.ts";
import type { Layout } from "../../../src/physics/fitment.ts";
import { kinematicsOf } from "../../../src/physics/kinematics/kinematics.ts";
import { rideQuantities } from "../../../src/physics/readings/rideReadings.ts";
import { waysFor } from "../../../src/physics/remeasure/readAgain.ts";
import { rulesOf } from "../../../src/physics/road/useRules.ts";
import { stopCurve } from "../../../src/physics/stop/stopCurve.ts";
import { CoverageIntervals } from "../../../src/physics/uncertainty/coverageIntervals.ts";
import { drawnReading } from "../../../src/physics/uncertainty/drawnReading.ts";
import { firstOrderContributions } from "../../../src/physics/uncertainty/firstOrder.ts";
import { RandomSource } from "../../../src/physics/uncertainty/randomSource.ts";
import { defaultSamples, SharedDraws } from "../../../src/physics/uncertainty/sharedDraws.ts";
import {
  type RoadCornerWithCurve,
  WantedTravelModel,
} from "../../../src/physics/uncertainty/wantedTravel.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";
import { unwrapped } from "../demoFitments.ts";
import { exact, ride, tyreLimit, uprightStrut, within } from "../staticFitments.ts";

vi.mock("../../../src/physics/kinematics/modelDoubt.ts", () => import("../noModelDoubt.ts"));

describe("normal draws in pairs", () => {
  it("give an odd number of them the first of the last pair alone", () => {
    const drawn = (count: number) => {
      const out = new Float64Array(count);
      RandomSource.stream(7, "left.gap").addNormal(out, 2);
      return [...out];
    };
    expect(drawn(5)).toEqual(drawn(6).slice(0, 5));
  });
});

describe("first-order parts at the edge of what can be", () => {
  // u = 2/√3 about 10, 20 and 30; the result is 5 at the means.
  const readings = [10, 20, 30, 40].map((mean, place) =>
    drawnReading(`left.limits.${place}`, place === 3 ? exact(mean) : within(mean, 2)),
  );
  const u = 2 / Math.sqrt(3);

  it("are taken from the one side that can be, and are none where neither can", () => {
    const found = firstOrderContributions(
      readings,
      (index, value) => {
        const from = value - (readings[index]?.mean ?? 0);
        if (index === 0) return from > 0 ? Number.NaN : 5 + 3 * from;
        if (index === 1) return from < 0 ? Number.NaN : 5 + 3 * from;
        return Number.NaN;
      },
      5,
    );
    expect([...found]).toEqual([expect.closeTo(3 * u, 12), expect.closeTo(3 * u, 12), 0, 0]);
  });
});

describe("coverage intervals", () => {
  it("are none without a draw", () => {
    expect(new CoverageIntervals(2, 10).intervals()).toEqual([null, null]);
  });

  it("of more figures than are kept for the next stay their own", () => {
    const covered = new CoverageIntervals(15, 5);
    for (const draw of [4, 0, 3, 1, 2]) {
      covered.add(Float64Array.from({ length: 15 }, (_, figure) => draw + 10 * figure));
    }
    // 2.5 % of 0 … 4 lies a tenth of a rank in.
    const found = covered.intervals();
    for (const [figure, interval] of found.entries()) {
      expect(interval?.[0]).toBeCloseTo(10 * figure + 0.1, 12);
      expect(interval?.[1]).toBeCloseTo(10 * figure + 3.9, 12);
    }
  });
});

describe("the number of draws", () => {
  it.each([
    [undefined, defaultSamples],
    [0, defaultSamples],
    [Number.NaN, defaultSamples],
    [5, 10_000],
    [12_345.4, 12_345],
  ])("%s: %d", (asked, samples) => {
    expect(new SharedDraws(asked).samples).toBe(samples);
  });
});

describe("a side measured apart whose ± reaches a stop that lies flat", () => {
  it("has draws outside, the other side none", () => {
    const strut = uprightStrut({ limits: [tyreLimit(within(1e5, 1))] });
    const [left] = strut.corners;
    if (left === undefined) throw new Error("no corner");
    const right = { ...left, side: "right" as const, geometry: { stopLean: within(86, 5) } };
    const { corners } = unwrapped(
      assessStatic({ ...strut, corners: [left, right] }, { samples: 10_000 }),
    );
    const clearance = corners.map(({ checks }) => checks.find(({ id }) => id === "clearance"));
    expect(clearance.map((check) => check?.state)).toEqual(["ok", "unsure"]);
    // Past 89.95° of 81 … 91°: (91 − 89.95)/10 of the draws.
    expect(clearance[1] && inModelUnits(clearance[1].sentence)).toBe(
      "Within their ± the readings also allow a suspension that can't move this far (11 % of the cases). So the answer can't tell. Re-measure the right lean of the stop, more closely if you can.",
    );
  });
});

describe("ride values in doubt", () => {
  it("of a ride value are known no closer where its ± is 0", () => {
    const rate = drawnReading("ride.wheelRateNPerMm", exact(26));
    expect(waysFor(rate, 1, [])).toEqual([]);
  });
});

describe("free travel wanted of a ride value that cannot be", () => {
  const layout: Layout = {
    kind: "arm",
    readings: { pivotToStop: exact(100), pivotToOuter: exact(250) },
  };
  const kinematics = unwrapped(kinematicsOf(layout));
  const fitment = uprightStrut({ fitment: { layout } });
  const corner: RoadCornerWithCurve = {
    kinematics,
    stop: unwrapped(stopCurve(fitment.stop)),
    gapMm: 20,
    heldAtRideN: 0,
    travelToContactMm: 50,
    progressive: false,
    cornerMassKg: 450,
    wheelRateNPerMm: null,
    tyreRateNPerMm: null,
    damperBumpNsPerMm: null,
    damperReboundNsPerMm: null,
    payloadKg: null,
  };
  const rules = rulesOf("daily");
  const payload = rideQuantities.indexOf("payloadPerCornerKg");

  it("is no number: a payload below 0, a corner not weighed, a wheel without a spring", () => {
    const model = new WantedTravelModel(corner, ride, rules);
    expect(model.laden()).toBeGreaterThan(0);
    model.set(payload, -1);
    expect(model.laden()).toBeNaN();
    expect(model.unladen()).toBeGreaterThan(0);
    model.set(payload, 20);
    model.set(rideQuantities.indexOf("wheelRateNPerMm"), 0);
    expect(model.laden()).toBeNaN();
    const unweighed = new WantedTravelModel({ ...corner, cornerMassKg: null }, ride, rules);
    expect(unweighed.unladen()).toBeNaN();
  });
});
