import { describe, expect, it } from "vitest";
import type { ReadingId } from "../../../src/physics/readings/readingId.ts";
import { withReading } from "../../../src/physics/remeasure/withReading.ts";
import { demoFitment } from "../demoFitments.ts";
import { exact, ride, uprightStrut, within } from "../staticFitments.ts";

const arm = demoFitment("arm-fits");
const reading = within(12.5, 0.4);

describe("a fitment with one reading in another's place", () => {
  it("has the stop's free height", () => {
    const changed = withReading(arm, "stop.freeHeight", reading);
    expect(changed).toEqual({ ...arm, stop: { ...arm.stop, freeHeight: reading } });
  });

  it("has the layout's reading", () => {
    const changed = withReading(arm, "pivotToStop", reading);
    expect(changed.layout.readings).toEqual({ ...arm.layout.readings, pivotToStop: reading });
    expect(changed.corners).toBe(arm.corners);
  });

  it("is as it was where the layout has no such reading", () => {
    expect(withReading(arm, "damperLength", reading)).toBe(arm);
  });

  it.each(["gap", "rideHeight", "cornerMassKg"] as const)("has one side's %s alone", (name) => {
    const changed = withReading(arm, `right.${name}`, reading);
    expect(changed.corners.find(({ side }) => side === "right")?.[name]).toBe(reading);
    expect(changed.corners.find(({ side }) => side === "left")).toBe(
      arm.corners.find(({ side }) => side === "left"),
    );
  });

  it("has one hard limit of a side, the others as they were", () => {
    const other = { kind: "metal" as const, at: "stop" as const, reading: exact(70) };
    const strut = uprightStrut({});
    const [corner] = strut.corners;
    if (corner === undefined) throw new Error("no corner");
    const two = { ...strut, corners: [{ ...corner, limits: [...corner.limits, other] }] };
    const [changed] = withReading(two, "left.limits.1", reading).corners;
    expect(changed?.limits).toEqual([corner.limits[0], { ...other, reading }]);
  });

  it("has a side's own geometry, beside what was measured apart there", () => {
    const once = withReading(arm, "left.armAngle", reading);
    const twice = withReading(once, "left.stopLean", exact(3));
    const left = twice.corners.find(({ side }) => side === "left");
    expect(left?.geometry).toMatchObject({ armAngle: reading, stopLean: exact(3) });
    expect(twice.layout).toBe(arm.layout);
  });

  it("has a ride value and its ±, the other tolerances kept", () => {
    const strut = uprightStrut({
      fitment: { ride: { ...ride, tolerances: { unsprungMassKg: 4 } } },
    });
    expect(withReading(strut, "ride.wheelRateNPerMm", within(30, 1.5)).ride).toEqual({
      ...ride,
      wheelRateNPerMm: 30,
      tolerances: { unsprungMassKg: 4, wheelRateNPerMm: 1.5 },
    });
  });

  it("is as it was where no ride value is known at all, or none is given", () => {
    const { ride: _, ...unknown } = uprightStrut({});
    expect(withReading(unknown, "ride.wheelRateNPerMm", reading)).toBe(unknown);
    const strut = uprightStrut({});
    expect(withReading(strut, "ride.wheelRateNPerMm", { values: [], tol: 1 })).toBe(strut);
  });

  it("has a contact by hand, its block's height, or the distance of a limit on the arm", () => {
    const byHand = demoFitment("checked-by-hand");
    const of = (id: ReadingId) =>
      withReading(byHand, id, reading).fullTravel?.corners.find(({ side }) => side === "left");
    expect(of("fullTravel.left.stop.heightToArch")?.contacts.stop).toBe(reading);
    expect(of("fullTravel.left.atRide.heightToArch")?.atRide).toBe(reading);
    expect(of("fullTravel.left.block.heightToArch")?.block?.reading).toBe(reading);
    expect(of("fullTravel.left.block.blockHeight")?.block?.blockHeight).toBe(reading);
    const onArm = withReading(demoFitment("two-arms-measured"), "left.limits.1.distance", reading);
    expect(onArm.corners[0]?.limits[1]?.distance).toBe(reading);
  });

  it("has how the wheel moves with the arm, and the usable compression, each with its ±", () => {
    const arm = withReading(demoFitment("kappa-not-measured"), "wheelPerOuter", within(1.06, 0.01));
    expect(arm.layout).toMatchObject({ wheelPerOuter: 1.06, wheelPerOuterTol: 0.01 });
    const { stop } = withReading(arm, "stop.usableCompressionMm", within(28, 0.5));
    expect(stop).toMatchObject({ usableCompressionMm: 28, usableTolMm: 0.5 });
  });

  it("is as it was for what nobody reads", () => {
    const fitment = demoFitment("checked-by-hand");
    expect(withReading(fitment, "linkage", reading)).toBe(fitment);
    expect(withReading(fitment, "left.settle", reading)).toEqual(fitment);
  });
});
