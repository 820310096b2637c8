import { expect, test } from "vitest";
import { branchTimesS } from "../../../src/physics/stopTests/lawColumns.ts";
import { designs, hitMassKg, trueStops } from "../../support/testMachine/designs.ts";
import { information, inverse, type Noise, within } from "../../support/testMachine/information.ts";
import type { Motion } from "../../support/testMachine/motions.ts";
import { type TrueStop, trueHit } from "../../support/testMachine/trueStop.ts";

/*
 * What tests at 0.05 to 0.5 m/s can tell of the peak of a hit at 2 m/s: Cramér and Rao for a function of
 * the values, its variance at least gᵀ(JᵀC⁻¹J)⁻¹g (Kay, Fundamentals of Statistical Signal Processing,
 * vol. 1, 3.8, from memory), g the change of the peak with each value of the law. The static curve is taken
 * as known without error.
 */
const noise: Noise = { samplesPerS: 1000, whiteN: 15, correlatedN: 40 };
const knots = [1, 10.5, 20, 29.5, 39] as const;
const fullLossSpeed = 5;
const speedMPerS = 2;

function hats(depth: number): readonly number[] {
  const inside = Math.min(Math.max(depth, knots[0]), knots[4]);
  return knots.map((knot) => Math.max(0, 1 - Math.abs(inside - knot) / 9.5));
}

const size = 2 + 2 * knots.length + branchTimesS.length;

/** Force, N, that each value of the law makes at the rows of a motion, row after row. */
function valuesOf(stop: TrueStop, motion: Motion): (row: number) => Float64Array {
  const held = branchTimesS.map(() => 0);
  let depthBefore = motion.depth(0);
  let forceBefore = stop.force(depthBefore);
  return (row) => {
    const depth = motion.depth(row / noise.samplesPerS);
    const speed = (depth - depthBefore) * noise.samplesPerS;
    const force = stop.force(depth);
    const values = new Float64Array(size);
    const touches = depth > 0;
    values[0] = force;
    values[1] = force * Math.max(-1, Math.min(1, speed / fullLossSpeed));
    const first = 2 + (speed > 0 ? 0 : knots.length);
    for (const [knot, hat] of hats(depth).entries())
      values[first + knot] = touches ? hat * speed : 0;
    for (const [branch, tauS] of branchTimesS.entries()) {
      const steps = 1 / noise.samplesPerS / tauS;
      const decay = Math.exp(-steps);
      held[branch] = (held[branch] ?? 0) * decay + ((force - forceBefore) * (1 - decay)) / steps;
      values[2 + 2 * knots.length + branch] = touches ? (held[branch] ?? 0) : 0;
    }
    depthBefore = depth;
    forceBefore = force;
    return values;
  };
}

/** Peak, N, and its change with each value of the law. */
function peakOf(stop: TrueStop): { readonly peakN: number; readonly gradient: readonly number[] } {
  const peak = (of: TrueStop) => trueHit(of, hitMassKg, speedMPerS).peakForceN;
  const peakN = peak(stop);
  const step = 0.01;
  const { restLoss = 0, branches = [], damping } = stop;
  const more = 1 + step;
  const laws: readonly TrueStop[] = [
    {
      ...stop,
      force: (x) => more * stop.force(x),
      restLoss: restLoss / more,
      branches: branches.map(({ tauS, share }) => ({ tauS, share: share / more })),
    },
    { ...stop, restLoss: restLoss + step },
    ...([1, -1] as const).flatMap((way) =>
      knots.map((_, knot) => ({
        ...stop,
        damping: (x: number, direction: 1 | -1) =>
          (damping?.(x, direction) ?? 0) + (direction === way ? step * (hats(x)[knot] ?? 0) : 0),
      })),
    ),
    ...branchTimesS.map((tauS) => ({ ...stop, branches: [...branches, { tauS, share: step }] })),
  ];
  return { peakN, gradient: laws.map((law) => (peak(law) - peakN) / step) };
}

type Peak = ReturnType<typeof peakOf>;

/** What a test by this motion tells of all values. */
function informationOf(stop: TrueStop, motion: Motion): readonly Float64Array[] {
  const rows = Math.floor(motion.durationS * noise.samplesPerS);
  return information(size, rows, valuesOf(stop, motion), noise);
}

/** Least standard error of the peak, a share of it, of an unbiased fit of the law's values at `places`. */
function leastError(
  whole: readonly Float64Array[],
  { peakN, gradient }: Peak,
  places: readonly number[],
): number {
  const covariance = inverse(
    places.map((i) => Float64Array.from(places, (j) => whole[i]?.[j] ?? 0)),
  );
  let variance = 0;
  for (const [i, line] of covariance.entries()) {
    for (const [j, value] of line.entries()) {
      variance += value * (gradient[places[i] ?? 0] ?? 0) * (gradient[places[j] ?? 0] ?? 0);
    }
  }
  return Math.sqrt(variance) / peakN;
}

const all = Array.from({ length: size }, (_, at) => at);
/** A dashpot beside branches quicker than 5 ms is one and the same to these tests: only one of them. */
const oneOfBoth = all.filter((at) => at < 2 + 2 * knots.length || at >= 4 + 2 * knots.length);

/*
 * The fit, by `npm run stop-test-figures`, foretells 97 to 98 of 100 of these peaks within 7 of 100. It is
 * above the bound as it is not unbiased: parts are not below 0, and stay only where the test needs them.
 */
test("noise of 40 N that holds together over 0.1 s: no unbiased fit foretells 95 of 100 peaks within 7 of 100", () => {
  const shares: number[] = [];
  const sparing: number[] = [];
  for (const name of ["dashpot", "everything"]) {
    const stop = trueStops[name];
    if (stop === undefined) throw new Error(name);
    const peak = peakOf(stop);
    for (const design of Object.values(designs)) {
      const whole = informationOf(stop, design());
      shares.push(within(0.07 / leastError(whole, peak, all)));
      sparing.push(within(0.07 / leastError(whole, peak, oneOfBoth)));
    }
  }
  const mean = (of: readonly number[]) => of.reduce((sum, each) => sum + each, 0) / of.length;
  expect(mean(shares)).toBeGreaterThan(0.75);
  expect(mean(shares)).toBeLessThan(0.88);
  expect(mean(sparing)).toBeLessThan(0.95);
  // Turns as sharp as those of triangles tell it, sines do not.
  expect(Math.min(...shares)).toBeLessThan(0.75);
  expect(Math.max(...shares)).toBeGreaterThan(0.999);
});
