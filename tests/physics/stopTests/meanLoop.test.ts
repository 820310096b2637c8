import { describe, expect, it } from "vitest";
import type { Cycle } from "../../../src/physics/stopTests/cycles.ts";
import { meanLoop } from "../../../src/physics/stopTests/meanLoop.ts";

/** A straight rise of 1 mm/s, and a force of 100 N more for every turn of 240 s, from 0.25 s on. */
const timeS = Float64Array.from({ length: 800 }, (_, at) => 0.25 + at / 2);
const displacementMm = timeS.slice();
const turnForce = (time: number) => (time < 200 ? 100 : 300);

const cycle = (startS: number, endS: number): Cycle => {
  const from = timeS.findIndex((time) => time > startS);
  return { startS, endS, from, to: timeS.findIndex((time) => time >= endS) };
};

describe("the mean loop", () => {
  it("has 241 samples, one for each phase between the samples of the file, and is closed", () => {
    // The force falls to 0 at 70.25 s and rises again.
    const bent = (time: number) => 10 * Math.abs(time - 70.25);
    const { displacementMm: x, forceN } = meanLoop(timeS, displacementMm, timeS.map(bent), [
      cycle(10, 130),
    ]);
    expect(x).toHaveLength(241);
    expect(forceN).toHaveLength(241);
    // 240 steps of half a second, from 10 s on.
    for (let sample = 0; sample < 240; sample++) {
      expect(x[sample]).toBeCloseTo(10 + sample / 2, 9);
      expect(forceN[sample]).toBeCloseTo(bent(10 + sample / 2), 9);
    }
    expect(x[240]).toBeCloseTo(10, 9);
    expect(forceN[240]).toBeCloseTo(bent(10), 9);
  });

  it("is the mean of its cycles, phase by phase, however long each was", () => {
    const { displacementMm: x, forceN } = meanLoop(timeS, displacementMm, timeS.map(turnForce), [
      cycle(10, 130),
      cycle(210, 360),
    ]);
    // 10 s and 210 s on the whole; a share of 120 s and of 150 s.
    for (const sample of [0, 1, 60, 120, 239]) {
      expect(x[sample]).toBeCloseTo(110 + (135 * sample) / 240, 9);
      expect(forceN[sample]).toBeCloseTo(200, 9);
    }
    expect(x[240]).toBeCloseTo(110, 9);
    expect(forceN[240]).toBeCloseTo(200, 9);
  });

  it("is carried on straight before the first and past the last sample", () => {
    const at = Float64Array.of(0, 1, 2, 3);
    const loop = meanLoop(
      at,
      at.map((time) => 10 * time),
      at.map((time) => -5 * time),
      [{ startS: -0.5, endS: 5.5, from: 0, to: 4 }],
    );
    for (const sample of [0, 20, 120, 200, 239]) {
      const time = -0.5 + sample / 40;
      expect(loop.displacementMm[sample]).toBeCloseTo(10 * time, 9);
      expect(loop.forceN[sample]).toBeCloseTo(-5 * time, 9);
    }
  });
});
