import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { assessFitment } from "../../../src/physics/assess.ts";
import type { PlanePoint } from "../../../src/physics/layouts/plane.ts";
import { type CornerTravel, cornerTravel } from "../../../src/physics/travel/cornerTravel.ts";
import { meanOf } from "../../../src/physics/uncertainty/readingMean.ts";
import { demoNames } from "../../support/demoRecords.ts";
import { demoFitment, unwrapped } from "../demoFitments.ts";
import { anyFitment } from "../staticFitments.ts";

const apart = (a: PlanePoint, b: PlanePoint) => Math.hypot(a.x - b.x, a.y - b.y);
const angleOf = ({ x, y }: PlanePoint) => Math.atan2(y, x);
const origin = { x: 0, y: 0 };
const none = { values: [Number.NaN], tol: 0 };

const corners = demoNames.flatMap((name) => {
  const fitment = demoFitment(name);
  return fitment.corners.map((corner) => ({
    name: `${name} ${corner.side}`,
    fitment,
    corner,
    travel: unwrapped(cornerTravel(fitment, corner)),
  }));
});

/** Wheel travels up to where the stop would have no height left. */
function travelsOf(travel: CornerTravel): number[] {
  const [least, greatest] = travel.range;
  const [from, to] = [Math.max(least, -60), Math.min(greatest, 140)];
  return Array.from({ length: 21 }, (_, i) => from + ((to - from) * i) / 20).filter(
    (z) => travel.at(z).closingMm < travel.seatToPadMm,
  );
}

describe.each(corners)("$name through its travel", ({ fitment, corner, travel }) => {
  const atRide = travel.at(0);

  it("stop and pad come as near as the answer's own closing has them", () => {
    for (const z of travelsOf(travel)) {
      const { pose, closingMm, gapMm, compressionMm, stopHeightMm } = travel.at(z);
      expect(apart(pose.seat, pose.pad)).toBeCloseTo(travel.seatToPadMm - closingMm, 6);
      const filled = stopHeightMm + travel.spacerMm + gapMm;
      expect(filled).toBeCloseTo(travel.seatToPadMm - closingMm, 6);
      expect(Math.min(gapMm, compressionMm)).toBe(0);
    }
  });

  it("parts keep their lengths, and a measured wheel rises by the travel", () => {
    for (const z of travelsOf(travel)) {
      const { pose } = travel.at(z);
      const start = atRide.pose;
      if (pose.outer && start.outer) {
        expect(apart(pose.outer, origin)).toBeCloseTo(apart(start.outer, origin), 6);
      }
      if (pose.otherArm && start.otherArm && pose.outer && start.outer) {
        const { pivot, joint } = pose.otherArm;
        expect(apart(pivot, start.otherArm.pivot)).toBeCloseTo(0, 6);
        expect(apart(pivot, joint)).toBeCloseTo(apart(pivot, start.otherArm.joint), 4);
        expect(apart(pose.outer, joint)).toBeCloseTo(apart(start.outer, start.otherArm.joint), 4);
      }
      if (pose.wheel && start.wheel && fitment.fullTravel === undefined) {
        expect(pose.wheel.y - start.wheel.y).toBeCloseTo(z, 4);
      }
      if (pose.rod && start.rod) {
        expect(apart(pose.rod.head, start.rod.head)).toBeCloseTo(0, 6);
        expect(apart(pose.pad, pose.rod.foot)).toBeCloseTo(
          apart(start.pad, start.rod.foot),
          travel.linkage === "strutArm" ? -1 : 6,
        );
      }
    }
  });

  it("an axle's wheel and stop stand apart by half of track and spacing", () => {
    const { layout } = fitment;
    if (layout.kind !== "axle") return;
    const { track, stopSpacing } = layout.readings;
    expect(atRide.pose.wheel?.x).toBeCloseTo(meanOf(track ?? none) / 2, 9);
    expect(atRide.pose.pad.x).toBeCloseTo(meanOf(stopSpacing ?? none) / 2, 6);
  });

  it("a flat pad on the arm turns with it, its contact patch on its face", () => {
    if (fitment.layout.kind !== "arm" || fitment.layout.stopOn !== "frame") return;
    for (const z of travelsOf(travel)) {
      const { pose } = travel.at(z);
      const turn = angleOf(pose.outer ?? origin) - angleOf(atRide.pose.outer ?? origin);
      const { x, y } = atRide.pose.pad;
      const patch = {
        x: x * Math.cos(turn) - y * Math.sin(turn),
        y: y * Math.cos(turn) + x * Math.sin(turn),
      };
      const { pad, padAlong } = pose;
      const aside = (patch.x - pad.x) * padAlong.y - (patch.y - pad.y) * padAlong.x;
      expect(aside).toBeCloseTo(0, 6);
    }
  });

  it("touches, is fully compressed and hits where the answer says", () => {
    const assessed = unwrapped(assessFitment(fitment, { samples: 10_000 })).corners.find(
      ({ side }) => side === corner.side,
    );
    if (!assessed) throw new Error("no such side");
    const touch = travel.at(assessed.wheelTravelToContactMm);
    expect(touch.gapMm + touch.compressionMm).toBeLessThan(1e-4);
    expect(travel.at(assessed.wheelTravelToFullStopMm).compressionMm).toBeCloseTo(
      fitment.stop.usableCompressionMm,
      4,
    );
    expect(atRide.leverRatio).toBeCloseTo(assessed.leverRatio, 5);
    const limits = travel.limits.map(({ travelMm }) => travelMm);
    expect(limits.length === 0 ? null : Math.min(...limits)).toEqual(
      assessed.wheelTravelToHardLimitMm,
    );
  });
});

it("whatever is given, every place that is told is a number", () => {
  fc.assert(
    fc.property(anyFitment, fc.double({ min: -500, max: 500, noNaN: true }), (fitment, z) => {
      for (const corner of fitment.corners) {
        const travel = cornerTravel(fitment, corner);
        if (!travel.ok) continue;
        const told = JSON.stringify(travel.value.at(z), (_, value) =>
          typeof value === "number" && !Number.isFinite(value) ? "not finite" : value,
        );
        expect(told).not.toContain("not finite");
      }
    }),
    { numRuns: 300 },
  );
});
