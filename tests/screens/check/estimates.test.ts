import { describe, expect, it } from "vitest";
import { completeRecord } from "../../../src/records/check/completeRecord.ts";
import { newStoredCheck, type StoredCheck } from "../../../src/records/check/storedCheck.ts";
import type { EntryUnit } from "../../../src/records/entry/units.ts";
import { chooseLayout, setEntry } from "../../../src/records/filling/changes.ts";
import { withChoice } from "../../../src/records/filling/choice.ts";
import { withPlatform } from "../../../src/records/filling/platforms.ts";
import {
  type RideWay,
  rideWay,
  type WayQuantity,
  withRideWay,
} from "../../../src/records/filling/rideWays.ts";
import { withSides } from "../../../src/records/filling/sides.ts";
import { storedFromRecord } from "../../../src/records/filling/storedFromRecord.ts";
import { withEstimates } from "../../../src/records/filling/withEstimates.ts";
import { demoPack } from "../../../src/records/pack/demoPack.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";
import { withPlainSpaces } from "../../../src/saying/quantityText.ts";
import { withMassWay } from "../../../src/screens/check/ride/cornerMassWay.ts";
import { rideRange } from "../../../src/screens/check/ride/rideText.ts";
import { referencePack } from "../../../src/screens/referencePack.ts";
import { demoRecord } from "../answer/demoChecks.ts";

const { platforms } = demoPack;

const fresh = () => chooseLayout(withSides(newStoredCheck(), "both"), "arm");
const typed = (stored: StoredCheck, id: string, text: string, unit: EntryUnit, tol = "") =>
  setEntry(stored, id, { texts: [text], unit, tol });
const ride = (stored: StoredCheck) =>
  withEstimates(stored, "mm", referencePack(), inModelUnits).record.ride;
const way = (stored: StoredCheck, name: WayQuantity, chosen: RideWay) =>
  withRideWay(stored, [name], chosen);

