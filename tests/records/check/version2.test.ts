import { describe, expect, it } from "vitest";
import { fitmentOf } from "../../../src/records/check/fitmentOf.ts";
import { readCheckValue } from "../../../src/records/check/readCheck.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";
import { demoRecord } from "../../support/demoRecords.ts";

const demo = demoRecord("arm-fits");
const [left, right] = demo.corners;
const { gap: _gap, ...standless } = left ?? {};
const { layout, stop } = demo;
const { pivotToStop: _distance, ...readings } =
  layout.kind === "arm" ? layout.readings : { pivotToStop: undefined };
const reading = { values: [40], tol: 1 };

/** What is said against the demo check with these fields of it changed. */
function faults(fields: object): string[] {
  const outcome = readCheckValue({ ...demo, ...fields });
  return outcome.ok ? [] : outcome.faults.map(({ sentence }) => inModelUnits(sentence));
}

const leftSide = (fields: object) => faults({ corners: [{ ...standless, ...fields }, right] });
const ofLayout = (fields: object) => faults({ layout: { ...layout, ...fields } });
const ofStop = (fields: object) => faults({ stop: { ...stop, testedAtSpeed: true, ...fields } });
const handCheck = (side: object, more: object = {}) =>
  faults({
    fullTravel: {
      acknowledged: null,
      measure: "wheelTravel",
      movement: "both",
      corners: [{ side: "left", contacts: {}, ...side }],
      ...more,
    },
  });

describe("how the stop stands", () => {
  it("is told in one way of three, a gap of 0 among them", () => {
    for (const name of ["gap", "pressedHeight", "seatToPad"]) {
      expect(leftSide({ [name]: reading })).toEqual([]);
    }
    expect(leftSide({ gap: { values: [0], tol: 1 }, settleMm: 3 })).toEqual([]);
  });

  it("is asked for where nothing tells it, and where two do", () => {
    expect(leftSide({})).toEqual(["The left gap: is missing."]);
    expect(leftSide({ gap: reading, seatToPad: reading })).toEqual([
      "The left side has both the gap and the distance from seat to pad. The stop stands in one way only: keep the one that holds.",
    ]);
    expect(leftSide({ pressedHeight: { values: [0], tol: 1 } })).toEqual([
      "The left height of the pressed stop: every value must be more than 0.",
    ]);
    expect(leftSide({ gap: reading, settleMm: -1 })).toEqual([
      "The left settling by friction: cannot be below 0.",
    ]);
  });
});

describe("a limit on the arm", () => {
  const limits = [{ kind: "damper", at: "arm", distance: reading, reading }];

  it("has its distance from the pivot line", () => {
    expect(leftSide({ gap: reading, limits })).toEqual([]);
    expect(leftSide({ gap: reading, limits: [{ kind: "damper", at: "arm", reading }] })).toEqual([
      "The distance from the pivot line of clearance 1 of the left corner: is missing.",
    ]);
  });

  it("needs an arm", () => {
    const strut = { layout: { kind: "strut", readings: {} } };
    const corners = [{ ...left, limits }];
    expect(faults({ ...strut, corners })).toEqual([
      "The left shock travel left is marked as measured on the arm, and this layout has no arm. Say whether it was measured at the wheel or at the stop.",
    ]);
  });
});

describe("a length of the geometry", () => {
  const bolts = { boltSpacing: reading, frontBoltToStop: reading, rearBoltToStop: reading };

  it("may be made of bolt distances, also of one side's own", () => {
    expect(ofLayout({ readings: { ...readings, ...bolts } })).toEqual([]);
    const { boltSpacing, ...own } = bolts;
    const shared = { ...layout, readings: { ...readings, boltSpacing } };
    const corners = demo.corners.map((corner) => ({ ...corner, geometry: own }));
    expect(faults({ layout: shared, corners })).toEqual([]);
    expect(faults({ layout: shared, corners: [corners[0], right] })).toEqual([
      "The distance from pivot to stop: is missing.",
    ]);
  });

  it("is missing where one of them is", () => {
    const { rearBoltToStop: _, ...two } = bolts;
    expect(ofLayout({ readings: { ...readings, ...two } })).toEqual([
      "The distance from pivot to stop: is missing.",
    ]);
  });

  it("is more than 0, an offset may have any sign, an angle is less than 90°", () => {
    const { pivotToStop } = layout.readings as { pivotToStop?: unknown };
    const also = (more: object) => ofLayout({ readings: { ...readings, pivotToStop, ...more } });
    expect(also({ jointHeight: { values: [0], tol: 1 } })).toEqual([
      "The height of the upper joint above the lower: every value must be more than 0.",
    ]);
    expect(also({ jointInset: { values: [-12], tol: 1 } })).toEqual([]);
    expect(also({ otherArmAngle: { values: [95], tol: 1 } })).toEqual([
      "The angle of the other arm: an angle here is less than 90° either way.",
    ]);
  });
});

