import { describe, expect, it } from "vitest";
import { cornerReadings, placeMeans } from "../../../src/physics/budget/cornerReadings.ts";
import type { Corner, Fitment, HardLimit } from "../../../src/physics/fitment.ts";
import { unwrapped } from "../demoFitments.ts";
import { refusal } from "../refusal.ts";
import { exact, tyreLimit, uprightStrut, within } from "../staticFitments.ts";

const metal: HardLimit = { kind: "metal", at: "stop", reading: within(88, 2) };

function placesOf(change: Parameters<typeof uprightStrut>[0]) {
  const fitment = uprightStrut(change);
  return cornerReadings(fitment, fitment.corners[0] as Corner);
}

describe("the readings of a corner's travel budget", () => {
  const twoLimits = { gap: within(45, 1), limits: [tyreLimit(exact(95)), metal] };
  const places = unwrapped(placesOf(twoLimits));

  it("stand in the order of the formulas: geometry, gap, free height, limits; each by its id", () => {
    expect(places.map(({ name, id }) => [name, id])).toEqual([
      ["stopLean", "stopLean"],
      ["gap", "left.gap"],
      ["freeHeight", "stop.freeHeight"],
      ["limit", "left.limits.0"],
      ["limit", "left.limits.1"],
    ]);
  });

  it("carry what was measured, and nothing for an angle that was not", () => {
    expect(places[0]).toEqual({ name: "stopLean", id: "stopLean", reading: null, drawn: null });
    expect(places[4]).toEqual({
      name: "limit",
      id: "left.limits.1",
      reading: within(88, 2),
      drawn: { id: "left.limits.1", mean: 88, halfWidth: 2, standardError: 0 },
    });
    expect([...placeMeans(places)]).toEqual([0, 45, 60, 95, 88]);
  });

  it("carry the side of a corner that was measured apart, and let one reading fill two places", () => {
    const fitment: Fitment = uprightStrut({
      corner: { side: "right", geometry: { armAngle: exact(7) } },
      fitment: {
        layout: {
          kind: "arm",
          readings: { pivotToStop: exact(150), pivotToOuter: exact(400), stopLean: exact(3) },
        },
      },
    });
    const own = unwrapped(cornerReadings(fitment, fitment.corners[0] as Corner));
    expect(own.map(({ id }) => id)).toEqual([
      "pivotToStop",
      "pivotToOuter",
      "right.armAngle",
      "right.armAngle",
      "stopLean",
      "right.gap",
      "stop.freeHeight",
      "right.limits.0",
    ]);
    expect([...placeMeans(own)]).toEqual([150, 400, 7, 7, 3, 45, 60, 95]);
  });
});

describe("a reading that no budget can be made from", () => {
  it("is a gap below zero; a gap of zero is one", () => {
    expect(refusal(placesOf({ gap: exact(-1) }))).toBe(
      "gapNegative (left.gap): The left gap cannot be below zero. Type 0 if the stop already touches its pad.",
    );
    expect(placesOf({ gap: exact(0) }).ok).toBe(true);
  });

  it("is a length of nothing: the stop's, or a limit's by its place", () => {
    const { stop } = uprightStrut({});
    const flat = placesOf({ fitment: { stop: { ...stop, freeHeight: exact(0) } } });
    expect(refusal(flat)).toBe(
      "lengthNotPositive (stop.freeHeight): The free height of the stop must be above zero. Measure it again.",
    );
    const touching = placesOf({ limits: [tyreLimit(exact(95)), { ...metal, reading: exact(0) }] });
    expect(refusal(touching)).toMatch(/^lengthNotPositive \(left\.limits\.1\): /);
  });

  it("is a geometry reading that is not there, or flat", () => {
    const layout = (lean: number): Partial<Fitment> => ({
      layout: { kind: "strut", readings: { stopLean: exact(lean) } },
    });
    expect(refusal(placesOf({ fitment: layout(90) }))).toMatch(/^angleTooSteep \(stopLean\): /);
    const lost = { kind: "axle", readings: { track: exact(1600) } } as unknown as Fitment["layout"];
    expect(refusal(placesOf({ fitment: { layout: lost } }))).toMatch(
      /^readingMissing \(stopSpacing\): /,
    );
  });
});