describe("estimates made in place", () => {
  it("give the wheel rate from the sag under a known load: m·g/sag (Hooke's law)", () => {
    let stored = way(fresh(), "wheelRateNPerMm", "sag");
    stored = typed(stored, "wheelRate.load", "60", "kg", "1.2");
    stored = typed(stored, "wheelRate.sag", "21", "mm", "1");
    const result = ride(stored);
    expect(result?.wheelRateNPerMm).toBeCloseTo((60 * 9.80665) / 21, 9);
    // First-order propagation (JCGM 100:2008, 5.1.6): the root of the squares of the relative ±.
    const relative = Math.hypot(1.2 / 60, 1 / 21);
    expect(result?.tolerances?.wheelRateNPerMm).toBeCloseTo(28.019 * relative, 3);
    expect(result?.estimated?.wheelRateNPerMm).toBe("from 21.0 mm of sag under 60 kg");
  });

  it("give the rate of a coil by Shigley's formula, from inches as well", () => {
    // Shigley, ch. 10, worked example: d 0.037 in, D 0.400 in, Na 10.5, G 11.85 Mpsi: 4.13 lbf/in.
    // (Example from memory; here G is 79.3 kN/mm² = 11.50 Mpsi, and the rate goes with G.)
    let stored = way(fresh(), "wheelRateNPerMm", "coil");
    stored = typed(stored, "coil.wire", "0.037", "in");
    stored = typed(stored, "coil.outside", "0.437", "in");
    stored = typed(stored, "coil.active", "10.5", "");
    stored = typed(stored, "coil.ratio", "1", "");
    const poundsPerInch = (ride(stored)?.wheelRateNPerMm ?? 0) / 0.175126835246476;
    expect(poundsPerInch).toBeCloseTo((4.13 * 79_300) / (11.85 * 6894.757), 1);
    const atLever = ride(typed(stored, "coil.ratio", "2", ""))?.wheelRateNPerMm ?? 0;
    expect(atLever * 4).toBeCloseTo(ride(stored)?.wheelRateNPerMm ?? 0, 9);
  });

  it("halve an axle's weight for both wheels, with a wider ± (common practice: 5 %)", () => {
    const stored = withEstimates(
      typed(withMassWay(fresh(), "left", "axle"), "axleMassKg", "1100", "kg", "0"),
      "mm",
      referencePack(),
      inModelUnits,
    );
    for (const { cornerMassKg } of stored.record.corners) {
      expect(cornerMassKg?.values).toEqual([550]);
      expect(cornerMassKg?.tol).toBeCloseTo(27.5, 9);
    }
  });

  it("leave a wheel that was weighed by itself alone", () => {
    let stored = typed(withMassWay(fresh(), "right", "scale"), "right.cornerMassKg", "571", "kg");
    stored = typed(withMassWay(stored, "left", "axle"), "axleMassKg", "1100", "kg");
    const masses = withEstimates(stored, "mm", referencePack(), inModelUnits).record.corners.map(
      ({ cornerMassKg }) => cornerMassKg,
    );
    expect(masses.map((mass) => mass?.values[0])).toEqual([550, 571]);
  });

  it("share a load out to one wheel", () => {
    let stored = way(fresh(), "payloadPerCornerKg", "total");
    stored = withChoice(typed(stored, "payload.total", "400", "kg"), "payload.share", "most");
    expect(ride(stored)?.payloadPerCornerKg).toBeCloseTo(150, 9);
  });

  it("work out what a hitch puts on a wheel of the axle of the check, and stay below its rating", () => {
    let stored = way(fresh(), "payloadPerCornerKg", "hitch");
    stored = typed(typed(stored, "payload.tongue", "200", "kg"), "payload.overhang", "1200", "mm");
    stored = typed(stored, "payload.wheelbase", "3000", "mm");
    const axle = (which: "front" | "rear") =>
      ride({ ...stored, record: { ...stored.record, axle: which } });
    expect(axle("rear")?.payloadPerCornerKg).toBeCloseTo(140, 9);
    expect(axle("front")?.payloadPerCornerKg).toBe(0);
    let rated = typed(withMassWay(fresh(), "left", "scale"), "left.cornerMassKg", "560", "kg");
    rated = typed(way(rated, "payloadPerCornerKg", "rating"), "payload.rating", "1500", "kg");
    expect(ride(rated)?.payloadPerCornerKg).toBe(190);
    expect(ride(rated)?.estimated?.payloadPerCornerKg).toContain("upper bound");
  });

  it("make the damping from a share of critical, and anew when the spring rate changes", () => {
    let stored = typed(withMassWay(fresh(), "left", "scale"), "left.cornerMassKg", "560", "kg");
    stored = typed(way(stored, "unsprungMassKg", "typed"), "ride.unsprungMassKg", "60", "kg");
    stored = typed(way(stored, "wheelRateNPerMm", "typed"), "ride.wheelRateNPerMm", "28", "N/mm");
    stored = withRideWay(stored, ["damperBumpNsPerMm", "damperReboundNsPerMm"], "share");
    stored = withEstimates(
      withChoice(stored, "damping.share", "usual"),
      "mm",
      referencePack(),
      inModelUnits,
    );
    // c = ζ·2·√(k·m), split 1 : 2. Rao, Mechanical Vibrations, chapter 2 (from memory).
    // 500 kg sprung on 28 kN/m, ζ = 0.35.
    const mean = (0.35 * 2 * Math.sqrt(28_000 * 500)) / 1000;
    expect(stored.record.ride?.damperBumpNsPerMm).toBeCloseTo((2 / 3) * mean, 9);
    expect(stored.record.ride?.damperReboundNsPerMm).toBeCloseTo((4 / 3) * mean, 9);
    const stiffer = ride(typed(stored, "ride.wheelRateNPerMm", "112", "N/mm"));
    expect(stiffer?.damperBumpNsPerMm).toBeCloseTo((4 / 3) * mean, 9);
  });

  it("are gone as soon as what they are made of can't be read", () => {
    let stored = way(fresh(), "wheelRateNPerMm", "sag");
    stored = typed(typed(stored, "wheelRate.load", "60", "kg"), "wheelRate.sag", "21", "mm");
    stored = withEstimates(stored, "mm", referencePack(), inModelUnits);
    expect(stored.record.ride?.wheelRateNPerMm).toBeGreaterThan(0);
    expect(ride(typed(stored, "wheelRate.sag", "none", "mm"))).toBeUndefined();
  });

  it("change nothing where nothing has changed", () => {
    let stored = way(fresh(), "wheelRateNPerMm", "sag");
    stored = typed(typed(stored, "wheelRate.load", "60", "kg"), "wheelRate.sag", "21", "mm");
    const once = withEstimates(stored, "mm", referencePack(), inModelUnits);
    expect(withEstimates(once, "mm", referencePack(), inModelUnits)).toBe(once);
    const demo = storedFromRecord(demoRecord("axle-towing-early"));
    expect(withEstimates(demo, "mm", referencePack(), inModelUnits)).toBe(demo);
  });
});

