import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { assessFitment } from "../../../src/physics/assess.ts";
import { kinematicsOf } from "../../../src/physics/kinematics/kinematics.ts";
import { secantRate, stiffnessClassOf } from "../../../src/physics/stop/stiffnessClass.ts";
import { stopCurve } from "../../../src/physics/stop/stopCurve.ts";
import type { CheckRecord } from "../../../src/records/check/checkRecord.ts";
import { demoPack } from "../../../src/records/pack/demoPack.ts";
import { platformOf, platformReading, recordStop, stopOf } from "../../../src/records/pack/pack.ts";
import { readPackText, readPackValue } from "../../../src/records/pack/readPack.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";

const folder = new URL("../../../demo-data/", import.meta.url);
const text = readFileSync(new URL("pack.json", folder), "utf8");
const checks: CheckRecord[] = readdirSync(new URL("checks/", folder)).map((file) =>
  JSON.parse(readFileSync(new URL(`checks/${file}`, folder), "utf8")),
);

function faults(change: (pack: Record<string, never>) => void): string[] {
  const pack = JSON.parse(text);
  change(pack);
  const outcome = readPackText(JSON.stringify(pack));
  return outcome.ok ? [] : outcome.faults.map(({ sentence }) => inModelUnits(sentence));
}

describe("the demonstration pack", () => {
  it("is read without a fault, and is what the app is built with", () => {
    const outcome = readPackText(text);
    if (!outcome.ok) throw new Error(inModelUnits(outcome.fault.sentence));
    expect(outcome.value).toEqual(demoPack);
  });

  it("has the stops of the demo checks of version 1 as they are there", () => {
    for (const { stop, version } of checks) {
      if (Number(version) !== 1) continue;
      const found = demoPack.stops.find(({ name }) => name === stop.name);
      const {
        partNumber: _part,
        revision: _revision,
        ...figures
      } = found ? recordStop(found) : stop;
      expect(figures).toEqual(stop);
    }
  });

  it("covers R5 16 to 630 N/mm, damped and undamped, impact and carry, all four layouts", () => {
    const classes = new Set<number>();
    for (const stop of demoPack.stops) {
      const curve = stopCurve(stop);
      if (!curve.ok) throw new Error(inModelUnits(curve.fault.sentence));
      classes.add(stiffnessClassOf(secantRate(curve.value)));
    }
    for (const each of [16, 25, 40, 63, 100, 160, 250, 400, 630]) expect(classes).toContain(each);
    for (const duty of ["impact", "carry"]) {
      for (const tested of [true, false]) {
        const some = demoPack.stops.filter(
          (stop) => stop.duty === duty && stop.testedAtSpeed === tested,
        );
        expect(some.length).toBeGreaterThan(0);
      }
    }
    expect(new Set(demoPack.platforms.map(({ layout }) => layout.kind)).size).toBe(4);
    expect(demoPack.stops.length).toBeGreaterThanOrEqual(17);
    expect(demoPack.platforms.length).toBeGreaterThanOrEqual(4);
  });

  it("has stops as stops are: 50 to 60 % usable, stiffening, more damped deep in than at first touch", () => {
    for (const stop of demoPack.stops) {
      const height = stop.freeHeight.values[0] ?? 0;
      const share = stop.usableCompressionMm / height;
      expect(share).toBeGreaterThanOrEqual(0.5);
      expect(share).toBeLessThanOrEqual(0.601);
      const curve = stopCurve(stop);
      if (!curve.ok) throw new Error(inModelUnits(curve.fault.sentence));
      const usable = stop.usableCompressionMm;
      const start = curve.value.force(0.2 * usable) / (0.2 * usable);
      const middle = curve.value.force(0.5 * usable) / (0.5 * usable);
      const end = curve.value.force(usable) / usable;
      expect(middle).toBeGreaterThan(start);
      expect(end).toBeGreaterThan(1.5 * middle);
      expect(end).toBeLessThan(10 * middle);
      for (const [index, row] of (stop.damping ?? []).entries()) {
        const before = stop.damping?.[index - 1];
        if (before !== undefined) expect(row[1]).toBeGreaterThan(before[1]);
        expect(row[2]).toBeGreaterThan(row[1]);
      }
    }
  });

  it("has platforms that can be assessed with their usual stop as they stand", () => {
    for (const platform of demoPack.platforms) {
      expect(kinematicsOf(platform.layout).ok).toBe(true);
      const stop = stopOf(demoPack, platform.usualStop);
      const { layout, gap, rideHeight, cornerMassKg, limits, ride } = platform;
      if (stop === null || !gap || !rideHeight || !cornerMassKg || !ride) {
        throw new Error(`${platform.id} is not complete`);
      }
      const assessed = assessFitment(
        {
          use: "daily",
          layout,
          stop,
          ride,
          corners: [{ side: "left", gap, rideHeight, cornerMassKg, limits }],
        },
        { samples: 10_000 },
      );
      if (!assessed.ok) throw new Error(inModelUnits(assessed.fault.sentence));
      const corner = assessed.value.corners[0];
      expect(corner?.leverRatio).toBeGreaterThan(0.8);
      expect(corner?.leverRatio).toBeLessThan(4);
      expect(corner?.reserveMm).toBeGreaterThan(5);
      expect(corner?.missing).toEqual([]);
    }
  });

  it("is looked up by id", () => {
    const platform = platformOf(demoPack, "tern-hatch-front");
    expect(platform?.layout.kind).toBe("strut");
    expect(platform && platformReading(platform, "strut", "stopLean")?.values).toEqual([13]);
    expect(platform && platformReading(platform, "arm", "stopLean")).toBeNull();
    expect(platformOf(demoPack, null)).toBeNull();
    expect(stopOf(demoPack, "none")).toBeNull();
  });
});

