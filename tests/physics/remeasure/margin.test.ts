import { describe, expect, it, vi } from "vitest";
import { assessStatic } from "../../../src/physics/assess.ts";
import { type TravelBudget, travelBudget } from "../../../src/physics/budget/travelBudget.ts";
import type {
  Check,
  CornerAssessment,
  Fitment,
  Reading,
  Ride,
} from "../../../src/physics/fitment.ts";
import type { QuantityId } from "../../../src/physics/readings/readingId.ts";
import { MarginDoubt } from "../../../src/physics/remeasure/linearDoubt.ts";
import { type Margin, marginOf } from "../../../src/physics/remeasure/margin.ts";
import type { OpenQuestion } from "../../../src/physics/remeasure/openQuestions.ts";
import { withReading } from "../../../src/physics/remeasure/withReading.ts";
import { rulesOf } from "../../../src/physics/road/useRules.ts";
import { standardUncertainty } from "../../../src/physics/uncertainty/drawnReading.ts";
import { demoFitment, unwrapped } from "../demoFitments.ts";
import { exact, ride, tyreLimit, uprightStrut, within } from "../staticFitments.ts";
import { aboveRest } from "../uncertainty/aboveRest.ts";

vi.mock("../../../src/physics/kinematics/modelDoubt.ts", () => import("../noModelDoubt.ts"));

const rules = rulesOf("daily");
const fitment = uprightStrut({ gap: within(45, 2), limits: [tyreLimit(within(95, 3))] });

function assessed(one: Fitment): CornerAssessment {
  return unwrapped(assessStatic(one, { samples: 10_000 })).corners[0] as CornerAssessment;
}

function question(id: Check["id"], probability?: number): OpenQuestion {
  const chance = probability === undefined ? {} : { probability };
  return {
    side: "left",
    why: "doubt",
    check: { id, state: "unsure", sentence: ["Told."], ...chance },
    readings: [],
  };
}

function given(margin: Margin | null): Margin {
  if (margin === null) throw new Error("no margin");
  return margin;
}

const slopes = ({ parts }: Margin) =>
  Object.fromEntries(parts.map(({ reading, slope }) => [reading.id, slope]));

describe("the margin of the reserve", () => {
  it("falls by the gap and grows by the limit, 1 mm a mm on an upright strut", () => {
    const margin = given(
      marginOf(fitment, assessed(fitment), question("clearance"), "unsure", rules),
    );
    expect(slopes(margin)).toEqual({
      "left.gap": expect.closeTo(-1, 9),
      "left.limits.0": expect.closeTo(1, 9),
    });
    expect(margin).toMatchObject({ about: "reserve", inReach: true, probability: null });
    expect(Math.abs(margin.middle - 20)).toBeLessThan(0.1);
  });

  it("is less by the reserve wanted where that is the question", () => {
    const one = assessed(fitment);
    const unsure = given(marginOf(fitment, one, question("clearance"), "unsure", rules));
    const care = given(marginOf(fitment, one, question("clearance", 0.7), "care", rules));
    expect(unsure.middle - care.middle).toBe(5);
    expect(care.probability).toBe(0.7);
    expect(given(marginOf(fitment, one, question("clearance"), "care", rules)).probability).toBe(
      null,
    );
  });

  it("has no probability where the lesser demand is the question: a check carries the wanted one's", () => {
    const one = assessed(fitment);
    const margin = given(marginOf(fitment, one, question("clearance", 0.7), "unsure", rules));
    expect(margin.probability).toBeNull();
  });

  it("stands in the middle of what the draws gave, wherever the mean readings are", () => {
    const one = assessed(fitment);
    const bent = { ...one, intervals: { ...one.intervals, reserveMm: [4, 16] as const } };
    const margin = given(marginOf(fitment, bent, question("clearance"), "unsure", rules));
    expect(margin.middle).toBe(10);
    expect(margin.interval).toEqual([4, 16]);
  });

  it("stands at the mean readings where no draw gave an interval", () => {
    const one = assessed(fitment);
    const bare = { ...one, intervals: { ...one.intervals, reserveMm: null } };
    expect(given(marginOf(fitment, bare, question("clearance"), "unsure", rules)).middle).toBe(20);
  });
});

