import { describe, expect, it } from "vitest";
import type { Fitment, HardLimit, Stop } from "../../../src/physics/fitment.ts";
import { unwrapped } from "../demoFitments.ts";
import { refusal } from "../refusal.ts";
import { exact, tyreLimit, uprightStrut, within } from "../staticFitments.ts";
import { atMeansOf, drawnOf, idsOf } from "./preparedModel.ts";

const metal: HardLimit = { kind: "metal", at: "stop", reading: within(88, 2) };

function placesOf(change: Parameters<typeof uprightStrut>[0]) {
  return atMeansOf(uprightStrut(change));
}

describe("the readings of a corner's travel budget", () => {
  const twoLimits = { gap: within(45, 1), limits: [tyreLimit(exact(95)), metal] };
  const corner = unwrapped(placesOf(twoLimits));

  it("stand once each: geometry, gap, free height, usable compression, limits", () => {
    expect(new Set(idsOf(corner))).toEqual(
      new Set([
        ...idsOf(corner).slice(0, corner.places.geometryCount),
        "left.gap",
        "stop.freeHeight",
        "stop.usableCompressionMm",
        "left.limits.0",
        "left.limits.1",
      ]),
    );
  });

  it("carry what was measured, and what is in doubt of it", () => {
    const { places, means } = corner;
    const metalPlace = places.limits[1]?.clearance ?? -1;
    expect(places.all[metalPlace]).toEqual({
      id: "left.limits.1",
      reading: within(88, 2),
      drawn: { id: "left.limits.1", mean: 88, halfWidth: 2, standardError: 0 },
    });
    expect(means[places.stands]).toBe(45);
    expect(means[places.freeHeight]).toBe(60);
  });

  it("have a usable compression that is 5 % off where the maker does not say", () => {
    const { usableTolMm: _, ...stop } = uprightStrut({}).stop;
    const ofStop = (change: Partial<Stop>) =>
      drawnOf(
        unwrapped(placesOf({ fitment: { stop: { ...stop, ...change } } })),
        "stop.usableCompressionMm",
      );
    expect(ofStop({})).toMatchObject({ mean: 30, halfWidth: 1.5 });
    expect(ofStop({ usableTolMm: 0.4 })).toMatchObject({ mean: 30, halfWidth: 0.4 });
  });

  it("have friction only where it was found", () => {
    expect(drawnOf(corner, "left.settle")).toBeUndefined();
    const stiff = unwrapped(placesOf({ corner: { settleMm: 4 } }));
    expect(drawnOf(stiff, "left.settle")).toMatchObject({ mean: 0, halfWidth: 4 });
  });

  it("carry the side of a corner that was measured apart", () => {
    const own = unwrapped(
      placesOf({
        corner: { side: "right", geometry: { armAngle: exact(7) } },
        fitment: {
          layout: {
            kind: "arm",
            readings: { pivotToStop: exact(150), pivotToOuter: exact(400), stopLean: exact(3) },
          },
        },
      }),
    );
    expect(idsOf(own)).toContain("right.armAngle");
    expect(idsOf(own)).not.toContain("armAngle");
    expect(idsOf(own)).toContain("right.limits.0");
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
      "lengthNotPositive (stop.freeHeight): The free height of the stop must be above zero. Re-measure it.",
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
