import { describe, expect, it } from "vitest";
import type {
  CheckRecord,
  CheckStop,
  PartialCorner,
  TypedReading,
} from "../../../src/records/check/checkRecord.ts";
import {
  absentFaults,
  fieldTitle,
  type JudgedParts,
  recordFaults,
  stopFaults,
} from "../../../src/records/check/recordRules.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";
import { said } from "../../../src/saying/texts.ts";
import { demoRecord } from "../../support/demoRecords.ts";

// Each rule at its edge: what is just allowed has no fault, what is just past it has this one alone.

const record: CheckRecord = demoRecord("arm-fits");
const reading = (...values: number[]): TypedReading => ({ values, tol: 1 });

/** Code, field and sentence of each fault. */
function told(faults: ReturnType<typeof recordFaults>): string[] {
  return faults.map(
    ({ code, reading: id, sentence }) => `${code} ${id}: ${inModelUnits(sentence)}`,
  );
}

const faultsWith = (change: Partial<JudgedParts>) => told(recordFaults({ ...record, ...change }));
const withReadings = (readings: { readonly [name: string]: TypedReading }) =>
  faultsWith({
    layout: { ...record.layout, readings: { ...record.layout.readings, ...readings } },
  });
const withLeft = (left: Partial<PartialCorner>) =>
  faultsWith({ corners: [{ ...record.corners[0], ...left } as PartialCorner] });
const withLimit = (limit: object) =>
  withLeft({ limits: [{ ...record.corners[0]?.limits[0], ...limit } as never] });
const withRide = (ride: object) => faultsWith({ ride: { ...record.ride, ...ride } });
const withRules = (rules: object) => faultsWith({ rules: { ...record.rules, ...rules } as never });
const withStop = (stop: Partial<CheckStop>) => told(stopFaults({ ...record.stop, ...stop }));
const atSpeed = (stop: Partial<CheckStop>) => withStop({ testedAtSpeed: true, ...stop });

it("a record that holds has no fault, whole or in part", () => {
  expect(told(recordFaults(record))).toEqual([]);
  expect(told(recordFaults({ corners: [] }))).toEqual([]);
  expect(told(stopFaults({}))).toEqual([]);
});

describe("a reading", () => {
  it("is named by its side, what it is, and of a limit what touches there", () => {
    expect(said(fieldTitle(record, "left.gap"))).toBe("The left gap");
    expect(said(fieldTitle(record, "left.limits.1"))).toBe("The left shock travel left");
    expect(said(fieldTitle({ corners: [] }, "left.limits.1"))).toBe(
      "The left clearance to the hard contact",
    );
    const right = { side: "right", limits: [{ kind: "damper" }] } as unknown as PartialCorner;
    expect(said(fieldTitle({ corners: [right] }, "left.limits.0"))).toBe(
      "The left clearance to the hard contact",
    );
    expect(said(fieldTitle(record, "armAngle"))).toBe("The arm angle");
  });

  it("must be above 0, every value of it", () => {
    const above =
      "notAboveZero pivotToStop: The distance from pivot to stop: every value must be more than 0.";
    expect(withReadings({ pivotToStop: reading(152, 1e-9) })).toEqual([]);
    expect(withReadings({ pivotToStop: reading(152, 0) })).toEqual([above]);
    expect(withReadings({ pivotToStop: reading(-1, 152) })).toEqual([above]);
  });

  it("of a gap may be 0, and not below", () => {
    expect(withLeft({ gap: reading(0, 4) })).toEqual([]);
    expect(withLeft({ gap: reading(3, -0.1) })).toEqual([
      "negative left.gap: The left gap: no value can be below 0.",
    ]);
  });

  it("of an angle is less than a right angle, either way", () => {
    const large =
      "angleTooLarge armAngle: The arm angle: an angle here is less than 90° either way.";
    expect(withReadings({ armAngle: reading(89.9, -89.9) })).toEqual([]);
    expect(withReadings({ armAngle: reading(8, 90) })).toEqual([large]);
    expect(withReadings({ armAngle: reading(-90, 8) })).toEqual([large]);
  });

  it("of a limit is judged with its distance and its share", () => {
    expect(withLimit({ reading: reading(0.1) })).toEqual([]);
    expect(withLimit({ reading: reading(9, 0) })).toEqual([
      "notAboveZero left.limits.0: The left clearance over the tire: every value must be more than 0.",
    ]);
    expect(withLimit({ distance: reading(9, 0) })).toEqual([
      "notAboveZero left.limits.0.distance: The left distance from the pivot line to the contact on the arm: every value must be more than 0.",
    ]);
    expect(withLimit({ perWheel: 0 })).toEqual([
      "notAboveZero left.limits.0.perWheel: The closing per wheel travel must be more than 0.",
    ]);
  });

  it("on an arm needs a layout that has one", () => {
    const onArm = [{ ...record.corners[0], limits: [{ kind: "tyre", at: "arm" }] }];
    const corners = onArm as unknown as PartialCorner[];
    expect(told(recordFaults({ corners }))).toEqual([]);
    expect(told(recordFaults({ corners, layout: { kind: "arm" } }))).toEqual([]);
    expect(told(recordFaults({ corners, layout: { kind: "axle" } }))).toEqual([
      "limitWithoutArm left.limits.0: The left clearance over the tire is marked as measured on the arm, and this layout has no arm. Say whether it was measured at the wheel or at the stop.",
    ]);
  });
});