describe("the margin of the free travel", () => {
  const doubtful: Ride = { ...ride, tolerances: { wheelRateNPerMm: 3, payloadPerCornerKg: 10 } };
  const estimated: Fitment = { ...fitment, ride: doubtful };
  const early = question("earlyContact", 0.6);

  it("has the interval of the draws where the ride is known, and the gap as its one part", () => {
    const one = assessed(fitment);
    const margin = given(marginOf(fitment, one, early, "unsure", rules));
    expect(margin.interval).toEqual(one.intervals.wheelTravelToContactMm);
    expect(slopes(margin)).toEqual({ "left.gap": expect.closeTo(1, 9) });
  });

  it("is less by what is wanted, loaded or unladen", () => {
    const one = {
      ...assessed(fitment),
      freeTravelNeededMm: 40,
      freeTravelNeededUnladenMm: 30,
      intervals: { ...assessed(fitment).intervals, wheelTravelToContactMm: [43, 48] as const },
    };
    const margin = (level: "unsure" | "care") => given(marginOf(fitment, one, early, level, rules));
    expect(margin("care")).toMatchObject({ about: "freeTravel", middle: 5.5, probability: 0.6 });
    expect(margin("unsure")).toMatchObject({
      about: "freeTravel",
      middle: 15.5,
      probability: null,
    });
  });

  it("loaded it takes payload and wheel rate in, by what a softer spring and more load sag", () => {
    const margin = given(marginOf(estimated, assessed(estimated), early, "care", rules));
    expect(margin.interval).toBeNull();
    const found = slopes(margin);
    // sag = m·g/k: 20·9.80665/26 = 7.54 mm, 0.29 mm more a N/mm less; about 0.38 mm a kg.
    expect(found["ride.wheelRateNPerMm"]).toBeCloseTo(7.5436 / 26, 2);
    expect(found["ride.payloadPerCornerKg"]).toBeLessThan(-9.80665 / 26);
    // Without an interval the line is held against itself alone: it describes what is open.
    const linear = new MarginDoubt(margin);
    expect(linear.describes()).toBe(Math.abs(linear.probability() - 0.6) <= 0.03);
    expect(new MarginDoubt({ ...margin, inReach: false }).describes()).toBe(false);
  });

  it("unladen neither payload nor wheel rate counts", () => {
    const margin = given(marginOf(estimated, assessed(estimated), early, "unsure", rules));
    expect(slopes(margin)).toEqual({ "left.gap": expect.closeTo(1, 9) });
  });

  it("has no part of a ride in which what is wanted cannot be worked out", () => {
    const known = { ...assessed(estimated), freeTravelNeededMm: 30 };
    const corners = fitment.corners.map(({ cornerMassKg: _, ...corner }) => corner);
    const bare: Fitment = {
      ...fitment,
      corners,
      ride: { unsprungMassKg: 45, tolerances: { unsprungMassKg: 5 } },
    };
    const margin = given(marginOf(bare, known, early, "care", rules));
    expect(slopes(margin)).toEqual({ "left.gap": expect.closeTo(1, 9) });
    const { ride: _, ...none } = bare;
    expect(given(marginOf(none, known, early, "care", rules)).parts).toHaveLength(1);
  });
});

