import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { KeptShare } from "../../../src/physics/uncertainty/keptShare.ts";

const samples = 10_000;

/** Draws of which some do not conform, as chance has it. */
const anyLost = fc
  .tuple(fc.double({ min: 0, max: 1, noNaN: true }), fc.integer())
  .map(([share, seed]) => {
    let state = seed >>> 0;
    return Uint8Array.from({ length: samples }, () => {
      state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
      return state / 2 ** 32 < share ? 1 : 0;
    });
  });

interface Counted {
  readonly kept: KeptShare;
  /** Draws looked at, each once. */
  looked: number;
}

function countedOf(lost: Uint8Array): Counted {
  const counted: Counted = {
    looked: 0,
    kept: new KeptShare(samples, (from, end) => {
      expect(from).toBe(counted.looked);
      counted.looked = end;
      return lost.subarray(from, end).reduce((sum, each) => sum + each, 0);
    }),
  };
  return counted;
}

describe("a share that is counted no further than it is asked for", () => {
  test("tells the same as all draws, in whatever order it is asked", () => {
    fc.assert(
      fc.property(anyLost, fc.array(fc.double({ min: 0, max: 1, noNaN: true })), (lost, asked) => {
        const share = (samples - lost.reduce((sum, each) => sum + each, 0)) / samples;
        const { kept } = countedOf(lost);
        for (const one of [...asked, 0.95, 0.05, share]) {
          expect(kept.isAbove(one)).toBe(share > one);
          expect(kept.isAtLeast(one)).toBe(share >= one);
        }
        expect(kept.value()).toBe(share);
      }),
      { numRuns: 50 },
    );
  });

  test("some first draws say that it is below only where all do, and are all that is looked at", () => {
    fc.assert(
      fc.property(anyLost, fc.integer({ min: 0, max: samples }), (lost, draws) => {
        const counted = countedOf(lost);
        const isBelow = counted.kept.isBelow(0.95, draws);
        expect(counted.looked).toBeLessThanOrEqual(draws + 500);
        if (isBelow) expect(counted.kept.value()).toBeLessThan(0.95);
      }),
      { numRuns: 50 },
    );
  });

  test("a share that is far off is told by a few draws", () => {
    const none = countedOf(new Uint8Array(samples).fill(1));
    expect(none.kept.isAtLeast(0.95)).toBe(false);
    expect(none.looked).toBeLessThanOrEqual(samples / 10);
    const all = countedOf(new Uint8Array(samples));
    expect(all.kept.isAbove(0.05)).toBe(true);
    expect(all.looked).toBeLessThanOrEqual(samples / 10);
  });
});