describe("a layout", () => {
  it("says which arm was measured and what the stop is fixed to", () => {
    expect(ofLayout({ armRole: "upper", stopOn: "arm", wheelPerOuter: 1.05 })).toEqual([]);
    expect(ofLayout({ armRole: "middle" })[0]).toContain(
      "must be lower, upper, underStrut or carriesWheel, not “middle”.",
    );
    expect(ofLayout({ wheelPerOuter: 1.05, wheelPerOuterTol: 1.2 })).toEqual([
      "The wheel travel per travel of the outer joint: its ± must be less than the value itself.",
    ]);
  });
});

describe("what a stop shows at speed", () => {
  it("stands only with a test at speed, and within what can be", () => {
    const loss = {
      restLoss: 0.05,
      staticShare: 0.9,
      branches: [{ tauS: 0.01, share: 0.2 }],
      testDoubt: { fastestMmPerS: 500, laws: [{ damping: null, restLoss: 0.04 }] },
    };
    expect(ofStop(loss)).toEqual([]);
    const untested = ofStop({ ...loss, testedAtSpeed: false });
    expect(untested).toHaveLength(4);
    expect(untested[0]).toBe(
      "The rest loss of the stop is there, and the stop is not marked as tested at speed. Only such a test can show it.",
    );
    expect(ofStop({ staticShare: 1.2 })[0]).toMatch(/more than 0 and not more than 1/);
    expect(ofStop({ restLoss: 0.9, staticShare: 0.8 })[0]).toMatch(/less than the share/);
    expect(ofStop({ testDoubt: { fastestMmPerS: 500, laws: [{ restLoss: 0.04 }] } })).toHaveLength(
      1,
    );
    expect(ofStop({ branches: [{ tauS: 0, share: 0.1 }] })[0]).toMatch(/relaxation time/);
  });
});

describe("the demands", () => {
  it("have a kurtosis of 3 or 5, and humps", () => {
    const hump = { kind: "hump", heightM: 0.1, lengthM: 3.7, speedKmPerH: 30 };
    expect(faults({ rules: { roadKurtosis: 3, events: [hump] } })).toEqual([]);
    expect(faults({ rules: { roadKurtosis: 4 } })[0]).toContain("must be 3 or 5, not 4.");
    expect(faults({ rules: { events: [{ ...hump, lengthM: 0 }] } })[0]).toMatch(/event 1 has a/);
  });
});

describe("the check by hand", () => {
  it("holds contacts, a block among them, and goes to the assessment", () => {
    const block = { reading, blockHeight: reading };
    const contacts = { stop: { reading }, block, hose: { note: "brake hose" } };
    expect(handCheck({ contacts })).toEqual([]);
    const outcome = readCheckValue({
      ...demo,
      fullTravel: {
        acknowledged: null,
        measure: "wheelTravel",
        movement: "both",
        corners: [{ side: "left", contacts }],
      },
    });
    expect(outcome.ok && fitmentOf(outcome.value).fullTravel?.corners).toEqual([
      { side: "left", contacts: { stop: reading }, block },
    ]);
  });

  it("is refused in a sentence where it can't be so", () => {
    expect(handCheck({}, { movement: "two" })[0]).toMatch(/must be both or one, not “two”/);
    expect(handCheck({ contacts: { stop: { reading: { values: [-1], tol: 1 } } } })).toEqual([
      "The left wheel travel in the check of the whole travel: every value must be 0 or more.",
    ]);
    expect(handCheck({}, { corners: [1, 2].map(() => ({ side: "left", contacts: {} })) })).toEqual([
      "The check of the whole travel: both sides are marked left. One must be left and the other right.",
    ]);
  });
});

describe("what belongs to the job and was fitted", () => {
  it("is kept, and told in plain words where it is amiss", () => {
    const job = { id: "j1", label: "Osprey before and after", moment: "before" };
    const fitted = { partNumber: "MB-60", spacerMm: 10, at: "2026-06-12T10:00:00Z", by: "Ines" };
    expect(faults({ job, fitted })).toEqual([]);
    expect(faults({ job: { ...job, moment: "during" } })[0]).toMatch(
      /^The moment of the job: must be before or after/,
    );
    expect(faults({ fitted: { ...fitted, at: "yesterday" } })[0]).toMatch(
      /^The date of what was fitted: is not a date and time in UTC/,
    );
    expect(faults({ fitted: { ...fitted, spacerMm: -1 } })[0]).toMatch(/cannot be below 0/);
  });

  it("a reading says who it comes from", () => {
    expect(leftSide({ gap: { ...reading, source: "pack", by: "Ines" } })).toEqual([]);
    expect(leftSide({ gap: { ...reading, source: "guess" } })[0]).toMatch(
      /^The left gap: .*must be measured, pack or estimated, not “guess”/,
    );
  });
});
