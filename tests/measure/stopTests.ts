import { analyseTimed } from "../../src/physics/stopTests/analyseTimed.ts";
import { type FoundStop, foundStop } from "../../src/physics/stopTests/foundStop.ts";
import { type PredictedHit, predictedHit } from "../../src/physics/stopTests/predictedHit.ts";
import { designs, hitMassKg, trueStops } from "../support/testMachine/designs.ts";
import { type Measuring, measure } from "../support/testMachine/testMachine.ts";
import { type TrueHit, type TrueStop, trueHit } from "../support/testMachine/trueStop.ts";

/** How well tests of simulated stops are read, over motions, stops, faults of the machine and draws. */
const faults: { readonly [name: string]: Partial<Measuring> } = {
  white: {},
  "white, 2 %": { whiteN: 100 },
  correlated: { correlatedN: 40, correlationS: 0.1 },
  drift: { driftN: 150 },
  "drift down": { driftN: -150 },
  "0.5 ms late": { delayS: 0.0005 },
  "100 Hz": { samplesPerS: 100 },
  "5 kHz": { samplesPerS: 5000 },
};

class Share {
  within = 0;
  all = 0;
  add(good: boolean): void {
    this.all++;
    if (good) this.within++;
  }
  toString(): string {
    return this.all === 0 ? "–" : `${((100 * this.within) / this.all).toFixed(0)} % of ${this.all}`;
  }
}

interface Tally {
  readonly dashpot3: Share;
  readonly dashpotBand: Share;
  readonly restBand: Share;
  readonly noneBand: Share;
  readonly peak7: Share;
  readonly leave12: Share;
  readonly peakBand: Share;
  readonly leaveBand: Share;
  readonly peaks: number[];
  readonly leaves: number[];
  /** By how much the upper end of a band stays below the truth, a share of it; below 0 where it is above. */
  readonly peakUnsafe: number[];
  readonly leaveUnsafe: number[];
}

function tally(): Tally {
  return {
    dashpot3: new Share(),
    dashpotBand: new Share(),
    restBand: new Share(),
    noneBand: new Share(),
    peak7: new Share(),
    leave12: new Share(),
    peakBand: new Share(),
    leaveBand: new Share(),
    peaks: [],
    leaves: [],
    peakUnsafe: [],
    leaveUnsafe: [],
  };
}

function run(
  stop: TrueStop,
  measuring: Measuring,
  motion: string,
  tallies: readonly Tally[],
): void {
  const design = designs[motion];
  if (design === undefined) return;
  const { timeS, depthMm, forceN } = measure(stop, design(), measuring);
  const analysis = analyseTimed({ kind: "cycles", timeS, displacementMm: depthMm, forceN });
  if (!analysis.ok) return;
  const found = foundStop(analysis.value);
  const mass = stop.force(20) < 1000 ? 15 : hitMassKg;
  const hit = predictedHit(analysis.value, mass, 2);
  if (found === null || !hit.ok || hit.value === null) return;
  const predicted = hit.value;
  const truth = trueHit(stop, mass, 2);
  for (const to of tallies) count(stop, found, predicted, truth, to);
}

function count(
  stop: TrueStop,
  found: FoundStop,
  predicted: PredictedHit,
  trueOne: TrueHit,
  to: Tally,
): void {
  const dashpotOnly = stop.damping !== undefined && !stop.branches && !stop.restLoss;
  const lossless = !stop.damping && !stop.branches && !stop.restLoss;
  if (dashpotOnly) {
    for (const [index, [depth, into, out]] of (found.damping ?? [[20, 0, 0]]).entries()) {
      const off = found.doubt.damping[index];
      for (const [value, doubt, direction] of [
        [into, off?.[1] ?? 0, 1],
        [out, off?.[2] ?? 0, -1],
      ] as const) {
        const truth = stop.damping?.(depth, direction) ?? 0;
        if (index > 0) to.dashpot3.add(Math.abs(value / truth - 1) <= 0.03);
        to.dashpotBand.add(Math.abs(value - truth) <= doubt);
      }
    }
  }
  if (lossless) {
    const rows = found.damping ?? [[0, 0, 0] as const];
    to.noneBand.add(
      rows.every(
        ([, into, out], index) =>
          into <= (found.doubt.damping[index]?.[1] ?? 0) &&
          out <= (found.doubt.damping[index]?.[2] ?? 0),
      ),
    );
  }
  if (!stop.branches) {
    to.restBand.add(Math.abs(found.restLoss - (stop.restLoss ?? 0)) <= found.doubt.restLoss + 1e-4);
  }
  const peak = predicted.hit.peakForceN / trueOne.peakForceN - 1;
  const leave = predicted.hit.leaveSpeedMmPerS / trueOne.leaveSpeedMmPerS - 1;
  to.peaks.push(peak);
  to.leaves.push(leave);
  to.peak7.add(Math.abs(peak) <= 0.07);
  to.leave12.add(Math.abs(leave) <= 0.12);
  const { doubt } = predicted;
  if (doubt !== null) {
    to.peakBand.add(Math.abs(peak) * trueOne.peakForceN <= doubt.peakForceN);
    to.leaveBand.add(Math.abs(leave) * trueOne.leaveSpeedMmPerS <= doubt.leaveSpeedMmPerS);
    to.peakUnsafe.push(-peak - doubt.peakForceN / trueOne.peakForceN);
    to.leaveUnsafe.push(-leave - doubt.leaveSpeedMmPerS / trueOne.leaveSpeedMmPerS);
  }
}

/** How often the truth is above a band, and by how much at most. */
function unsafe(values: readonly number[]): string {
  const above = values.filter((value) => value > 0);
  const share = (100 * above.length) / Math.max(1, values.length);
  return `${share.toFixed(1)} %, by ${(100 * Math.max(0, ...above)).toFixed(1)} % at most`;
}

function range(values: readonly number[]): string {
  const percent = (value: number) => (100 * value).toFixed(1);
  return `${percent(Math.min(...values))} … ${percent(Math.max(...values))} %`;
}

const seeds = Number(process.argv[2] ?? 2);
const onlyFault = process.argv[3];
for (const [name, fault] of Object.entries(faults)) {
  if (onlyFault !== undefined && onlyFault !== name) continue;
  const all = tally();
  const byStop = new Map<string, Tally>();
  for (const motion of Object.keys(designs)) {
    for (const [stopName, stop] of Object.entries(trueStops)) {
      for (let seed = 1; seed <= seeds; seed++) {
        const measuring = { samplesPerS: 1000, whiteN: 15, whiteMm: 0.005, seed, ...fault };
        const own = byStop.get(stopName) ?? tally();
        byStop.set(stopName, own);
        run(stop, measuring, motion, [all, own]);
      }
    }
  }
  console.log(`\n${name}`);
  console.log(`  dashpot within 3 %: ${all.dashpot3}; within its band: ${all.dashpotBand}`);
  console.log(`  rest loss within its band: ${all.restBand}; none where none is: ${all.noneBand}`);
  console.log(`  hit: peak within 7 %: ${all.peak7}, leaving speed within 12 %: ${all.leave12}`);
  console.log(`  hit within its band: peak ${all.peakBand}, leaving speed ${all.leaveBand}`);
  console.log(
    `  truth above the band: peak ${unsafe(all.peakUnsafe)}; leaving speed ${unsafe(all.leaveUnsafe)}`,
  );
  for (const [stopName, own] of byStop) {
    console.log(`    ${stopName}: peak ${range(own.peaks)}, leaving ${range(own.leaves)}`);
  }
}
