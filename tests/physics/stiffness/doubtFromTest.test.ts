import { describe, expect, test } from "vitest";
import { assessFitment, assessStatic } from "../../../src/physics/assess.ts";
import type { Fitment, StopLaw, TestDoubt } from "../../../src/physics/fitment.ts";
import { cornerDynamics } from "../../../src/physics/stiffness/cornerDynamics.ts";
import { beyondTest } from "../../../src/physics/stop/beyondTest.ts";
import { stiffnessCheck, stopClasses } from "../../../src/physics/verdict/stiffness.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";
import { demoFitment } from "../demoFitments.ts";
import { given } from "../stopTests/outcomes.ts";

const tested = demoFitment("foam-stop-tested");
const { testDoubt: _own, ...bare } = tested.stop;
const foam: Fitment = { ...tested, stop: bare };
const pressed = demoFitment("pressed-foam-on-a-rod");

function lawOf({ stop }: Fitment, times: number): StopLaw {
  return {
    damping: stop.damping,
    ...(stop.restLoss !== undefined && { restLoss: stop.restLoss }),
    ...(stop.staticShare !== undefined && { staticShare: stop.staticShare }),
    branches: (stop.branches ?? []).map(({ tauS, share }) => ({ tauS, share: times * share })),
  };
}

function withDoubt(fitment: Fitment, testDoubt: TestDoubt): Fitment {
  return { ...fitment, stop: { ...fitment.stop, testDoubt } };
}

function dynamicsOf(fitment: Fitment) {
  const [corner] = fitment.corners;
  if (corner === undefined) throw new Error("no corner");
  return cornerDynamics(fitment, corner);
}

const times = [0.4, 0.7, 1, 1.3, 1.6, 2];
const laws = times.map((each) => lawOf(foam, each));

describe("the doubt that a stop's test leaves in the events", () => {
  test("is absent where the stop says nothing of it, or too little", () => {
    expect(dynamicsOf(foam).fromTest).toBeNull();
    const four = { fastestMmPerS: 500, laws: laws.slice(0, 4) };
    expect(dynamicsOf(withDoubt(foam, four)).fromTest).toBeNull();
  });

  test("changes no figure of the events themselves", () => {
    const own = dynamicsOf(foam);
    const { fromTest, ...others } = dynamicsOf(withDoubt(foam, { fastestMmPerS: 1e5, laws }));
    expect(fromTest).not.toBeNull();
    expect(others).toEqual({ ...own, fromTest: undefined });
  });

  test("is the spread of what the stop does with each law, with Student's t for six of them", () => {
    const { events, fromTest } = dynamicsOf(withDoubt(foam, { fastestMmPerS: 1e5, laws }));
    const each = laws.map(
      (law) => dynamicsOf({ ...foam, stop: { ...foam.stop, ...law } }).events ?? [],
    );
    // Student's t of 6 degrees of freedom, 97.5 %: 2.447, from memory.
    for (const figure of ["peakStopForceN", "leaveSpeedMmPerS", "energyOutJ"] as const) {
      for (const [index, event] of (events ?? []).entries()) {
        const squares = each.map((run) => ((run[index]?.[figure] ?? 0) - event[figure]) ** 2);
        const spread = 2.447 * Math.sqrt(squares.reduce((sum, one) => sum + one, 0) / 6);
        const found = fromTest?.events[index]?.[figure] ?? 0;
        expect(Math.abs(found / spread - 1)).toBeLessThan(0.02);
      }
    }
  });

  test("grows where the event is faster than the test, and says how many times", () => {
    const same = Array.from({ length: 6 }, () => lawOf(foam, 1));
    const { events, fromTest } = dynamicsOf(withDoubt(foam, { fastestMmPerS: 400, laws: same }));
    for (const [index, event] of (events ?? []).entries()) {
      const found = fromTest?.events[index];
      const faster = event.closingSpeedMmPerS / 400;
      expect(found?.timesTested).toBeCloseTo(faster, 9);
      const share = (found?.peakStopForceN ?? 0) / event.peakStopForceN;
      expect(share).toBeCloseTo(beyondTest(faster).peak, 3);
    }
    expect(beyondTest(1)).toEqual({ peak: 0, leaving: 0 });
    expect(beyondTest(4)).toEqual({ peak: 0.06, leaving: 0.1 });
  });

  test("makes the stiffness unsure where more than 5 % of the laws fail an event", () => {
    // As its test says the stop is pressed by 40.9 mm in the landing.
    const stop = { ...foam.stop, usableCompressionMm: 41 };
    const fitment = withDoubt({ ...foam, stop }, { fastestMmPerS: 1e5, laws });
    const dynamics = dynamicsOf(fitment);
    const share = dynamics.fromTest?.passShare ?? 1;
    const passing = laws.filter(
      (law) => dynamicsOf({ ...fitment, stop: { ...stop, ...law } }).stopItselfPasses,
    );
    expect(share).toBe(passing.length / laws.length);
    expect(share).toBeLessThan(0.95);
    expect(dynamics.stopItselfPasses).toBe(true);
    const [own = 0] = dynamics.classesThatWork ?? [];
    const check = stiffnessCheck({ own, estimated: null }, dynamics, []);
    expect(check).toMatchObject({ state: "unsure", reading: "stop.testDoubt", probability: share });
    expect(inModelUnits(check.sentence)).toMatch(/Test it at more speeds/);
  });

  test("never turns a no into anything else", () => {
    const fitment = withDoubt(
      { ...foam, rules: { ...foam.rules, accelerationCapG: 0.5 } },
      { fastestMmPerS: 1e5, laws },
    );
    const check = stiffnessCheck(stopClasses(100, undefined), dynamicsOf(fitment), []);
    expect(check.state).toBe("no");
  });
});

describe("a stop that holds the vehicle up, and what its test leaves open of the force at rest", () => {
  const shares = [0.8, 0.85, 0.9, 0.95, 1].map((staticShare) => ({
    ...lawOf(pressed, 1),
    staticShare,
  }));
  const doubtful = withDoubt(
    { ...pressed, stop: { ...pressed.stop, duty: "impact" } },
    { fastestMmPerS: 500, laws: shares },
  );

  test("is among the causes of doubt of early contact by its own name", () => {
    const doubt = given(assessStatic(doubtful)).corners[0]?.doubt.contact ?? [];
    expect(doubt.map(({ reading }) => reading)).toContain("stop.testDoubt");
    const { testDoubt: _doubt, ...sure } = doubtful.stop;
    const plain = given(assessStatic({ ...doubtful, stop: sure }));
    expect(plain.corners[0]?.doubt.contact.map(({ reading }) => reading)).not.toContain(
      "stop.testDoubt",
    );
  });

  test("goes with the whole answer", () => {
    const [corner] = given(assessFitment(doubtful)).corners;
    expect(corner?.fromTest?.events.length).toBe(corner?.events?.length);
  });
});
