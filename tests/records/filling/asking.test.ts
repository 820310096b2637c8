import { describe, expect, it } from "vitest";
import type { LayoutKind } from "../../../src/physics/fitment.ts";
import { newStoredCheck, type StoredCheck } from "../../../src/records/check/storedCheck.ts";
import {
  askedGeometry,
  askedLinkage,
  askedRightGeometry,
  hasLinkageQuestion,
  wantsLinkage,
} from "../../../src/records/filling/askedGeometry.ts";
import { addLimit, chooseLayout, setEntry } from "../../../src/records/filling/changes.ts";
import { withChoice } from "../../../src/records/filling/choice.ts";
import {
  armRoleChoice,
  chooseArmRole,
  chooseMeeting,
  isLayoutSaid,
  meetingChoice,
} from "../../../src/records/filling/layoutChoices.ts";
import {
  chooseLimitPlace,
  isLimitPlaced,
  limitPlaceOf,
} from "../../../src/records/filling/limitPlace.ts";
import { wheelTravelMargins } from "../../../src/records/filling/linkageGain.ts";
import { chooseMaking, isMadeOfParts } from "../../../src/records/filling/makings.ts";
import {
  peopleId,
  thingsId,
  withCountedPayload,
} from "../../../src/records/filling/payloadCounted.ts";
import {
  chooseSettledHeight,
  settledId,
  withSettledHeight,
} from "../../../src/records/filling/settledHeight.ts";
import { withSides } from "../../../src/records/filling/sides.ts";
import { chooseStand, standOf, standReading } from "../../../src/records/filling/stand.ts";

const on = (kind: LayoutKind): StoredCheck =>
  chooseLayout(withSides(newStoredCheck(), "both"), kind);
const typed = (text: string, unit: "mm" | "in" | "kg" | "lb" | "" = "mm") => ({
  texts: [text],
  unit,
  tol: "",
});
const readings = (stored: StoredCheck) => stored.record.layout?.readings ?? {};
const left = (stored: StoredCheck) => stored.record.corners.find(({ side }) => side === "left");

describe("what is asked of an arm", () => {
  it("is the arm itself; from both bolts and by heights where that is the way", () => {
    const stored = on("arm");
    expect(askedGeometry(stored)).toEqual([
      "pivotToStop",
      "pivotToOuter",
      "armAngle",
      "stopLineAngle",
      "stopLean",
    ]);
    const byTape = chooseMaking(chooseMaking(stored, "bolts", true), "heights", true);
    expect(askedGeometry(byTape)).toEqual([
      "boltSpacing",
      "frontBoltToStop",
      "rearBoltToStop",
      "frontBoltToOuter",
      "rearBoltToOuter",
      "pivotHeight",
      "outerHeight",
      "stopHeight",
      "stopLean",
    ]);
  });

  it("loses nothing typed the other way, and lets no direct reading go before one made of others", () => {
    const direct = setEntry(on("arm"), "pivotToStop", typed("224"));
    const bolts = chooseMaking(direct, "bolts", true);
    expect(isMadeOfParts(bolts, "bolts")).toBe(true);
    expect(readings(bolts).pivotToStop).toBeUndefined();
    const measured = setEntry(bolts, "boltSpacing", typed("330"));
    expect(readings(measured).boltSpacing?.values).toEqual([330]);
    const back = chooseMaking(measured, "bolts", false);
    expect(readings(back).pivotToStop?.values).toEqual([224]);
    expect(readings(back).boltSpacing).toBeUndefined();
    expect(readings(chooseMaking(back, "bolts", true)).boltSpacing?.values).toEqual([330]);
  });

  it("takes the other arm only where there is one and where it is wanted", () => {
    const stored = on("arm");
    expect(hasLinkageQuestion(stored)).toBe(false);
    expect(hasLinkageQuestion(chooseArmRole(stored, "carriesWheel"))).toBe(false);
    const lower = chooseArmRole(stored, "lower");
    expect(hasLinkageQuestion(lower)).toBe(true);
    expect(wantsLinkage(lower)).toBeNull();
    expect(askedLinkage(lower)).toEqual([]);
    expect(askedLinkage(withChoice(lower, "linkage", "yes"))).toEqual([
      "otherArmAngle",
      "otherArmLength",
      "jointHeight",
      "jointInset",
      "tyreOffset",
      "wheelCentreAbove",
    ]);
    expect(askedLinkage(withChoice(on("strut"), "linkage", "yes"))).toContain("jointToTop");
  });

  it("never asks the right side for what belongs to the whole axle", () => {
    expect(askedRightGeometry(on("axle"))).toEqual(["stopLean"]);
  });

  it("wants its role and its contact said, and takes not knowing the role for an answer", () => {
    const stored = on("arm");
    expect(isLayoutSaid(stored)).toBe(false);
    const unsaid = chooseArmRole(stored, "unsaid");
    expect(armRoleChoice(unsaid)).toBe("unsaid");
    expect(unsaid.record.layout?.armRole).toBeUndefined();
    expect(isLayoutSaid(unsaid)).toBe(false);
    const round = chooseMeeting(unsaid, "round");
    expect(meetingChoice(round)).toBe("round");
    expect(isLayoutSaid(round)).toBe(true);
    expect(chooseMeeting(round, "frame").record.layout).toMatchObject({ stopOn: "frame" });
    expect(isLayoutSaid(on("strut"))).toBe(true);
  });

  it("gains by the other arm, at this vehicle's own clearance", () => {
    const lower = chooseArmRole(on("arm"), "lower");
    const { travelMm, withoutMm, withMm } = wheelTravelMargins(lower, "mm");
    // 1.96·√((0.06/1.04)²/3 + 0.02²) and 1.96·0.02, of 100 mm.
    expect(travelMm).toBe(100);
    expect(withoutMm).toBeCloseTo(7.615, 3);
    expect(withMm).toBeCloseTo(3.92, 9);
    // Four inches of a person who works in inches.
    expect(wheelTravelMargins(lower, "in").travelMm).toBeCloseTo(101.6, 9);
    const tire = setEntry(
      addLimit(lower, "left", { kind: "tyre", at: "wheel" }),
      "left.limits.0",
      typed("150"),
    );
    expect(wheelTravelMargins(tire, "mm").withMm).toBeCloseTo(5.88, 9);
  });
});