describe("the parts of a margin", () => {
  const early = question("earlyContact");
  const u = 20 / Math.sqrt(3);
  const tyreInDoubt: Ride = { ...ride, tolerances: { tyreRateNPerMm: 20 } };

  it("know how often each was read, a ride value once", () => {
    const repeated = uprightStrut({
      gap: { values: [44, 45, 46], tol: 2 },
      limits: [tyreLimit(within(95, 3))],
      fitment: { ride: tyreInDoubt },
    });
    const one = assessed(repeated);
    const counts = (margin: Margin | null) =>
      given(margin).parts.map(({ reading, count }) => [reading.id, count]);
    expect(counts(marginOf(repeated, one, question("clearance"), "unsure", rules))).toEqual([
      ["left.gap", 3],
      ["left.limits.0", 1],
    ]);
    expect(counts(marginOf(repeated, one, early, "unsure", rules))).toEqual([
      ["left.gap", 3],
      ["ride.tyreRateNPerMm", 1],
    ]);
  });

  it("move the figure as the whole formulas do, also an angle that stands in for another", () => {
    const arm = demoFitment("arm-fits");
    const [left] = unwrapped(assessStatic(arm, { samples: 10_000 })).corners;
    if (left === undefined) throw new Error("no corner");
    const budgetWith = (id: QuantityId, value: number) => {
      const changed = withReading(arm, id, exact(value));
      const [corner] = changed.corners;
      if (corner === undefined) throw new Error("no corner");
      return unwrapped(travelBudget(changed, corner, rules.reserveMm)).budget;
    };
    for (const [id, figure] of [
      ["clearance", (budget: TravelBudget) => budget.limit?.reserveMm ?? Number.NaN],
      ["earlyContact", (budget: TravelBudget) => budget.contactMm],
    ] as const) {
      const { parts } = given(marginOf(arm, left, question(id), "unsure", rules));
      const ofGeometry = parts.filter(({ reading }) => !reading.id.startsWith("ride."));
      expect(ofGeometry.map(({ reading }) => reading.id)).toContain("armAngle");
      for (const { reading, slope } of ofGeometry) {
        const off = standardUncertainty(reading);
        const above = figure(budgetWith(reading.id, reading.mean + off));
        const below = figure(budgetWith(reading.id, reading.mean - off));
        expect(slope, reading.id).toBeCloseTo((above - below) / (2 * off), 9);
      }
    }
  });

  it("are told as out of reach where a ± goes past what the suspension can do", () => {
    const flat = (lean: Reading) =>
      uprightStrut({
        gap: exact(1),
        limits: [tyreLimit(exact(1e5))],
        fitment: { layout: { kind: "strut", readings: { stopLean: lean } } },
      });
    // ±5 has u = 2.9°, past 89.95° from 88° on, not from 80°.
    for (const [lean, inReach] of [
      [88, false],
      [80, true],
    ] as const) {
      const one = flat(within(lean, 5));
      for (const id of ["clearance", "earlyContact"] as const) {
        const margin = given(marginOf(one, assessed(one), question(id), "unsure", rules));
        expect(margin.inReach, `${id} ${lean}`).toBe(inReach);
        expect(margin.parts.map(({ reading }) => reading.id)).toEqual(["stopLean"]);
      }
    }
  });

  it("of the ride go by the mean weight, and by the contacts that a progressive stop may have", () => {
    const { stop } = fitment;
    for (const [curve, allowed] of [
      [
        [
          [15, 2500],
          [30, 6000],
        ],
        2,
      ],
      // 10 N/mm to a fifth of its usable compression, 67 over the whole.
      [
        [
          [6, 60],
          [30, 2000],
        ],
        20,
      ],
    ] as const) {
      const weighed = uprightStrut({
        gap: exact(45),
        corner: { cornerMassKg: { values: [440, 470], tol: 0 } },
        fitment: { ride: tyreInDoubt, stop: { ...stop, curve } },
      });
      const margin = given(marginOf(weighed, assessed(weighed), early, "unsure", rules));
      const needed = (tyre: number) => aboveRest(455, tyre, 2.7, allowed);
      expect(slopes(margin)).toEqual({
        "ride.tyreRateNPerMm": expect.closeTo((needed(220 - u) - needed(220 + u)) / (2 * u), 9),
      });
    }
  });

  it("of the ride are none of a stop without a curve", () => {
    const tested = uprightStrut({ gap: within(45, 1), fitment: { ride: tyreInDoubt } });
    const bare: Fitment = { ...tested, stop: { ...tested.stop, curve: [] } };
    const margin = given(marginOf(bare, assessed(tested), early, "unsure", rules));
    expect(slopes(margin)).toEqual({ "left.gap": expect.closeTo(1, 9) });
  });
});

describe("a question without a margin", () => {
  const one = assessed(fitment);

  it.each<[string, Fitment, CornerAssessment, OpenQuestion]>([
    ["a side that is not there", { ...fitment, corners: [] }, one, question("clearance")],
    [
      "a corner that cannot be computed",
      uprightStrut({ gap: exact(-1) }),
      one,
      question("clearance"),
    ],
    ["no limit", fitment, { ...one, reserveMm: null }, question("clearance")],
    [
      "free travel wanted not known",
      fitment,
      { ...one, freeTravelNeededUnladenMm: null },
      question("earlyContact"),
    ],
    ["stiffness", fitment, one, question("stiffness")],
  ])("%s", (_, on, corner, asked) => {
    expect(marginOf(on, corner, asked, "unsure", rules)).toBeNull();
  });
});
