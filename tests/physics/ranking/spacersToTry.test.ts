import { describe, expect, it } from "vitest";
import type { CheckId, CornerAssessment, Interval } from "../../../src/physics/fitment.ts";
import type { RankedGroup, RankedStop } from "../../../src/physics/ranking/rankedStop.ts";
import { type SpacerOptions, spacersToTry } from "../../../src/physics/ranking/spacersToTry.ts";

interface CornerFigures {
  /** What the reserve wants on the mean, and its 95 % interval. */
  readonly wanted?: number | null;
  readonly interval?: Interval | null;
  /** What early contact leaves. */
  readonly most?: number | null;
}

interface Tried {
  readonly corners: readonly CornerFigures[];
  readonly short?: readonly CheckId[];
  readonly group?: RankedGroup;
  readonly options?: SpacerOptions;
}

function heights({ corners, short = ["clearance"], group = "doesNotFit", options = {} }: Tried) {
  const plain = {
    group,
    shortcomings: short.map((check) => ({ check, state: "no", side: "left", sentence: [] })),
    assessment: {
      verdict: "no",
      reason: [],
      corners: corners.map(
        ({ wanted = null, interval = null, most = null }) =>
          ({
            spacerMm: wanted,
            intervals: { spacerMm: interval },
            mostExtraHeightMm: most,
          }) as CornerAssessment,
      ),
    },
  } satisfies Pick<RankedStop, "group" | "assessment" | "shortcomings">;
  return spacersToTry(plain, options);
}

describe("spacers for the reserve", () => {
  it("first what makes it sure, then what gives it on the mean, in whole millimetres upward", () => {
    const corners = [{ wanted: 4.2, interval: [2, 6.3], most: 20 }] as const;
    expect(heights({ corners })).toEqual([7, 5]);
    expect(heights({ corners, options: { spacerStepMm: 0.5 } })).toEqual([6.5, 4.5]);
    expect(heights({ corners, options: { spacerStepMm: 5 } })).toEqual([10, 5]);
  });

  it("a whole height as it is, and each height once", () => {
    expect(heights({ corners: [{ wanted: 4, interval: [2, 6], most: 20 }] })).toEqual([6, 4]);
    expect(heights({ corners: [{ wanted: 5.4, interval: [5, 5.9], most: 20 }] })).toEqual([6]);
  });

  it("of two sides, what the one in greater need wants and the one that is met sooner leaves", () => {
    const left = { wanted: 2, interval: [1, 3], most: 7 } as const;
    const right = { wanted: 6, interval: [4, 8], most: 20 } as const;
    // 8 mm are within a step of the 7 mm that are left.
    expect(heights({ corners: [left, right] })).toEqual([7, 6]);
    expect(heights({ corners: [right, left] })).toEqual([7, 6]);
    // A side without a limit wants nothing.
    expect(heights({ corners: [{}, right] })).toEqual([8, 6]);
  });

  it("no more whole steps than early contact leaves", () => {
    // 3.2 mm are wanted and 3.9 are left: 4 would be met too early.
    expect(heights({ corners: [{ wanted: 3.2, interval: [3, 3.4], most: 3.9 }] })).toEqual([3]);
    const corners = [{ wanted: 7, interval: [6, 8], most: 9 }] as const;
    expect(heights({ corners, options: { spacerStepMm: 2 } })).toEqual([8]);
    expect(heights({ corners, options: { spacerStepMm: 5 } })).toEqual([5]);
  });

  it("none for a height that is out of reach by more than a step", () => {
    expect(heights({ corners: [{ wanted: 4, interval: [3, 5], most: 4 }] })).toEqual([4]);
    expect(heights({ corners: [{ wanted: 2, interval: [0, 5.1], most: 4 }] })).toEqual([2]);
    expect(heights({ corners: [{ wanted: 5.1, interval: [5, 5.2], most: 4 }] })).toEqual([]);
  });

  it("none, where it is met too early already or nothing is wanted on the mean", () => {
    expect(heights({ corners: [{ wanted: 0.5, interval: [0, 0.8], most: -0.2 }] })).toEqual([]);
    expect(heights({ corners: [{ wanted: -3, interval: [-5, -1], most: 10 }] })).toEqual([]);
    expect(heights({ corners: [{}] })).toEqual([]);
  });

  it("up to 50 mm where early contact is not known, or up to what is asked for", () => {
    const corners = [{ wanted: 50, interval: [48, 52] }] as const;
    expect(heights({ corners })).toEqual([50]);
    expect(heights({ corners, options: { mostSpacerMm: 60 } })).toEqual([52, 50]);
    expect(heights({ corners: [{ ...corners[0], most: 70 }] })).toEqual([50]);
    expect(heights({ corners, options: { mostSpacerMm: 40 } })).toEqual([]);
  });
});

describe("spacers for another check", () => {
  const corners = [{ wanted: 4.2, interval: [2, 6.3], most: 21 }] as const;

  it("stiffness: half and all of what early contact leaves", () => {
    expect(heights({ corners, short: ["stiffness"] })).toEqual([11, 21]);
    expect(heights({ corners: [{ most: 1 }], short: ["stiffness"] })).toEqual([1]);
    expect(heights({ corners: [{ most: null }], short: ["stiffness"] })).toEqual([25, 50]);
  });

  it("the reserve comes before stiffness, whichever is told first", () => {
    expect(heights({ corners, short: ["clearance", "stiffness"] })).toEqual([7, 5, 11, 21]);
    expect(heights({ corners, short: ["plausible", "stiffness", "clearance"] })).toEqual([
      7, 5, 11, 21,
    ]);
  });

  it("early contact, balance and odd readings are not mended by height", () => {
    expect(heights({ corners, short: ["earlyContact", "balance", "plausible"] })).toEqual([]);
    expect(heights({ corners, short: [] })).toEqual([]);
  });
});

describe("no spacer", () => {
  it("under a stop that fits, though its balance fails", () => {
    const corners = [{ wanted: 4.2, interval: [2, 6.3], most: 21 }] as const;
    expect(heights({ corners, group: "fits" })).toEqual([]);
    for (const group of ["mayFit", "nearly", "doesNotFit"] as const) {
      expect(heights({ corners, group })).toEqual([7, 5]);
    }
  });

  it("under a stop that could not be assessed", () => {
    expect(spacersToTry({ group: "doesNotFit", assessment: null, shortcomings: [] }, {})).toEqual(
      [],
    );
  });
});
