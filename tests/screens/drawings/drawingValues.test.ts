import { describe, expect, it } from "vitest";
import type { PartialCheckRecord } from "../../../src/records/check/checkRecord.ts";
import { drawingValues, drawnReadingOf } from "../../../src/screens/drawings/drawingValues.ts";

const record: PartialCheckRecord = {
  format: "stopfit-check",
  version: 2,
  id: "3b0f0a52-0000-4000-8000-000000000009",
  createdAt: "2026-05-02T09:30:00Z",
  layout: {
    kind: "arm",
    readings: {
      pivotToStop: { values: [152, 153, 154], tol: 1.5 },
      armAngle: { values: [8], tol: 0.5 },
    },
  },
  corners: [
    {
      side: "left",
      gap: { values: [21, 22], tol: 1 },
      limits: [
        { kind: "metal", at: "wheel", reading: { values: [60], tol: 2 } },
        { kind: "metal", at: "wheel", reading: { values: [75], tol: 2 } },
      ],
    },
    { side: "right", geometry: { armAngle: { values: [9], tol: 0.5 } }, limits: [] },
  ],
  stop: { freeHeight: { values: [60], tol: 1 }, usableCompressionMm: 33 },
};

describe("drawingValues", () => {
  it("has the height of a pressed stop, and the distance where it is missing, of their own side", () => {
    const standing: PartialCheckRecord = {
      ...record,
      corners: [
        { side: "left", pressedHeight: { values: [48, 50], tol: 1 }, limits: [] },
        { side: "right", seatToPad: { values: [74], tol: 1 }, limits: [] },
      ],
    };
    expect(drawingValues(standing, "left").pressedHeight).toBe(49);
    expect(drawingValues(standing, "left").seatToPad).toBeUndefined();
    expect(drawingValues(standing, "right").seatToPad).toBe(74);
    expect(drawingValues(standing, "right").pressedHeight).toBeUndefined();
  });

  it("means the repeats of one side, its own geometry before the shared one", () => {
    const left = drawingValues(record, "left");
    expect(left.pivotToStop).toBe(153);
    expect(left.armAngle).toBe(8);
    expect(left.gap).toBe(21.5);
    expect(left.freeHeight).toBe(60);
    expect(left.usableCompression).toBe(33);
    expect(left.rideHeight).toBeUndefined();
    const right = drawingValues(record, "right");
    expect(right.armAngle).toBe(9);
    expect(right.pivotToStop).toBe(153);
    expect(right.gap).toBeUndefined();
  });

  it("takes the limit being measured among several of a kind", () => {
    expect(drawingValues(record, "left", 0)["limit:metal"]).toBe(60);
    expect(drawingValues(record, "left", 1)["limit:metal"]).toBe(75);
  });
});

describe("drawnReadingOf", () => {
  it("knows every reading by its id", () => {
    expect(drawnReadingOf("left.gap")).toBe("gap");
    expect(drawnReadingOf("right.pivotToStop")).toBe("pivotToStop");
    expect(drawnReadingOf("left.cornerMassKg")).toBe("cornerMass");
    expect(drawnReadingOf("stop.freeHeight")).toBe("freeHeight");
    expect(drawnReadingOf("left.limits.1", "spring")).toBe("limit:spring");
    expect(drawnReadingOf("left.limits.1")).toBeNull();
    expect(drawnReadingOf("vehicle.liftMm")).toBeNull();
  });
});
