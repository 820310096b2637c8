import { describe, expect, it } from "vitest";
import { cycleUnits } from "../../../src/physics/stopTests/cycleUnits.ts";
import { rampStrokes } from "../../../src/physics/stopTests/rampStrokes.ts";
import { noiseOf, strokesOf } from "../../../src/physics/stopTests/strokes.ts";
import { timedSamples } from "../../../src/physics/stopTests/timedSamples.ts";
import {
  hold,
  type Motion,
  move,
  ramp,
  sequence,
  sine,
  triangle,
} from "../../support/testMachine/motions.ts";
import { measure } from "../../support/testMachine/testMachine.ts";
import { given } from "./outcomes.ts";

function recorded(motion: Motion, whiteMm = 0) {
  const { timeS, depthMm } = measure({ force: () => 0 }, motion, { samplesPerS: 500, whiteMm });
  return { timeS, depthMm };
}

function directions(motion: Motion, whiteMm = 0): string {
  const { timeS, depthMm } = recorded(motion, whiteMm);
  return strokesOf(timeS, depthMm)
    .map(({ direction }) => (direction === 0 ? "." : direction > 0 ? "+" : "-"))
    .join("");
}

describe("strokes", () => {
  it("are told in and out, with or without noise of the depth", () => {
    const motion = sequence([...ramp(0, 40, 10), triangle(0, 40, 200, 3)], 0);
    expect(directions(motion)).toBe("+-+-+-+-");
    expect(directions(motion, 0.05)).toBe("+-+-+-+-");
  });

  it("have a hold between where the motion rests", () => {
    const motion = sequence([move(0, 40, 10), hold(40, 2), move(40, 0, 10)], 0);
    expect(directions(motion)).toBe("+.-");
    expect(directions(motion, 0.05)).toBe("+.-");
  });

  it("are none in a motion that does not move", () => {
    const { timeS } = recorded(hold(10, 1));
    expect(
      strokesOf(
        timeS,
        timeS.map(() => 10),
      ).every(({ direction }) => direction === 0),
    ).toBe(true);
    expect(strokesOf(new Float64Array(1), new Float64Array(1))).toEqual([]);
  });

  it("depth noise is told by second differences", () => {
    const { depthMm } = recorded(sequence([sine(0, 30, 100, 8)]), 0.05);
    expect(noiseOf(depthMm) / 0.05).toBeGreaterThan(0.8);
    expect(noiseOf(depthMm) / 0.05).toBeLessThan(1.3);
  });
});

describe("cycles and ramps", () => {
  const motion = sequence([...ramp(0, 40, 4), triangle(0, 40, 100, 3), triangle(0, 40, 300, 4)], 0);
  const { timeS, depthMm } = recorded(motion);
  const strokes = strokesOf(timeS, depthMm);

  it("blocks of like cycles", () => {
    const blocks = new Map<number, number>();
    for (const { block } of cycleUnits(strokes)) blocks.set(block, (blocks.get(block) ?? 0) + 1);
    expect([...blocks.values()]).toEqual([1, 3, 4]);
  });

  it("the ramp by its speed, else by how long it takes", () => {
    expect(rampStrokes(strokes, 40, 5)).toEqual({ strokes: [0, 1], remarks: [] });
    const byDuration = rampStrokes(strokes, 40, 1);
    expect(byDuration.strokes).toEqual([0, 1]);
    expect(byDuration.remarks.map(({ code }) => code)).toEqual(["rampByDuration"]);
    expect(rampStrokes(strokes.slice(2), 40, 1).strokes).toEqual([]);
  });
});

describe("a time that begins anew", () => {
  it("is a further record after a pause", () => {
    const once = Array.from({ length: 100 }, (_, row) => row * 0.01);
    const timeS = Float64Array.from([...once, ...once]);
    const { samples, remarks } = given(
      timedSamples({ kind: "cycles", timeS, displacementMm: timeS, forceN: timeS }),
    );
    expect(remarks.map(({ code }) => code)).toEqual(["timeRestarts"]);
    expect(samples.timeS).toHaveLength(200);
    for (let row = 1; row < 200; row++) {
      expect(samples.timeS[row]).toBeGreaterThan(samples.timeS[row - 1] ?? 0);
    }
    expect((samples.timeS[100] ?? 0) - (samples.timeS[99] ?? 0)).toBeGreaterThan(50);
  });
});