describe("how the stop stands", () => {
  it("is one of gap, pressed and missing at a time; what was typed for another waits", () => {
    const gap = setEntry(on("arm"), "left.gap", typed("21"));
    const pressed = setEntry(
      chooseStand(gap, "left", "pressed"),
      standReading("left", "pressed"),
      typed("48"),
    );
    expect(left(pressed)?.gap).toBeUndefined();
    expect(left(pressed)?.pressedHeight?.values).toEqual([48]);
    const missing = chooseStand(pressed, "left", "missing");
    expect(left(missing)?.pressedHeight).toBeUndefined();
    expect(standOf(missing, "left")).toBe("missing");
    const again = chooseStand(missing, "left", "gap");
    expect(left(again)?.gap?.values).toEqual([21]);
    expect(left(again)?.seatToPad).toBeUndefined();
  });

  it("just touching is a gap of 0, and gives way to the gap typed before", () => {
    const gap = setEntry(on("strut"), "left.gap", typed("21"));
    const touching = chooseStand(gap, "left", "touching");
    expect(left(touching)?.gap).toMatchObject({ values: [0], tol: 0.5 });
    expect(left(chooseStand(touching, "left", "gap"))?.gap?.values).toEqual([21]);
    const fresh = chooseStand(chooseStand(on("strut"), "left", "touching"), "left", "gap");
    expect(left(fresh)?.gap).toBeUndefined();
  });
});

describe("where a clearance sits", () => {
  const withShock = (kind: LayoutKind) =>
    addLimit(on(kind), "left", { kind: "damper", at: "wheel" });

  it("is asked of everything that an arm may carry, and never taken as one to one unasked", () => {
    const stored = withShock("arm");
    expect(limitPlaceOf(stored, "left", 0)).toBeNull();
    expect(isLimitPlaced(stored, "left", 0)).toBe(false);
    expect(isLimitPlaced(chooseLimitPlace(stored, "left", 0, "wheel"), "left", 0)).toBe(true);
    expect(limitPlaceOf(withShock("axle"), "left", 0)).toBe("wheel");
    const tire = addLimit(on("arm"), "left", { kind: "tyre", at: "wheel" });
    expect(isLimitPlaced(tire, "left", 0)).toBe(true);
  });

  it("takes its distance from a length that is measured anyway, else asks for it", () => {
    const stored = setEntry(withShock("arm"), "pivotToOuter", typed("411"));
    const joint = chooseLimitPlace(stored, "left", 0, "joint");
    expect(left(joint)?.limits[0]).toMatchObject({ at: "arm" });
    expect(left(joint)?.limits[0]?.distance?.values).toEqual([411]);
    const elsewhere = chooseLimitPlace(joint, "left", 0, "distance");
    expect(left(elsewhere)?.limits[0]?.distance).toBeUndefined();
    expect(isLimitPlaced(elsewhere, "left", 0)).toBe(false);
    const given = setEntry(elsewhere, "left.limits.0.distance", typed("265"));
    expect(isLimitPlaced(given, "left", 0)).toBe(true);
    const atStop = chooseLimitPlace(given, "left", 0, "stop");
    expect(left(atStop)?.limits[0]).toMatchObject({ at: "stop" });
    expect(left(atStop)?.limits[0]?.distance).toBeUndefined();
  });
});

describe("ride height and payload", () => {
  it("takes the mean from above and below, and half their difference as friction", () => {
    let stored = chooseSettledHeight(on("arm"), "left", true);
    stored = withSettledHeight(setEntry(stored, settledId("left", "lifted"), typed("520")), "left");
    expect(left(stored)?.rideHeight).toBeUndefined();
    stored = withSettledHeight(setEntry(stored, settledId("left", "pushed"), typed("512")), "left");
    expect(left(stored)?.rideHeight?.values).toEqual([516]);
    expect(left(stored)?.settleMm).toBe(4);
    expect(left(chooseSettledHeight(stored, "left", false))?.settleMm).toBeUndefined();
  });

  it("counts 68 + 7 kg a person, and things by their own weight", () => {
    const people = setEntry(on("arm"), peopleId, typed("3", ""));
    const both = withCountedPayload(setEntry(people, thingsId, typed("50", "kg")));
    expect(both.entries["payload.total"]?.texts).toEqual(["275"]);
  });
});
