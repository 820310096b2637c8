import { describe, expect, test } from "vitest";
import { assessStatic } from "../../../src/physics/assess.ts";
import type { Fitment } from "../../../src/physics/fitment.ts";
import { scaledBuilds, spacersByMm } from "../../../src/physics/prescription/candidates.ts";
import { AssessedScreening } from "../../../src/physics/prescription/screening.ts";
import { combinationsOf } from "../../../src/physics/prescription/searchSteps.ts";
import { Trials } from "../../../src/physics/prescription/trials.ts";
import { demoFitment, unwrapped } from "../demoFitments.ts";
import { finished } from "./exhaustive.ts";
import { generatedFitment, shelf } from "./generated.ts";

const options = { samples: 10_000 };
/** A stop made to carry beside those for impacts. */
const others = [
  ...shelf.slice(0, 6),
  ...shelf
    .slice(6, 8)
    .map(({ id, stop }) => ({ id: `${id} carry`, stop: { ...stop, duty: "carry" as const } })),
];
const spacersMm = spacersByMm.filter((_, index) => index % 4 === 1);

/** Repeats, friction and ride data in doubt; found by hand; a stop on the arm; pressed and missing stops. */
const fitments: readonly (readonly [string, Fitment])[] = [
  ...[1, 3, 6, 8].map((seed) => [`generated ${seed}`, generatedFitment(seed)] as const),
  ["ride data in doubt", inDoubt(generatedFitment(5, { bare: 0 }))],
  ...(
    [
      "checked-by-hand",
      "stop-on-the-arm-missing",
      "pressed-foam-on-a-rod",
      "sitting-on-its-stop",
      "two-arms-measured",
      "upper-arm-stop",
      "axle-tire-clearance",
    ] as const
  ).map((name) => [name, demoFitment(name)] as const),
];

function inDoubt(fitment: Fitment): Fitment {
  return {
    ...fitment,
    ride: { ...fitment.ride, tolerances: { wheelRateNPerMm: 3, damperBumpNsPerMm: 0.4 } },
    corners: fitment.corners.map((corner) => ({
      ...corner,
      settleMm: 4,
      ...(corner.gap && {
        gap: { tol: 1, values: [0, 1, 2].map((more) => (corner.gap?.values[0] ?? 0) + more) },
      }),
    })),
  };
}

test("a stop whose own test leaves too much open is judged so too", () => {
  const foam = demoFitment("foam-stop-tested");
  const { testDoubt } = foam.stop;
  if (testDoubt === undefined) throw new Error("this stop was tested");
  const [law] = testDoubt.laws;
  if (law === undefined) throw new Error("its test allows several laws");
  // With one law in two the stop is far too soft.
  const soft = { ...law, staticShare: 0.2, branches: [{ tauS: 1, share: 0.5 }] };
  const laws = testDoubt.laws.map((each, index) => (index % 2 === 0 ? soft : each));
  const fitment = { ...foam, stop: { ...foam.stop, testDoubt: { ...testDoubt, laws } } };
  const builds = scaledBuilds(fitment.stop).filter(({ id }) => id === "fitted 100");
  const combinations = combinationsOf(fitment, builds, spacersMm);
  const trials = new Trials(fitment, options, combinations);
  const states = combinations.map((combination) => {
    const screened = unwrapped(trials.screen(combination));
    const whole = unwrapped(finished(trials.whole(combination)));
    expect(finished(trials.decide(screened))).toEqual(whole.judgement);
    expect(finished(trials.isOk(screened))).toBe(whole.judgement.state === "ok");
    return whole.assessment.corners.flatMap(({ checks }) => checks);
  });
  expect(states.flat().some(({ reading }) => reading === "stop.testDoubt")).toBe(true);
});

describe.each(fitments)("what is drawn once for all stops: %s", (_, fitment) => {
  const combinations = combinationsOf(fitment, others, spacersMm);
  const trials = new Trials(fitment, options, combinations);

  test("decides as each stop's own assessment does, to the last draw", () => {
    for (const combination of combinations) {
      const screened = trials.screen(combination);
      if (!screened.ok) continue;
      const { fitment: changed, screening } = screened.value;
      const own = new AssessedScreening(unwrapped(assessStatic(changed, options)), true);
      for (const check of ["clearance", "earlyContact"] as const) {
        for (const wanted of ["ok", "care"] as const) {
          // What a few draws tell is so; what they leave open may be either.
          if (screening.isOut(check, wanted)) expect(own.isFine(check, wanted)).toBe(false);
          expect(screening.isFine(check, wanted)).toBe(own.isFine(check, wanted));
        }
      }
      expect(screening.checks()).toEqual(own.checks());
      expect(screening.leastProbability()).toBe(own.leastProbability());
    }
  });

  test("with the stop's own hits it comes to the judgement of the whole model", () => {
    for (const combination of combinations.filter((_, index) => index % 5 === 0)) {
      const screened = trials.screen(combination);
      if (!screened.ok) continue;
      const whole = unwrapped(finished(trials.whole(combination)));
      expect(finished(trials.decide(screened.value))).toEqual(whole.judgement);
    }
  });
});
