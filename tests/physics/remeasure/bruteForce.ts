import { assessStatic } from "../../../src/physics/assess.ts";
import type { Assessment, CheckId, Fitment, Reading, Side } from "../../../src/physics/fitment.ts";
import { unwrapped } from "../demoFitments.ts";

/** Mulberry32, a generator of its own: from memory. */
function generator(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

/** Box and Muller: from memory. */
function normal(random: () => number): number {
  return Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}

function doubtOf({ values, tol }: Reading): { mean: number; tol: number; standardError: number } {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  const count = values.length;
  return { mean, tol, standardError: count < 2 ? 0 : Math.sqrt(squares / (count - 1) / count) };
}

/** As many values as before, of that mean and with the scatter that they had. */
function moved({ values, tol }: Reading, by: number): Reading {
  return { values: values.map((value) => value + by), tol };
}

export interface TakenAnew {
  readonly halfWidth: number;
  /** Share of the new readings after which the check is no longer unsure. */
  readonly settled: number;
}

/**
 * A reading taken anew `times` times with a tool of ±`tol`: each time the true value is drawn about the
 * old mean with the old doubt, the new mean about the true value with the new one, and the whole static
 * assessment is done with it.
 */
export function takenAnew({
  fitment,
  reading,
  put,
  tol,
  side,
  check,
  times,
}: {
  fitment: Fitment;
  reading: Reading;
  put: (fitment: Fitment, reading: Reading) => Fitment;
  tol: number;
  side: Side;
  check: CheckId;
  times: number;
}): TakenAnew {
  const { standardError } = doubtOf(reading);
  const random = generator(42);
  const assess = (by: number, samples: number): Assessment =>
    unwrapped(assessStatic(put(fitment, { ...moved(reading, by), tol }), { samples, seed: 7 }));
  const cornerOf = (assessment: Assessment) =>
    assessment.corners.find((corner) => corner.side === side);
  let settled = 0;
  for (let time = 0; time < times; time++) {
    const truth = reading.tol * (2 * random() - 1) + standardError * normal(random);
    const error = tol * (2 * random() - 1) + standardError * normal(random);
    const state = cornerOf(assess(truth + error, 10_000))?.checks.find(({ id }) => id === check);
    if (state?.state !== "unsure") settled += 1 / times;
  }
  const corner = cornerOf(assess(0, 40_000));
  const interval =
    check === "clearance" ? corner?.intervals.reserveMm : corner?.intervals.wheelTravelToContactMm;
  if (!interval) throw new Error("no interval");
  return { halfWidth: (interval[1] - interval[0]) / 2, settled };
}
