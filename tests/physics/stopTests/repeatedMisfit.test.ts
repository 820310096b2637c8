import { describe, expect, it } from "vitest";
import { repeatedMisfit } from "../../../src/physics/stopTests/repeatedMisfit.ts";
import { RandomSource } from "../../../src/physics/uncertainty/randomSource.ts";

const [cycles, rowsAStroke] = [6, 120] as const;

/** Six cycles of one block, each of a stroke in and a stroke out; what is left of the force by its place. */
function left(residualOf: (cycle: number, turn: number, place: number) => number, used = 1) {
  const strokes = 2 * cycles;
  const count = strokes * rowsAStroke;
  const stroke = Uint32Array.from({ length: count }, (_, row) => Math.floor(row / rowsAStroke));
  const residualN = Float64Array.from(stroke, (own, row) =>
    residualOf(own >> 1, own & 1, (row % rowsAStroke) / rowsAStroke),
  );
  const none = new Float64Array(count);
  return repeatedMisfit(
    {
      rows: {
        timeS: none,
        depthMm: none,
        speedMmPerS: none,
        forceN: none,
        forceRate: none,
        stroke,
        clear: new Uint8Array(count).fill(1),
      },
      usable: new Uint8Array(count).fill(used),
      units: Array.from({ length: cycles }, (_, cycle) => ({
        block: 0,
        strokes: [2 * cycle, 2 * cycle + 1],
      })),
    },
    residualN,
  );
}

describe("what comes back cycle after cycle", () => {
  it("is a law's own misfit, in full", () => {
    // Mean square of a sine of 20 N over whole turns is 200 N², a little less by its bins.
    const { square, standardError } = left((_, __, place) => 20 * Math.sin(2 * Math.PI * place));
    expect(square).toBeGreaterThan(190);
    expect(square).toBeLessThanOrEqual(200);
    expect(standardError).toBeLessThan(1e-6);
  });

  it("is not what differs from cycle to cycle alone, as where a load cell wanders", () => {
    const { square } = left((cycle) => [40, -30, 5, 60, -80, 20][cycle] ?? 0);
    expect(square).toBe(0);
  });

  it("is the same beside white noise, within its standard error", () => {
    const off: number[] = [];
    const noises: number[] = [];
    for (let seed = 1; seed <= 40; seed++) {
      const source = RandomSource.stream(seed, "misfit");
      const { square, standardError, noise } = left(
        (_, turn, place) =>
          20 * source.nextNormal() + (turn === 0 ? 15 : -15) * Math.cos(2 * Math.PI * place),
      );
      noises.push(noise / 400);
      off.push(Math.abs(square - 112) / standardError);
    }
    expect(off.filter((each) => each < 2).length).toBeGreaterThanOrEqual(37);
    // A mean taken off each cycle takes some of it along.
    const mean = noises.reduce((sum, each) => sum + each, 0) / noises.length;
    expect(mean).toBeGreaterThan(0.9);
    expect(mean).toBeLessThan(1.05);
    expect(off.filter((each) => each < 0.7).length).toBeLessThan(34);
  });

  it("is nothing where no row may be used", () => {
    expect(left(() => 5, 0)).toEqual({ square: 0, standardError: 0, noise: 0, rows: 0 });
  });
});
