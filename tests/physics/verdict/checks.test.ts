import { describe, expect, it, vi } from "vitest";
import { assessStatic, completeAssessment } from "../../../src/physics/assess.ts";
import type { Check, CheckId, CornerAssessment, Fitment } from "../../../src/physics/fitment.ts";
import { decide, decideCarry, worstState } from "../../../src/physics/verdict/decisions.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";
import { unwrapped } from "../demoFitments.ts";
import { exact, ride, tyreLimit, uprightStrut, within } from "../staticFitments.ts";

vi.mock("../../../src/physics/kinematics/modelDoubt.ts", () => import("../noModelDoubt.ts"));

function corner(fitment: Fitment): CornerAssessment {
  const [first] = unwrapped(assessStatic(fitment, { samples: 20_000 })).corners;
  if (first === undefined) throw new Error("no corner");
  return first;
}

function check(fitment: Fitment, id: CheckId): Check {
  const found = corner(fitment).checks.find((candidate) => candidate.id === id);
  if (found === undefined) throw new Error(`no check ${id}`);
  return found;
}

describe("decisions by probability", () => {
  it.each([
    [0.95, 1, "ok"],
    [0.9499, 0.95, "care"],
    [0, 0.9499, "unsure"],
    [0, 0.0501, "unsure"],
    [0, 0.05, "no"],
  ])("wanted kept with %d, lesser with %d: %s", (wanted, lesser, state) => {
    expect(decide(wanted, lesser)).toBe(state);
  });

  it("judge a stop made to carry by its share: ok to 0.25, care to 0.5, else no", () => {
    expect([0, 0.25, 0.2501, 0.5, 0.5001].map(decideCarry)).toEqual([
      "ok",
      "ok",
      "care",
      "care",
      "no",
    ]);
  });

  it("rank no over unsure over care over ok", () => {
    expect(worstState([])).toBe("ok");
    expect(worstState(["ok", "care"])).toBe("care");
    expect(worstState(["care", "unsure", "ok"])).toBe("unsure");
    expect(worstState(["unsure", "no", "care"])).toBe("no");
  });
});

