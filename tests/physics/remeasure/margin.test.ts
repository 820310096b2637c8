import { describe, expect, it } from "vitest";
import { assessStatic } from "../../../src/physics/assess.ts";
import type { Check, CornerAssessment, Fitment, Ride } from "../../../src/physics/fitment.ts";
import { LinearDoubt } from "../../../src/physics/remeasure/linearDoubt.ts";
import { type Margin, marginOf } from "../../../src/physics/remeasure/margin.ts";
import type { OpenQuestion } from "../../../src/physics/remeasure/openQuestions.ts";
import { rulesOf } from "../../../src/physics/road/useRules.ts";
import { unwrapped } from "../demoFitments.ts";
import { exact, ride, tyreLimit, uprightStrut, within } from "../staticFitments.ts";

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

  it("loaded it takes payload and wheel rate in, by what a softer spring and more load sag", () => {
    const margin = given(marginOf(estimated, assessed(estimated), early, "care", rules));
    expect(margin.interval).toBeNull();
    const found = slopes(margin);
    // sag = m·g/k: 20·9.80665/26 = 7.54 mm, 0.29 mm more a N/mm less; about 0.38 mm a kg.
    expect(found["ride.wheelRateNPerMm"]).toBeCloseTo(7.5436 / 26, 2);
    expect(found["ride.payloadPerCornerKg"]).toBeLessThan(-9.80665 / 26);
    // Without an interval the line is held against itself alone: it describes what is open.
    const linear = new LinearDoubt([margin], false);
    expect(linear.describes(0)).toBe(Math.abs(linear.probability(0) - 0.6) <= 0.03);
    expect(new LinearDoubt([{ ...margin, inReach: false }], false).describes(0)).toBe(false);
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