describe("a corner", () => {
  it("is left or right, and each once", () => {
    const sides = (...names: string[]) =>
      told(recordFaults({ corners: names.map((side) => ({ side, limits: [] }) as never) }));
    expect(sides("right", "left")).toEqual([]);
    expect(sides("right", "right")).toEqual([
      "sidesEqual corners: The corners: both are marked right. One must be left and the other right.",
    ]);
  });

  it("stands in one way: a gap, a stop that is pressed, or one that is missing", () => {
    const { gap: _, ...left } = record.corners[0] ?? { side: "left", limits: [] };
    const corner = (change: object) => faultsWith({ corners: [{ ...left, ...change } as never] });
    expect(corner({ pressedHeight: reading(50) })).toEqual([]);
    expect(corner({ pressedHeight: reading(50), gap: reading(4) })).toEqual([
      expect.stringMatching(
        /^standingTwice left\.\w+: The left side has both the gap and the .+\. The stop stands in one way only: keep the one that holds\.$/,
      ),
    ]);
  });
});

describe("a layout", () => {
  it("has a wheel travel per travel of the outer joint above 0 and above its ±", () => {
    const layout = (change: object) => faultsWith({ layout: { ...record.layout, ...change } });
    expect(layout({ wheelPerOuter: 1.1, wheelPerOuterTol: 1.09 })).toEqual([]);
    expect(layout({ wheelPerOuter: 1.1, wheelPerOuterTol: 1.1 })).toEqual([
      "toleranceTooLarge layout.wheelPerOuterTol: The wheel travel per travel of the outer joint: its ± must be less than the value itself.",
    ]);
    expect(layout({ wheelPerOuter: undefined, wheelPerOuterTol: 99 })).toEqual([]);
    expect(layout({ wheelPerOuter: 0 })).toContainEqual(
      expect.stringMatching(/^notAboveZero layout\.wheelPerOuter: The .+ must be more than 0\.$/),
    );
  });

  it("is looked at with no readings, and before it is chosen", () => {
    expect(told(recordFaults({ corners: [], layout: { kind: "arm" } }))).toEqual([]);
    expect(told(recordFaults({ corners: [], layout: {} }))).toEqual([]);
  });

  it("that lacks a length says so", () => {
    const { pivotToStop: _, ...readings } = record.layout.readings as Record<string, TypedReading>;
    expect(told(absentFaults(record))).toEqual([]);
    expect(told(absentFaults({ ...record, layout: { ...record.layout, readings } }))).toEqual([
      "fieldFault pivotToStop: The distance from pivot to stop: is missing.",
    ]);
  });
});

