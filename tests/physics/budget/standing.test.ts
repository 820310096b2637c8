import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { assessStatic } from "../../../src/physics/assess.ts";
import { gapOf, measuredGapOf, recordedGapOf } from "../../../src/physics/budget/gap.ts";
import type { Corner, Fitment, Reading } from "../../../src/physics/fitment.ts";
import { fitmentWithStop } from "../../../src/physics/prescription/fitmentWithStop.ts";
import { worded } from "../../../src/saying/texts.ts";
import { demoFitment, unwrapped } from "../demoFitments.ts";
import { refusal } from "../refusal.ts";
import { exact, tyreLimit, uprightStrut, within } from "../staticFitments.ts";
import { atMeansOf, budgetOf } from "./preparedModel.ts";

/** The stop of 60 mm as it stands: pressed, missing, or with a gap. */
function standing(way: "gap" | "pressedHeight" | "seatToPad", reading: Reading): Fitment {
  const fitment = uprightStrut({ limits: [tyreLimit(exact(95))] });
  const { gap: _, ...corner } = fitment.corners[0] as Corner;
  return { ...fitment, corners: [{ ...corner, [way]: reading }] };
}
const only = (fitment: Fitment) => fitment.corners[0] as Corner;

describe("where the stop stands", () => {
  it("is its gap, its height now less its free height, or seat to pad less its height", () => {
    for (const [fitment, gap] of [
      [standing("gap", exact(45)), 45],
      [standing("pressedHeight", exact(52)), -8],
      [standing("seatToPad", exact(100)), 40],
    ] as const) {
      expect(unwrapped(gapOf(fitment, only(fitment)))).toBe(gap);
      expect(budgetOf(fitment).budget.gapMm).toBe(gap);
    }
  });

  it("is told once, or the fault says so", () => {
    const { gap: _, ...none } = only(standing("gap", exact(45)));
    const fitment = standing("gap", exact(45));
    expect(refusal(atMeansOf({ ...fitment, corners: [none] }))).toMatch(
      /^gapMissing \(left\.gap\)/,
    );
    const both = { ...only(fitment), seatToPad: exact(100) };
    expect(refusal(atMeansOf({ ...fitment, corners: [both] }))).toMatch(
      /^gapTwice \(left\.seatToPad\)/,
    );
  });

  it("leaves a pressed stop an ordinary answer: contact below the ride height", () => {
    const { budget } = budgetOf(standing("pressedHeight", exact(52)));
    expect(budget.contactMm).toBeCloseTo(-8, 9);
    expect(budget.fullStopMm).toBeCloseTo(22, 9);
    expect(budget.freeShare).toBe(0);
    const [corner] = unwrapped(
      assessStatic(standing("pressedHeight", exact(52)), { samples: 10_000 }),
    ).corners;
    const early = corner?.checks.find(({ id }) => id === "earlyContact");
    expect(worded(early?.sentence ?? []).slice(0, 2)).toEqual([
      "It sits on its stop, pressed by ",
      { kind: "length", value: 8 },
    ]);
  });

  it("another stop is counted from the one that stood there, its spacer with it", () => {
    const tried = (fitment: Fitment, height: number, spacerMm: number) => {
      const stop = { ...fitment.stop, name: "Another", freeHeight: exact(height) };
      return { ...fitment, stop, recordedStop: fitment.stop, spacerMm };
    };
    for (const [way, value, gap] of [
      ["gap", 45, 45 + 60 - 70 - 5],
      ["pressedHeight", 52, 52 - 70 - 5],
      ["seatToPad", 100, 100 - 70 - 5],
    ] as const) {
      const changed = tried(standing(way, exact(value)), 70, 5);
      expect(unwrapped(gapOf(changed, only(changed))), way).toBe(gap);
      expect(budgetOf(changed).budget.gapMm, way).toBe(gap);
      const before = standing(way, exact(value));
      expect(measuredGapOf(changed, only(changed))).toEqual(gapOf(before, only(before)));
    }
  });

  it("held nothing up where there was no stop", () => {
    const missing = standing("seatToPad", exact(40));
    expect(unwrapped(recordedGapOf(missing, only(missing)))).toBeNull();
    const pressed = standing("pressedHeight", exact(52));
    expect(unwrapped(recordedGapOf(pressed, only(pressed)))).toBe(-8);
  });

  it("shares the stop's height between gap and taller stop: a higher one cancels in seat to pad", () => {
    // With D measured, H + 1 takes 1 mm off the gap; one and the same draw of H enters the usable share.
    const fitment = standing("seatToPad", exact(100));
    const doubtful = { ...fitment, stop: { ...fitment.stop, freeHeight: within(60, 3) } };
    const [corner] = unwrapped(assessStatic(doubtful, { samples: 10_000 })).corners;
    expect(corner?.doubt.contact.map(({ reading }) => reading)).toContain("stop.freeHeight");
    const gapped = standing("gap", exact(40));
    const sure = { ...gapped, stop: { ...gapped.stop, freeHeight: within(60, 3) } };
    const [other] = unwrapped(assessStatic(sure, { samples: 10_000 })).corners;
    expect(other?.doubt.contact.map(({ reading }) => reading)).not.toContain("stop.freeHeight");
  });
});