describe("clearance", () => {
  it("is unsure without a limit, and says which reading to take", () => {
    const found = check(uprightStrut({ limits: [] }), "clearance");
    expect(found).toMatchObject({ state: "unsure", reading: "left.limits.0" });
    expect(corner(uprightStrut({ limits: [] }))).toMatchObject({
      reserveMm: null,
      wheelTravelToHardLimitMm: null,
      hardLimit: null,
      freeShare: 45 / 75,
      spacerMm: null,
      tallerMm: null,
      clearanceProbability: null,
      intervals: { reserveMm: null },
    });
  });

  it("names the reading that causes most of the margin of error when unsure, and why", () => {
    const found = check(
      uprightStrut({ gap: within(45, 1), limits: [tyreLimit(within(75, 6))] }),
      "clearance",
    );
    expect(found).toMatchObject({ state: "unsure", reading: "left.limits.0" });
    expect(inModelUnits(found.sentence)).toMatch(
      /Re-measure the left clearance over the tire, more closely if you can: 97 % of the margin of error/,
    );
  });

  it("names the gap where the gap is the doubt", () => {
    const found = check(
      uprightStrut({ gap: within(45, 8), limits: [tyreLimit(within(75, 1))] }),
      "clearance",
    );
    expect(found).toMatchObject({ state: "unsure", reading: "left.gap" });
  });

  it("follows an adjusted reserve", () => {
    const fitment = uprightStrut({ limits: [tyreLimit(within(90, 1))] });
    expect(check(fitment, "clearance").state).toBe("ok");
    expect(check({ ...fitment, rules: { reserveMm: 25 } }, "clearance").state).toBe("care");
    expect(corner({ ...fitment, rules: { reserveMm: 25 } }).spacerMm).toBeCloseTo(10, 9);
  });

  it("takes the least limit, at the wheel by its own closing, at the stop through the layout", () => {
    const limits = [
      tyreLimit(exact(120)),
      { kind: "damper" as const, at: "wheel" as const, perWheel: 0.5, reading: exact(50) },
      { kind: "metal" as const, at: "stop" as const, perWheel: 0.1, reading: exact(99) },
    ];
    expect(corner(uprightStrut({ limits }))).toMatchObject({
      hardLimit: "metal",
      wheelTravelToHardLimitMm: 99,
    });
    expect(corner(uprightStrut({ limits: limits.slice(0, 2) }))).toMatchObject({
      hardLimit: "damper",
      wheelTravelToHardLimitMm: 100,
    });
  });

  it("is unsure when the tolerances reach past what the suspension can do", () => {
    const fitment = uprightStrut({
      gap: within(60, 2),
      limits: [tyreLimit(within(150, 2))],
      fitment: {
        layout: {
          kind: "arm",
          wheelPerOuter: 1,
          readings: { pivotToStop: within(100, 30), pivotToOuter: exact(180), armAngle: exact(0) },
        },
      },
    });
    const found = check(fitment, "clearance");
    expect(found).toMatchObject({ state: "unsure", reading: "pivotToStop" });
    expect(inModelUnits(found.sentence)).toMatch(/Within their ±.*can't move this far/);
    expect(check(fitment, "earlyContact")).toMatchObject({
      state: "unsure",
      reading: "pivotToStop",
    });
    const { intervals, clearanceProbability } = corner(fitment);
    expect(intervals.reserveMm?.every(Number.isFinite)).toBe(true);
    expect(clearanceProbability).toBeLessThan(0.95);
  });
});

describe("early contact", () => {
  it("is unsure without ride data and says what is missing", () => {
    const found = check(uprightStrut({ fitment: { ride: {} } }), "earlyContact");
    expect(found).toMatchObject({ state: "unsure", reading: "ride.wheelRateNPerMm" });
    expect(inModelUnits(found.sentence)).toMatch(/not known are the wheel rate, the tire rate, /);
    expect(corner(uprightStrut({ fitment: { ride: {} } })).missing).toEqual([
      "unsprungMassKg",
      "wheelRateNPerMm",
      "tyreRateNPerMm",
      "damperBumpNsPerMm",
      "damperReboundNsPerMm",
      "payloadPerCornerKg",
    ]);
  });

  it("names the corner weight where only that is missing", () => {
    const { cornerMassKg: _, ...lighter } = uprightStrut({}).corners[0] ?? { cornerMassKg: null };
    const fitment = uprightStrut({ fitment: { corners: [lighter as Fitment["corners"][number]] } });
    const found = check(fitment, "earlyContact");
    expect(found).toMatchObject({ state: "unsure", reading: "left.cornerMassKg" });
    expect(check(fitment, "stiffness")).toMatchObject({
      state: "unsure",
      reading: "left.cornerMassKg",
    });
  });

  it("is no without the payload already, where even unladen the stop is met too early", () => {
    const { payloadPerCornerKg: _, ...unloaded } = ride;
    const close = uprightStrut({ gap: within(5, 1), fitment: { ride: unloaded } });
    expect(check(close, "earlyContact").state).toBe("no");
    const far = uprightStrut({ fitment: { ride: unloaded } });
    expect(check(far, "earlyContact")).toMatchObject({
      state: "unsure",
      reading: "ride.payloadPerCornerKg",
    });
  });

  it("goes from ok through care and unsure to no as the gap closes", () => {
    const needed = Number(corner(uprightStrut({})).freeTravelNeededUnladenMm);
    const laden = Number(corner(uprightStrut({})).freeTravelNeededMm);
    const state = (gap: number) =>
      check(uprightStrut({ gap: within(gap, 1) }), "earlyContact").state;
    expect(state(laden + 2)).toBe("ok");
    expect(state(needed + 2)).toBe("care");
    expect(state(needed)).toBe("unsure");
    expect(state(needed - 2)).toBe("no");
  });

  it("takes the doubt of estimated ride data in, and names the worst", () => {
    const needed = Number(corner(uprightStrut({})).freeTravelNeededMm);
    const sure = uprightStrut({ gap: within(needed + 2, 1) });
    expect(check(sure, "earlyContact").state).toBe("ok");
    const estimated = {
      ...sure,
      ride: { ...ride, tolerances: { damperBumpNsPerMm: 1.2, damperReboundNsPerMm: 2.4 } },
    };
    const found = check(estimated, "earlyContact");
    expect(found.state).not.toBe("ok");
    expect(found.reading).toBe("ride.damperReboundNsPerMm");
    expect(Number(found.probability)).toBeGreaterThan(0.5);
    expect(Number(found.probability)).toBeLessThan(0.95);
  });

  it("for a stop made to carry, goes by its compression under load", () => {
    const carrying = (payloadPerCornerKg: number): Fitment => {
      const fitment = uprightStrut({
        gap: exact(0),
        fitment: { ride: { ...ride, payloadPerCornerKg } },
      });
      return { ...fitment, stop: { ...fitment.stop, duty: "carry" } };
    };
    const light = corner(carrying(20));
    expect(light.earlyContactProbability).toBeNull();
    expect(Number(light.loadedCompressionMm)).toBeGreaterThan(0);
    const states = [20, 120, 300].map((payload) => check(carrying(payload), "earlyContact").state);
    const shares = [20, 120, 300].map(
      (payload) => Number(corner(carrying(payload)).loadedCompressionMm) / 30,
    );
    expect(states).toEqual(shares.map(decideCarry));
    expect(states).toEqual(["ok", "ok", "care"].map((_, index) => decideCarry(shares[index] ?? 0)));
    expect(new Set(states).size).toBeGreaterThan(1);
  });
});

describe("balance", () => {
  const pair = (gaps: readonly [number, number], heights: readonly [number, number]): Fitment => {
    const fitment = uprightStrut({});
    const [first] = fitment.corners;
    if (first === undefined) throw new Error("no corner");
    return {
      ...fitment,
      corners: [
        { ...first, gap: within(gaps[0], 1), rideHeight: within(heights[0], 1) },
        { ...first, side: "right", gap: within(gaps[1], 1), rideHeight: within(heights[1], 1) },
      ],
    };
  };

  it("is ok up to 10 mm, care beyond, in gap and in ride height", () => {
    expect(check(pair([45, 35], [400, 410]), "balance").state).toBe("ok");
    expect(check(pair([45, 34.9], [400, 400]), "balance")).toMatchObject({
      state: "care",
      reading: "left.gap",
    });
    expect(check(pair([45, 45], [400, 410.1]), "balance")).toMatchObject({
      state: "care",
      reading: "left.rideHeight",
    });
    expect(
      check({ ...pair([45, 34], [400, 400]), rules: { balanceMm: 12 } }, "balance").state,
    ).toBe("ok");
  });

  it("is not asked of a lone corner", () => {
    expect(corner(uprightStrut({})).checks.map(({ id }) => id)).not.toContain("balance");
  });
});

describe("plausible", () => {
  const arm = (pivotToStop: number, pivotToOuter: number): Fitment => ({
    ...uprightStrut({ gap: within(12, 1), limits: [tyreLimit(within(80, 1))] }),
    layout: {
      kind: "arm",
      wheelPerOuter: 1,
      readings: { pivotToStop: within(pivotToStop, 2), pivotToOuter: within(pivotToOuter, 2) },
    },
    stop: {
      ...uprightStrut({}).stop,
      usableCompressionMm: 6,
    },
  });

  it.each([
    ["left.gap", uprightStrut({ gap: within(0.81, 0.1) })],
    ["left.gap", uprightStrut({ gap: within(1143, 25), limits: [tyreLimit(within(2000, 3))] })],
    ["left.limits.0", uprightStrut({ gap: exact(3), limits: [tyreLimit(within(3.6, 0.1))] })],
    ["left.rideHeight", uprightStrut({ corner: { rideHeight: within(20.5, 0.1) } })],
  ])("finds a slip of the unit in %s", (reading, fitment) => {
    const found = check(fitment, "plausible");
    expect(found).toMatchObject({ state: "unsure", reading });
    expect(inModelUnits(found.sentence)).toMatch(/inches and millimeters were mixed up/);
  });

  it("finds lengths of an arm typed in inches though their ratio is right", () => {
    expect(check(arm(150, 400), "plausible").state).toBe("ok");
    const inches = {
      ...arm(14.5, 16.2),
      corners: uprightStrut({ gap: within(4, 0.1), limits: [] }).corners,
    };
    expect(check(inches, "plausible")).toMatchObject({ state: "unsure", reading: "pivotToStop" });
  });

  it("finds a lever ratio outside 0.8…6", () => {
    expect(check(arm(80, 560), "plausible")).toMatchObject({
      state: "unsure",
      reading: "pivotToStop",
    });
    expect(inModelUnits(check(arm(80, 560), "plausible").sentence)).toMatch(/7\.00 : 1/);
    expect(check(arm(300, 210), "plausible").state).toBe("unsure");
    expect(check(arm(80, 470), "plausible").state).toBe("ok");
  });

  it("finds a gap larger than all travel", () => {
    const found = check(
      uprightStrut({ gap: within(90, 1), limits: [tyreLimit(within(80, 1))] }),
      "plausible",
    );
    expect(found).toMatchObject({ state: "unsure", reading: "left.gap" });
    expect(inModelUnits(found.sentence)).toMatch(/larger than all the travel/);
  });

  it("finds repeats that scatter more than 3 tolerances", () => {
    const scattered = (spread: number) =>
      uprightStrut({ gap: { values: [45, 45 + spread], tol: 1 } });
    expect(check(scattered(3), "plausible").state).toBe("ok");
    expect(check(scattered(3.1), "plausible")).toMatchObject({
      state: "unsure",
      reading: "left.gap",
    });
  });

  it("finds stops that stand wider apart than the wheels", () => {
    const fitment: Fitment = {
      ...uprightStrut({}),
      layout: { kind: "axle", readings: { track: within(1000, 5), stopSpacing: within(1700, 5) } },
    };
    expect(check(fitment, "plausible")).toMatchObject({ state: "unsure", reading: "stopSpacing" });
  });

  it("names every strange reading", () => {
    const fitment = uprightStrut({
      gap: within(0.81, 0.1),
      corner: { rideHeight: within(20.5, 0.1) },
    });
    expect(inModelUnits(check(fitment, "plausible").sentence)).toMatch(
      /Also look at the left ride height\.$/,
    );
  });
});

describe("a stiffness that does not work", () => {
  it("fails with the side on which it lies, where only the class is wrong", () => {
    const fitment = uprightStrut({});
    const assessment = unwrapped(assessStatic(fitment, { samples: 10_000 }));
    const completed = completeAssessment(fitment, assessment, [
      {
        side: "left",
        events: [],
        undampedEvents: null,
        fromTest: null,
        stopItselfPasses: false,
        ownFailures: [],
        classesThatWork: [160, 250],
        classWindow: [160, 250],
        failures: [],
        stiffnessSide: "soft",
        faults: [],
      },
    ]);
    expect(completed.verdict).toBe("no");
    expect(inModelUnits(completed.reason)).toMatch(/too soft: its class is 100 N\/mm/);
    expect(completed.corners[0]?.checks.find(({ id }) => id === "stiffness")).toMatchObject({
      state: "no",
      side: "soft",
    });
  });
});
