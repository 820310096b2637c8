import { describe, expect, it, vi } from "vitest";
import { assessFitment, assessStatic, completeAssessment } from "../../src/physics/assess.ts";
import type { Corner, CornerAssessment, Fitment, Ride, Stop } from "../../src/physics/fitment.ts";
import { type CornerDynamics, cornerDynamics } from "../../src/physics/stiffness/cornerDynamics.ts";
import { inModelUnits } from "../../src/saying/modelUnits.ts";
import { unwrapped } from "./demoFitments.ts";
import { refusal } from "./refusal.ts";
import { exact, ride, tyreLimit, uprightStrut, within } from "./staticFitments.ts";

vi.mock("../../src/physics/kinematics/modelDoubt.ts", () => import("./noModelDoubt.ts"));

const few = { samples: 10_000 };

function assessed(fitment: Fitment): readonly CornerAssessment[] {
  return unwrapped(assessStatic(fitment, few)).corners;
}

function first(fitment: Fitment): CornerAssessment {
  return assessed(fitment)[0] as CornerAssessment;
}

function earlyContact(fitment: Fitment): string {
  const check = first(fitment).checks.find(({ id }) => id === "earlyContact");
  return check === undefined ? "none" : `${check.state}: ${inModelUnits(check.sentence)}`;
}

describe("what is not known of a corner", () => {
  it("the payload: nothing is said of the loaded vehicle, and no probability", () => {
    const { payloadPerCornerKg: _, ...unloaded } = ride;
    const corner = first(uprightStrut({ fitment: { ride: unloaded } }));
    expect(corner.earlyContactProbability).toBeNull();
    expect(corner.loadedSagMm).toBeNull();
    expect(corner.freeTravelNeededUnladenMm).not.toBeNull();
  });

  it("its weight: it is assessed without", () => {
    const fitment = uprightStrut({});
    const { cornerMassKg: _, ...unweighed } = fitment.corners[0] as Corner;
    const corner = first({ ...fitment, corners: [unweighed] });
    expect(corner.missing).toEqual(["cornerMassKg"]);
    expect(corner.earlyContactProbability).toBeNull();
    expect(corner.wheelTravelToContactMm).toBe(45);
  });
});

describe("a stop made to carry", () => {
  /** 100 N/mm throughout, on a strut at 26 N/mm, without a gap: pressed by payload · g / 126 N/mm. */
  const carrying = (payload: number | undefined, stop: Partial<Stop> = {}): Fitment => {
    const fitment = uprightStrut({ gap: exact(0) });
    const { payloadPerCornerKg: _, ...unloaded } = ride;
    const loaded: Ride =
      payload === undefined ? unloaded : { ...unloaded, payloadPerCornerKg: payload };
    return {
      ...fitment,
      ride: loaded,
      stop: {
        ...fitment.stop,
        duty: "carry",
        curve: [
          [15, 1500],
          [30, 3000],
        ],
        ...stop,
      },
    };
  };

  it("is pressed by x of (26 + 100) x = 100 · 9.80665 N", () => {
    const corner = first(carrying(100));
    expect(corner.loadedCompressionMm).toBeCloseTo(980.665 / 126, 9);
    expect(corner.earlyContactProbability).toBeNull();
    expect(earlyContact(carrying(100))).toMatch(/^care: .* pressed by 7\.8 mm, 26 %/);
  });

  it("is not pressed where its gap is wider than the sag of 26 x = 980.665 N, 37.7 mm", () => {
    const fitment = carrying(100);
    const corner = { ...(fitment.corners[0] as Corner), gap: exact(40) };
    expect(first({ ...fitment, corners: [corner] }).loadedCompressionMm).toBe(0);
  });

  it("has no compression where the sag is not known, nor has a stop of another duty", () => {
    expect(first(carrying(undefined))).not.toHaveProperty("loadedCompressionMm");
    expect(earlyContact(carrying(undefined))).toMatch(/^unsure: .*not known is the payload/);
    expect(first(carrying(100, { duty: "impact" }))).not.toHaveProperty("loadedCompressionMm");
  });

  it("with an estimated curve is pressed by 980.665 / (26 + 100 ± 30 %)", () => {
    const estimated = (forceShare: number) => ({ estimated: { how: "estimate", forceShare } });
    expect(earlyContact(carrying(100, estimated(0.3)))).toMatch(
      /^unsure: .* pressed by 6\.3 mm to 10\.2 mm under load/,
    );
    // A curve of which nothing is known may give nothing: 980.665 / 26, and 980.665 / (26 + 250).
    expect(earlyContact(carrying(100, estimated(1.5)))).toMatch(
      /^unsure: .* pressed by 3\.6 mm to 37\.7 mm under load/,
    );
    // 5.4 to 5.6 mm are both less than a quarter of 30 mm.
    expect(earlyContact(carrying(70, estimated(0.02)))).toMatch(/^ok: /);
    expect(earlyContact(carrying(undefined, estimated(0.3)))).toMatch(/^unsure: .*the payload/);
  });

  it("is not sure either where the softest that it may be cannot hold the payload at all", () => {
    // Level arm, 50 and 100 mm: the wheel rises by 100 mm at most and the stop closes by 50 mm, 40 of
    // them under load. 26 N/mm · 100 mm = 2600 N are less than 300 kg · g = 2942 N without a stop. At
    // best the stop has 600 N/mm: 26 z + 600 (z/2 − 10)/2 = 2942 gives z = 33.76 mm, z/2 − 10 = 6.88 mm.
    const fitment: Fitment = {
      ...carrying(300, {
        estimated: { how: "estimate", forceShare: 1 },
        curve: [
          [15, 4500],
          [30, 9000],
        ],
      }),
      layout: {
        kind: "arm",
        wheelPerOuter: 1,
        readings: { pivotToStop: exact(50), pivotToOuter: exact(100) },
      },
    };
    const corner = { ...(fitment.corners[0] as Corner), gap: exact(10), limits: [] };
    expect(earlyContact({ ...fitment, corners: [corner] })).toMatch(
      /^unsure: .*curve is an estimate\. .* pressed by 6\.9 mm to 40\.0 mm under load/,
    );
  });
});

