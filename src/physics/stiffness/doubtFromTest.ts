import type { DoubtFromTest, EventResult, EventTestDoubt, Fitment, UseRules } from "../fitment.ts";
import { type ImpactSetup, settled } from "../impact/impactSetup.ts";
import { allowedLaws } from "../stop/allowedLaws.ts";
import { beyondTest } from "../stop/beyondTest.ts";
import { tryEvents } from "./eventFailures.ts";

/** Laws below which their spread says nothing. */
const fewestLaws = 5;
/** A law's run needs no more, and their spread is what is asked. */
const options = { tolerance: 1e-4 } as const;

/**
 * What the test of a stop leaves open of the design events: every other law that the test allows goes
 * through all of them from its own rest, a Monte Carlo over the laws (JCGM 101:2008). The ± is the spread
 * of the figures about those of the stop itself, with Student's t for the number of laws, and where an
 * event is faster than the test, what the choice of the law may be off (`beyondTest`). Null where the stop
 * has no such laws, or none of them could be run. Yields between events.
 *
 * @param unladen what a setup fails on without payload
 */
export function* doubtFromTest(
  { stop, recordedStop }: Pick<Fitment, "stop" | "recordedStop">,
  setup: ImpactSetup,
  own: readonly EventResult[],
  rules: UseRules,
  failsUnladen: (setup: ImpactSetup) => Generator<void, boolean, void>,
): Generator<void, DoubtFromTest | null, void> {
  const laws = allowedLaws(stop);
  if (laws.length < fewestLaws) return null;
  const runs: (readonly EventResult[])[] = [];
  let passed = 0;
  for (const atSpeed of laws) {
    // The same stop held the vehicle up as measured, by the same law.
    const held = recordedStop === undefined ? atSpeed.staticShare / setup.atSpeed.staticShare : 1;
    const changed = settled({ ...setup, atSpeed, heldAtRideN: setup.heldAtRideN * held }, {});
    if (!changed.ok) continue;
    const { results, failures } = yield* tryEvents(changed.value, rules, options);
    const events = results.filter((result) => result !== null);
    if (events.length === results.length) runs.push(events);
    if (failures.length === 0 && !(yield* failsUnladen(changed.value))) passed++;
  }
  if (runs.length < fewestLaws) return null;
  const fastest = stop.testDoubt?.fastestMmPerS ?? 0;
  return {
    events: own.map((event, index) => spread(event, runs, index, fastest)),
    passShare: passed / laws.length,
  };
}

function spread(
  own: EventResult,
  runs: readonly (readonly EventResult[])[],
  index: number,
  fastestMmPerS: number,
): EventTestDoubt {
  const timesTested = fastestMmPerS > 0 ? own.closingSpeedMmPerS / fastestMmPerS : null;
  const law = beyondTest(timesTested ?? 1);
  const of = (figure: keyof Omit<EventTestDoubt, "timesTested">, share: number): number => {
    const squares = runs.reduce(
      (sum, run) => sum + ((run[index]?.[figure] ?? own[figure]) - own[figure]) ** 2,
      0,
    );
    return Math.hypot(student(runs.length) * Math.sqrt(squares / runs.length), share * own[figure]);
  };
  return {
    // Force times depth is energy: where one is greater the other is less.
    peakCompressionMm: of("peakCompressionMm", law.peak),
    peakStopForceN: of("peakStopForceN", law.peak),
    peakAccelerationG: of("peakAccelerationG", law.peak),
    // Energy goes with the square of the speed.
    energyOutJ: of("energyOutJ", 2 * law.leaving),
    leaveSpeedMmPerS: of("leaveSpeedMmPerS", law.leaving),
    bodyRiseMm: of("bodyRiseMm", 2 * law.leaving),
    timesTested,
  };
}

/** Student's t, 97.5 %, within 1 % from five values on. Abramowitz & Stegun 26.7.5, its first two terms. */
function student(count: number): number {
  const z = 1.96;
  return z + (z ** 3 + z) / (4 * count) + (5 * z ** 5 + 16 * z ** 3 + 3 * z) / (96 * count ** 2);
}