describe("the way a quantity is come by", () => {
  it("brings a typed value back after another way was tried", () => {
    const stored = typed(
      way(fresh(), "tyreRateNPerMm", "typed"),
      "ride.tyreRateNPerMm",
      "24o",
      "N/mm",
    );
    const usual = withEstimates(
      withChoice(way(stored, "tyreRateNPerMm", "usual"), "tyre.sort", "light"),
      "mm",
      referencePack(),
      inModelUnits,
    );
    expect(usual.record.ride?.estimated?.tyreRateNPerMm).toContain("common practice");
    const again = way(usual, "tyreRateNPerMm", "typed");
    expect(again.entries["ride.tyreRateNPerMm"]?.texts).toEqual(["24o"]);
    expect(again.record.ride).toBeUndefined();
  });

  it("leaves nothing behind in the record when it is not known", () => {
    const demo = storedFromRecord(demoRecord("arm-fits"));
    expect(rideWay(demo, "wheelRateNPerMm")).toBe("typed");
    const unknown = way(demo, "wheelRateNPerMm", "unknown");
    expect(unknown.record.ride?.wheelRateNPerMm).toBeUndefined();
    expect(completeRecord(unknown).ok).toBe(true);
    const again = way(unknown, "wheelRateNPerMm", "typed");
    expect(again.record.ride?.wheelRateNPerMm).toBe(demo.record.ride?.wheelRateNPerMm);
  });
});

describe("a platform of the parts library", () => {
  const [platform] = platforms;
  if (!platform) throw new Error("the library has no platform");

  it("fills in what is still open, and nothing that was said already", () => {
    const stored = withPlatform(newStoredCheck(), platform, referencePack());
    expect(stored.record).toMatchObject({
      axle: platform.axle,
      layout: { kind: platform.layout.kind },
      vehicle: { label: platform.label, platformId: platform.id },
    });
    const named = withPlatform(
      withPlatform(stored, null, referencePack()),
      platforms[2] ?? null,
      referencePack(),
    );
    expect(named.record.vehicle?.label).toBe(platform.label);
    expect(named.record.axle).toBe(platform.axle);
  });

  it("gives its rates with their ±, marked as coming from the pack", () => {
    const stored = way(withPlatform(fresh(), platform, referencePack()), "wheelRateNPerMm", "pack");
    const result = ride(stored);
    expect(result?.wheelRateNPerMm).toBe(platform.ride?.wheelRateNPerMm);
    expect(result?.tolerances?.wheelRateNPerMm).toBe(platform.ride?.tolerances?.wheelRateNPerMm);
    expect(result?.estimated?.wheelRateNPerMm).toContain("parts library");
  });
});

describe("an estimate on the screen", () => {
  it("names the unit once, to the place that its ± can tell", () => {
    const metric = { length: "mm" } as const;
    expect(withPlainSpaces(rideRange("damperBumpNsPerMm", 1.7434, 0.508, metric))).toBe(
      "1.74 ± 0.51 N·s/mm",
    );
    expect(withPlainSpaces(rideRange("unsprungMassKg", 67.5, 22.7, metric))).toBe("68 ± 23 kg");
    expect(withPlainSpaces(rideRange("wheelRateNPerMm", 28, 0, metric))).toBe("28 N/mm");
    const pounds = { length: "in" } as const;
    expect(withPlainSpaces(rideRange("payloadPerCornerKg", 45.359237, 4.5359237, pounds))).toBe(
      "100 ± 10 lb",
    );
  });
});