type Loose = { [field: string]: Loose } & Loose[];

describe("a pack that is refused, in sentences that name the stop or platform", () => {
  const cases: readonly (readonly [string, (pack: Loose) => void, string])[] = [
    [
      "a curve that falls",
      (pack) => set(pack, "stops.2.curve.2.1", 1),
      "The stop “Tall firm”: the force curve of the stop: the force of point 3 is not above the point before it. Every point must lie deeper and push harder than the one before.",
    ],
    [
      "a stop without a curve",
      (pack) => set(pack, "stops.2.curve", undefined),
      "The stop “Tall firm”: the force curve of the stop: is missing.",
    ],
    [
      "a height that is text",
      (pack) => set(pack, "stops.0.freeHeight.values", ["60"]),
      "The stop “Tall progressive”: the free height of the stop: value 1 must be a number, not “60”.",
    ],
    [
      "a stop without a name",
      (pack) => set(pack, "stops.2.name", ""),
      "The stop 3 of the library: the name of the stop: must not be empty.",
    ],
    [
      "damping without a test",
      (pack) => set(pack, "stops.5.testedAtSpeed", false),
      "The stop “Long carry sleeve”: the damping of the stop: there is damping, but the stop is not marked as tested at speed. Damping comes only from tests at speed.",
    ],
    [
      "a platform's gap",
      (pack) => set(pack, "platforms.0.gap.values", [-1]),
      "The vehicle “Marlow 4-door utility”: the gap: no value can be below 0.",
    ],
    [
      "a platform's limit",
      (pack) => set(pack, "platforms.0.limits.0.kind", "wall"),
      "The vehicle “Marlow 4-door utility”: the kind of clearance 1: must be tyre, damper, spring, metal or other, not “wall”.",
    ],
    [
      "a platform's geometry",
      (pack) => set(pack, "platforms.0.layout.readings.pivotToStop", undefined),
      "The vehicle “Marlow 4-door utility”: the distance from pivot to stop: is missing.",
    ],
    [
      "a usual stop that is not there",
      (pack) => set(pack, "platforms.2.usualStop", "gone"),
      "The vehicle “Tern compact hatch”: its usual stop “gone” is not among the library's stops.",
    ],
    [
      "an id used twice",
      (pack) => set(pack, "stops.1.id", "tall-progressive"),
      "The id “tall-progressive” belongs to more than one stop of the library.",
    ],
    [
      "house rules",
      (pack) => set(pack, "rules", { daily: { accelerationCapG: -1 } }),
      "The greatest acceleration allowed must be more than 0.",
    ],
    [
      "a newer version",
      (pack) => set(pack, "version", 3),
      "The file was made by a newer version of Stopfit (pack version 3); this one reads up to version 2. Update Stopfit, then open it again.",
    ],
    [
      "no version",
      (pack) => set(pack, "version", undefined),
      "The file does not say which version of the library it is.",
    ],
    [
      "a check",
      (pack) => set(pack, "format", "stopfit-check"),
      "The file is a fitment check, not a parts library. Open it in the list of checks.",
    ],
    [
      "something else",
      (pack) => set(pack, "format", "x"),
      "The file is not a parts library: its format is “x”.",
    ],
  ];
  it.each(cases)("%s", (_, change, sentence) => {
    expect(faults((pack) => change(pack as unknown as Loose))).toContain(sentence);
  });

  it("text and values that are no pack at all", () => {
    for (const value of [null, 3, [], "pack"]) expect(readPackValue(value).ok).toBe(false);
    expect(readPackText("").ok).toBe(false);
    expect(readPackText("[".repeat(100_000)).ok).toBe(false);
  });
});

function set(pack: Loose, path: string, value: unknown): void {
  const keys = path.split(".");
  const last = keys.pop() ?? "";
  let at: Loose = pack;
  for (const key of keys) at = at[key] as Loose;
  if (value === undefined) delete at[last];
  else at[last] = value as Loose;
}
