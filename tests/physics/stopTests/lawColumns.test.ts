import { describe, expect, it } from "vitest";
import { branchTimesS, lawColumns } from "../../../src/physics/stopTests/lawColumns.ts";
import { curveThrough } from "../../../src/physics/stopTests/staticCurve.ts";
import { progressive, TrueStopState } from "../../support/testMachine/trueStop.ts";

const rate = 100;
const line = curveThrough(
  [50, 100].map((depthMm) => ({ depthMm, forceN: rate * depthMm, standardErrorN: 0, rows: 1 })),
);
if (line === null) throw new Error("no curve");
const straight = line;

function columnsOf(
  times: readonly number[],
  depth: (t: number) => number,
  speed: (t: number) => number,
) {
  return lawColumns(
    {
      timeS: Float64Array.from(times),
      depthMm: Float64Array.from(times, depth),
      speedMmPerS: Float64Array.from(times, speed),
    },
    straight,
    [0, 40],
    true,
  );
}

const place = branchTimesS.indexOf(0.1);
const tau = 0.1;

describe("a branch beside the static curve (standard linear solid)", () => {
  it("under a ramp of v: q = k·v·τ·(1 − exp(−t/τ)) (rheology texts, Maxwell element)", () => {
    const v = 60;
    const times = Array.from({ length: 60 }, (_, row) => row * 0.01);
    const columns = columnsOf(
      times,
      (t) => v * t,
      () => v,
    );
    const answer = columns.values[columns.branches + place];
    for (const [row, t] of times.entries()) {
      expect(answer?.[row]).toBeCloseTo(rate * v * tau * (1 - Math.exp(-t / tau)), 6);
    }
  });

  it("under a sine: storage k·ω²τ²/(1 + ω²τ²), loss k·ωτ/(1 + ω²τ²) (ISO 6721-1; rheology texts)", () => {
    const [x0, omega, mean] = [10, 25, 30];
    const period = (2 * Math.PI) / omega;
    const times = Array.from({ length: 6001 }, (_, row) => (row / 500) * period);
    const columns = columnsOf(
      times,
      (t) => mean + x0 * Math.sin(omega * t),
      (t) => x0 * omega * Math.cos(omega * t),
    );
    const answer = columns.values[columns.branches + place] ?? new Float64Array(0);
    let [inPhase, ahead] = [0, 0];
    for (let row = 5500; row < 6000; row++) {
      const t = times[row] ?? 0;
      inPhase += ((answer[row] ?? 0) * Math.sin(omega * t)) / 250;
      ahead += ((answer[row] ?? 0) * Math.cos(omega * t)) / 250;
    }
    const ratio = omega * tau;
    expect(inPhase / x0 / rate).toBeCloseTo(ratio ** 2 / (1 + ratio ** 2), 3);
    expect(ahead / x0 / rate).toBeCloseTo(ratio / (1 + ratio ** 2), 3);
  });

  it("rest loss: loss per cycle 4·h·k·m·X about a mean m (Coulomb damping, vibration texts)", () => {
    const [x0, omega, mean] = [10, 25, 30];
    const times = Array.from({ length: 4001 }, (_, row) => (row / 4000) * ((2 * Math.PI) / omega));
    const columns = columnsOf(
      times,
      (t) => mean + x0 * Math.sin(omega * t),
      (t) => x0 * omega * Math.cos(omega * t),
    );
    const force = columns.values[columns.rest] ?? new Float64Array(0);
    let work = 0;
    for (let row = 1; row < times.length; row++) {
      const at = (index: number) => mean + x0 * Math.sin(omega * (times[index] ?? 0));
      work += (((force[row] ?? 0) + (force[row - 1] ?? 0)) / 2) * (at(row) - at(row - 1));
    }
    // σ(v) turns within 5 mm/s of rest, 2 % of the greatest speed.
    expect(work / (4 * rate * mean * x0)).toBeCloseTo(1, 2);
  });

  it("dashpot: loss per cycle π·c·ω·X² (vibration texts)", () => {
    const [x0, omega, mean] = [10, 25, 20];
    const times = Array.from({ length: 2001 }, (_, row) => (row / 2000) * ((2 * Math.PI) / omega));
    const depth = (t: number) => mean + x0 * Math.sin(omega * t);
    const columns = columnsOf(times, depth, (t) => x0 * omega * Math.cos(omega * t));
    // All knots at 1 N·s/mm are a dashpot of 1 N·s/mm.
    let work = 0;
    const total = (row: number) => {
      let sum = 0;
      for (let column = columns.dashpot; column < columns.branches; column++) {
        sum += columns.values[column]?.[row] ?? 0;
      }
      return sum;
    };
    for (let row = 1; row < times.length; row++) {
      work +=
        ((total(row) + total(row - 1)) / 2) * (depth(times[row] ?? 0) - depth(times[row - 1] ?? 0));
    }
    expect(work / (Math.PI * omega * x0 ** 2)).toBeCloseTo(1, 4);
  });
});

describe("the simulated stop of the tests", () => {
  it("obeys the same law, written down a second time", () => {
    const stop = {
      force: progressive(60, 0.03),
      branches: [{ tauS: tau, share: 0.5 }],
      restLoss: 0.1,
    };
    const state = new TrueStopState(stop, 0);
    const dt = 1e-4;
    let force = 0;
    for (let step = 1; step <= 3000; step++) force = state.step(dt, 100 * step * dt, 100);
    const depth = 30;
    // q̇ = g·F′·ẋ − q/τ by its integral g·∫F′(x)·ẋ·exp(−(t − s)/τ) ds, in fine steps.
    let q = 0;
    for (let step = 0; step < 30_000; step++) {
      const s = (step + 0.5) * 1e-5;
      q += 0.5 * (60 + 0.09 * (100 * s) ** 2) * 100 * Math.exp(-(0.3 - s) / tau) * 1e-5;
    }
    expect(force).toBeCloseTo(stop.force(depth) * 1.1 + q, 1);
  });
});