describe("two corners", () => {
  const pair = (gaps: readonly [number, number], change: Partial<Fitment> = {}): Fitment => {
    const fitment = uprightStrut({ fitment: change });
    const corner = fitment.corners[0] as Corner;
    return {
      ...fitment,
      corners: [
        { ...corner, gap: within(gaps[0], 1) },
        { ...corner, side: "right", gap: within(gaps[1], 1) },
      ],
    };
  };
  const ids = (corner: CornerAssessment) => corner.checks.map(({ id }) => id);

  it("are asked for their balance, one is not", () => {
    const order = ["clearance", "earlyContact", "stiffness", "balance", "plausible"];
    expect(assessed(pair([45, 45])).map(ids)).toEqual([order, order]);
    expect(assessed(uprightStrut({})).map(ids)).toEqual([order.filter((id) => id !== "balance")]);
  });

  it("are each answered as alone, but for the balance", () => {
    const both: Fitment = pair([2, 10]);
    const stop: Stop = { ...both.stop, duty: "carry" };
    const carrying = { ...both, stop, ride: { ...ride, payloadPerCornerKg: 150 } };
    const whole = unwrapped(assessFitment(carrying, few));
    for (const [place, corner] of carrying.corners.entries()) {
      const [alone] = unwrapped(assessFitment({ ...carrying, corners: [corner] }, few)).corners;
      const together = whole.corners[place] as CornerAssessment;
      expect({
        ...together,
        checks: together.checks.filter(({ id }) => id !== "balance"),
      }).toEqual(alone);
    }
  });

  it("are completed where their events were run", () => {
    const fitment = pair([45, 45]);
    const before = unwrapped(assessStatic(fitment, few));
    const [left, right] = fitment.corners.map((corner) => cornerDynamics(fitment, corner));
    const dynamics = [left, right] as CornerDynamics[];
    const done = (corners: readonly CornerAssessment[]) =>
      corners.map(({ events }) => events !== null);
    const complete = (some: readonly CornerDynamics[]) =>
      completeAssessment(fitment, before, some).corners;
    expect(done(complete(dynamics))).toEqual([true, true]);
    expect(complete([])).toEqual(before.corners);
    expect(done(complete(dynamics.slice(1)))).toEqual([false, true]);
    expect(complete(dynamics.slice(1))[0]).toEqual(before.corners[0]);
  });
});

describe("the whole answer", () => {
  it("is refused for what the static half is", () => {
    const none = uprightStrut({ fitment: { corners: [] } });
    expect(refusal(assessFitment(none))).toBe(refusal(assessStatic(none)));
    expect(refusal(assessFitment(none))).toMatch(/^cornersWrong/);
  });

  it("of a corner without a limit has no figures of one", () => {
    expect(first(uprightStrut({ gap: exact(45), limits: [] }))).toMatchObject({
      wheelTravelToContactMm: 45,
      wheelTravelToFullStopMm: 75,
      wheelTravelToHardLimitMm: null,
      hardLimit: null,
      reserveMm: null,
      intervals: {
        wheelTravelToHardLimitMm: null,
        reserveMm: null,
        spacerMm: null,
        tallerMm: null,
      },
    });
  });

  it("of readings without doubt has no width: 45, 75, 95 and 20 mm", () => {
    const fitment = uprightStrut({ gap: exact(45), limits: [tyreLimit(exact(95))] });
    const { intervals, clearanceProbability } = first(fitment);
    const ends = { contact: 45, fullStop: 75, hardLimit: 95, reserve: 20 };
    expect(intervals.wheelTravelToContactMm).toEqual([ends.contact, ends.contact]);
    expect(intervals.wheelTravelToFullStopMm).toEqual([ends.fullStop, ends.fullStop]);
    expect(intervals.wheelTravelToHardLimitMm).toEqual([ends.hardLimit, ends.hardLimit]);
    expect(intervals.reserveMm).toEqual([ends.reserve, ends.reserve]);
    expect(clearanceProbability).toBe(1);
  });
});