describe("a stop", () => {
  it("has a free height above 0, and less of it that can be pressed", () => {
    const height =
      "notAboveZero stop.freeHeight: The free height of the stop: every value must be more than 0.";
    const usable =
      "usableAboveHeight stop.usableCompressionMm: The usable compression of the stop must be less than its free height.";
    expect(withStop({ freeHeight: reading(60, 40), usableCompressionMm: 49.9 })).toEqual([]);
    expect(withStop({ freeHeight: reading(60, 40), usableCompressionMm: 50 })).toEqual([usable]);
    expect(told(stopFaults({ usableCompressionMm: 33 }))).toEqual([]);
    expect(told(stopFaults({ freeHeight: reading(), usableCompressionMm: 33 }))).toEqual([]);
    expect(told(stopFaults({ freeHeight: reading(60) }))).toEqual([]);
    expect(told(stopFaults({ freeHeight: reading(60, 0) }))).toEqual([height]);
    expect(told(stopFaults({ usableCompressionMm: 0 }))).toEqual([
      expect.stringMatching(
        /^notAboveZero stop\.usableCompressionMm: The .+ must be more than 0\.$/,
      ),
    ]);
  });

  it("has a curve that rises in both columns, from 0 where 0 is given", () => {
    const not = (column: string, point: number, before: string) =>
      `curveNotRising stop.curve: The force curve of the stop: the ${column} of point ${point} is not above ${before}. Every point must lie deeper and push harder than the one before.`;
    const curve = (...points: [number, number][]) => told(stopFaults({ curve: points }));
    expect(curve()).toEqual([]);
    expect(curve([0, 0], [5, 100])).toEqual([]);
    expect(curve([5, 100], [6, 101])).toEqual([]);
    expect(curve([0, 0])).toEqual([not("depth", 1, "0")]);
    expect(curve([0, 5], [5, 100])).toEqual([not("depth", 1, "0")]);
    expect(curve([5, 0], [6, 100])).toEqual([not("force", 1, "0")]);
    expect(curve([5, 100], [5, 200])).toEqual([not("depth", 2, "the point before it")]);
    expect(curve([5, 100], [6, 100])).toEqual([not("force", 2, "the point before it")]);
    expect(curve([5, 100], [0, 0])).toEqual([not("depth", 2, "the point before it")]);
  });

  it("has damping only from a test at speed, with rising depths and nothing below 0", () => {
    const row = (words: string) => `The damping of the stop: ${words}`;
    expect(
      atSpeed({
        damping: [
          [0, 0, 0],
          [5, 1, 1],
        ],
      }),
    ).toEqual([]);
    expect(withStop({ testedAtSpeed: false, damping: [[0, 1, 1]] })).toEqual([
      `dampingUntested stop.damping: ${row("there is damping, but the stop is not marked as tested at speed. Damping comes only from tests at speed.")}`,
    ]);
    const rising = `dampingNotRising stop.damping: ${row("the depth of row 1 is not above the row before it.")}`;
    expect(atSpeed({ damping: [[-1, 1, 1]] })).toEqual([rising]);
    expect(
      atSpeed({
        damping: [
          [5, 1, 1],
          [5, 1, 1],
        ],
      }),
    ).toEqual([rising.replace("row 1", "row 2")]);
    expect(
      atSpeed({
        damping: [
          [0, 1, 1],
          [0, 1, 1],
        ],
      }),
    ).toEqual([rising.replace("row 1", "row 2")]);
    const below = `dampingNegative stop.damping: ${row("row 1 has a value below 0.")}`;
    expect(atSpeed({ damping: [[5, -1, 1]] })).toEqual([below]);
    expect(atSpeed({ damping: [[5, 1, -1]] })).toEqual([below]);
  });

  it("has loss, static share and branches only from a test at speed, within what can be", () => {
    const branch = { share: 0.2, tauS: 0.1 };
    expect(atSpeed({ restLoss: 0.1, staticShare: 1, branches: [branch] })).toEqual([]);
    for (const [id, words, value] of [
      ["restLoss", "rest loss", 0.1],
      ["staticShare", "static share", 0.9],
      ["branches", "branches", [branch]],
    ] as const) {
      expect(withStop({ testedAtSpeed: false, [id]: value })).toEqual([
        `lossUntested stop.${id}: The ${words} of the stop is there, and the stop is not marked as tested at speed. Only such a test can show it.`,
      ]);
    }
    const share =
      "shareOutside stop.staticShare: The static share of the stop must be more than 0 and not more than 1.";
    expect(atSpeed({ staticShare: 0 })).toEqual([share]);
    expect(atSpeed({ staticShare: 1.001 })).toEqual([share]);
    const loss =
      "lossTooLarge stop.restLoss: The rest loss of the stop must be less than the share of its force that remains at rest.";
    expect(atSpeed({ restLoss: 0.99 })).toEqual([]);
    expect(atSpeed({ restLoss: 1 })).toEqual([loss]);
    expect(atSpeed({ restLoss: 0.6, staticShare: 0.6 })).toEqual([loss]);
    expect(atSpeed({ branches: [branch, { ...branch, tauS: 0 }] })).toEqual([
      "notAboveZero stop.branches: The branches of the stop: every relaxation time must be more than 0.",
    ]);
  });
});

describe("ride data and requirements", () => {
  it("are above 0, or at least not below, each with a ± that is not below 0", () => {
    expect(withRide({ wheelRateNPerMm: 0 })).toEqual([
      "notAboveZero ride.wheelRateNPerMm: The wheel rate must be more than 0.",
    ]);
    expect(withRide({ payloadPerCornerKg: 0 })).toEqual([]);
    expect(withRide({ payloadPerCornerKg: -1 })).toEqual([
      expect.stringMatching(/^negative ride\.payloadPerCornerKg: The .+ cannot be below 0\.$/),
    ]);
    expect(withRide({ tolerances: { wheelRateNPerMm: 0 } })).toEqual([]);
    expect(withRide({ tolerances: { wheelRateNPerMm: -1 } })).toEqual([
      "negative ride.wheelRateNPerMm: The wheel rate: its ± cannot be below 0.",
    ]);
  });

  it("have events with sizes above 0: of a landing its height, of a bump its length and speed too", () => {
    const landing = { kind: "landing", heightM: 0.2 };
    const bump = { kind: "bump", heightM: 0.1, lengthM: 1, speedKmPerH: 30 };
    expect(withRules({ events: [landing, bump] })).toEqual([]);
    const second =
      "notAboveZero rules.events: The rules: event 2 has a height, length or speed that is not more than 0.";
    for (const wrong of [
      { ...landing, heightM: 0 },
      { ...bump, heightM: 0 },
      { ...bump, lengthM: 0 },
      { ...bump, speedKmPerH: 0 },
    ]) {
      expect(withRules({ events: [landing, wrong] })).toEqual([second]);
    }
  });
});