describe("a taller stop", () => {
  const names = [
    "two-arms-measured",
    "upper-arm-stop",
    "stop-missing",
    "sitting-on-its-stop",
    "kappa-not-measured",
    "strut-and-arm",
    "checked-by-hand",
  ];

  it("never lengthens the travel to contact, whatever the linkage", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...names),
        fc.double({ min: 0, max: 25, noNaN: true }),
        (name, extra) => {
          const fitment = demoFitment(name);
          const { freeHeight } = fitment.stop;
          const stop = {
            ...fitment.stop,
            name: "Taller",
            freeHeight: { ...freeHeight, values: freeHeight.values.map((value) => value + extra) },
          };
          const taller = { ...fitment, stop, recordedStop: fitment.stop };
          for (const corner of fitment.corners) {
            const before = budgetOf({ ...fitment, corners: [corner] }).budget;
            const after = budgetOf({ ...taller, corners: [corner] }).budget;
            expect(after.contactMm).toBeLessThanOrEqual(before.contactMm + 1e-9);
          }
        },
      ),
      { numRuns: 60 },
    );
  });

  it("that is the recorded one again changes nothing", () => {
    for (const name of names) {
      const fitment = demoFitment(name);
      const again = fitmentWithStop(fitment, { ...fitment.stop, name: "The same" });
      if (again.ok) expect(again.value).toEqual(fitment);
    }
  });
});

describe("friction", () => {
  it("widens the travel to contact by its own ±, and leaves the reserve", () => {
    const of = (settleMm: number) => {
      const fitment = uprightStrut({ gap: exact(45), limits: [tyreLimit(exact(95))] });
      const corners = [{ ...only(fitment), settleMm }];
      return unwrapped(assessStatic({ ...fitment, corners }, { samples: 20_000 })).corners[0];
    };
    const [none, some] = [of(0), of(6)];
    expect(some?.intervals.reserveMm).toEqual(none?.intervals.reserveMm);
    const width = ([low, high]: readonly [number, number] = [0, 0]) => high - low;
    expect(width(some?.intervals.wheelTravelToContactMm)).toBeGreaterThan(
      width(none?.intervals.wheelTravelToContactMm) + 3,
    );
    expect(some?.doubt.contact.map(({ reading }) => reading)).toContain("left.settle");
    expect(some?.doubt.reserve.map(({ reading }) => reading)).not.toContain("left.settle");
  });
});

describe("a limit on the arm", () => {
  it("is met when its point of the arm's line has risen by the clearance", () => {
    // Level arm of 400 mm to the joint: the point at 200 mm rises half as far as the wheel.
    const fitment: Fitment = {
      ...uprightStrut({ gap: exact(10) }),
      layout: {
        kind: "arm",
        armRole: "carriesWheel",
        readings: { pivotToStop: exact(200), pivotToOuter: exact(400), armAngle: exact(0) },
      },
    };
    const limits: Corner["limits"] = [
      { kind: "damper", at: "arm", distance: exact(200), reading: exact(60) },
    ];
    const corners = [{ ...only(fitment), limits }];
    expect(budgetOf({ ...fitment, corners }).budget.limit).toMatchObject({
      kind: "damper",
      hardLimitMm: expect.closeTo(120, 9),
    });
  });

  it("needs its distance, and an arm", () => {
    const limits: Corner["limits"] = [{ kind: "damper", at: "arm", reading: exact(60) }];
    const fitment = uprightStrut({});
    expect(refusal(atMeansOf({ ...fitment, corners: [{ ...only(fitment), limits }] }))).toMatch(
      /^limitNotOnArm \(left\.limits\.0\)/,
    );
    const onArm: Fitment = {
      ...fitment,
      layout: { kind: "arm", readings: { pivotToStop: exact(200), pivotToOuter: exact(400) } },
      corners: [{ ...only(fitment), limits }],
    };
    expect(refusal(atMeansOf(onArm))).toMatch(/^readingMissing \(left\.limits\.0\.distance\)/);
  });
});

describe("a beam axle", () => {
  it("has the lesser reserve of both wheels and one, for what was measured at the wheel", () => {
    const axle = (at: "wheel" | "stop"): Fitment => ({
      ...uprightStrut({
        gap: exact(40),
        limits: [{ kind: "tyre", at, reading: exact(100) }],
      }),
      layout: { kind: "axle", readings: { track: exact(1600), stopSpacing: exact(800) } },
    });
    // z_u = 70; with one wheel up 70 · 3200/2400 = 93.3.
    const { budget } = budgetOf(axle("wheel"));
    expect(budget.limit?.reserveMm).toBeCloseTo(100 - (70 * 4) / 3, 9);
    // s_one(100 − 5) = 95 · 3/4 = 71.25.
    expect(budget.limit?.spacerMm).toBeCloseTo(70 - 71.25, 9);
    expect(budgetOf(axle("stop")).budget.limit?.reserveMm).toBeCloseTo(30, 9);
  });
});
