import { describe, expect, it } from "vitest";
import { assessStatic } from "../../src/physics/assess.ts";
import { simulateImpact } from "../../src/physics/impact/impact.ts";
import { impactSetupOf } from "../../src/physics/impact/impactSetup.ts";
import { rulesOf } from "../../src/physics/road/useRules.ts";
import { distance } from "../../src/screens/shapes/geometry.ts";
import { cornerOf } from "../../src/screens/travelView/cornerOf.ts";
import { nearMark, nextMark, travelSpan } from "../../src/screens/travelView/travelMarks.ts";
import { hardestTime, momentAt } from "../../src/screens/travelView/usePlayed.ts";
import { demoFitment, unwrapped } from "../physics/demoFitments.ts";
import { demoNames } from "../support/demoRecords.ts";

const spanOf = (name: string, side: "left" | "right" = "left") => {
  const fitment = demoFitment(name);
  const assessed = unwrapped(assessStatic(fitment, { samples: 10_000 })).corners.find(
    (corner) => corner.side === side,
  );
  if (!assessed) throw new Error("no such side");
  return { fitment, assessed, span: travelSpan(assessed) };
};

describe("the places of a travel that have a name", () => {
  it("stand in the order of travel, between the ends", () => {
    for (const name of demoNames) {
      const { span } = spanOf(name);
      const travels = span.marks.map(({ travelMm }) => travelMm);
      expect(travels).toEqual([...travels].sort((a, b) => a - b));
      expect(Math.min(...travels)).toBe(span.from);
      expect(Math.max(...travels)).toBeLessThanOrEqual(span.to);
    }
  });

  it("leave out what the hard limit ends before, and say so", () => {
    const { span, assessed } = spanOf("arm-needs-taller");
    expect(assessed.wheelTravelToFullStopMm).toBeGreaterThan(
      assessed.wheelTravelToHardLimitMm ?? 0,
    );
    expect(span.fullNotReached).toBe(true);
    expect(span.marks.map(({ id }) => id)).toEqual(["ride", "touch", "hits"]);
    expect(span.to).toBe(assessed.wheelTravelToHardLimitMm);
  });

  it("begin where a pressed stop would touch, below ride", () => {
    const { span, assessed } = spanOf("pressed-foam-on-a-rod");
    expect(assessed.wheelTravelToContactMm).toBeLessThan(0);
    expect(span.from).toBe(assessed.wheelTravelToContactMm);
  });

  it("hold the thumb when it is near, and are gone through by keys", () => {
    const { span } = spanOf("arm-fits");
    const touch = span.marks.find(({ id }) => id === "touch")?.travelMm ?? 0;
    const reach = (span.to - span.from) / 50;
    expect(nearMark(span, touch + 0.9 * reach)?.id).toBe("touch");
    expect(nearMark(span, touch + 1.5 * reach)).toBeNull();
    const gone: number[] = [];
    for (let at = span.from; at < span.to - 1e-6; at = nextMark(span, at, 1)) gone.push(at);
    expect(gone).toEqual(span.marks.map(({ travelMm }) => travelMm).slice(0, -1));
    expect(nextMark(span, touch, -1)).toBeLessThan(touch);
    expect(nextMark(span, span.to, 1)).toBe(span.to);
  });
});

describe("a corner as it is drawn", () => {
  it.each(demoNames)("%s closes at each hard limit, and not before", (name) => {
    const { fitment } = spanOf(name);
    for (const { side } of fitment.corners) {
      const corner = cornerOf(fitment, side);
      if (corner === null) throw new Error("not drawn");
      for (const { travelMm, id } of corner.travel.limits) {
        const clashAt = (z: number) => corner.at(z).clashes.find(({ limit }) => limit.id === id);
        expect(clashAt(travelMm)?.closed).toBe(true);
        expect(clashAt(travelMm - 5)?.closed).toBe(false);
        const [met, before] = [clashAt(travelMm), clashAt(travelMm - 20)];
        if (!met || !before) throw new Error("no such limit");
        if (met.limit.kind !== "damper" && met.limit.kind !== "spring") {
          expect(distance(met.moving, met.still)).toBeLessThan(1);
        }
        expect(distance(before.moving, before.still)).toBeGreaterThan(
          distance(met.moving, met.still),
        );
      }
    }
  });

  it.each(demoNames)("%s keeps its wheel on the road when it is pushed up", (name) => {
    const { fitment, span } = spanOf(name);
    const corner = cornerOf(fitment, "left");
    if (corner === null) throw new Error("not drawn");
    const { wheel } = corner.at(span.to);
    expect(wheel.y - corner.atRide.wheel.y).toBeCloseTo(span.to, 6);
  });
});

it("an event is played point by point, and is hardest where its result says", () => {
  const fitment = demoFitment("arm-fits");
  const [corner] = fitment.corners;
  const event = rulesOf(fitment.use, fitment.rules).events.at(-1);
  if (!corner || !event) throw new Error("nothing to run");
  const setup = unwrapped(impactSetupOf(fitment, corner, { loaded: true }));
  const { trace, result } = unwrapped(simulateImpact(setup, event, { traceStepS: 0.001 }));
  if (!trace) throw new Error("no trace");
  const hardest = momentAt(trace, hardestTime(trace));
  expect(hardest.travelMm).toBeCloseTo(result.peakWheelTravelMm, 1);
  expect(hardest.compressionMm).toBeCloseTo(result.peakCompressionMm, 1);
  expect(momentAt(trace, -1).timeS).toBe(0);
  expect(momentAt(trace, 99).timeS).toBe(trace.timeS.at(-1));
  expect(momentAt(trace, 0.2).timeS).toBeCloseTo(0.2, 2);
});
