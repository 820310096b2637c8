import type { Fitment, Stop } from "../../src/physics/fitment.ts";
import { simulateImpact } from "../../src/physics/impact/impact.ts";
import { rulesOf } from "../../src/physics/road/useRules.ts";
import { cornerDynamics } from "../../src/physics/stiffness/cornerDynamics.ts";
import { demoFitment, loadedSetup, unwrapped } from "../physics/demoFitments.ts";
import { millisecondsPer, printTable, processorMs } from "./clock.ts";

/** Processor time spent on one check, ms. */
const spendMs = 6000;
const names = ["foam-stop-tested", "pressed-foam-on-a-rod"] as const;

/** The stop as its test shows it, with a dashpot alone, and as one that loses nothing. */
function variants({ testDoubt: _, restLoss, staticShare, branches, ...bare }: Stop) {
  const law: Partial<Stop> = {
    ...(restLoss !== undefined && { restLoss }),
    ...(staticShare !== undefined && { staticShare }),
    ...(branches !== undefined && { branches }),
  };
  const dashpot: Stop = {
    ...bare,
    damping: [
      [0, 0.3, 0.3],
      [40, 0.5, 0.5],
    ],
  };
  return [{ ...bare, ...law }, dashpot, { ...bare, damping: null, testedAtSpeed: false }] as const;
}

/** One after another in turn, so that a busy machine slows all alike; the least of each, ms. */
function leastTimes(works: readonly (() => void)[]): readonly number[] {
  const least = works.map(() => Number.POSITIVE_INFINITY);
  const end = processorMs() + spendMs;
  do {
    for (const [index, work] of works.entries()) {
      least[index] = Math.min(least[index] as number, millisecondsPer(work, 0, 8));
    }
  } while (processorMs() < end);
  return least;
}

/**
 * What branches and rest loss cost beside a dashpot alone, and beside no loss: the design events of all
 * corners, then all that is worked out of them, with and without the laws that the stop's test allows.
 */
export function compareLossyStops(): void {
  const rows = names.map((name) => {
    const fitment = demoFitment(name);
    const stops = variants(fitment.stop);
    const { events } = rulesOf(fitment.use, fitment.rules);
    const hits = stops.map((stop) => {
      const setups = fitment.corners.map((corner) => loadedSetup({ ...fitment, stop }, corner));
      return () => {
        for (const setup of setups) {
          for (const event of events) unwrapped(simulateImpact(setup, event));
        }
      };
    });
    const dynamic = [...stops, fitment.stop].map((stop) => () => {
      const changed: Fitment = { ...fitment, stop };
      for (const corner of fitment.corners) cornerDynamics(changed, corner);
    });
    const times = leastTimes([...hits, ...dynamic]);
    const [foam = 0, dashpot = 0, lossless = 0, whole = 0, wholeDashpot = 0, , laws = 0] = times;
    return [
      name,
      foam,
      foam / dashpot,
      foam / lossless,
      whole,
      whole / wholeDashpot,
      laws,
      laws / wholeDashpot,
    ];
  });
  printTable(
    "Branches and rest loss: the events of all corners, and all that is made of them",
    [
      "check",
      "events, ms",
      "/ dashpot",
      "/ lossless",
      "dynamic, ms",
      "/ dashpot",
      "with laws, ms",
      "/ dashpot",
    ],
    rows,
  );
}
