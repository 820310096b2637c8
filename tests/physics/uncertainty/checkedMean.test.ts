import { describe, expect, it } from "vitest";
import type { Reading } from "../../../src/physics/fitment.ts";
import { succeed } from "../../../src/physics/outcome.ts";
import { capital } from "../../../src/physics/sentence.ts";
import { checkedMean, type ReadingSort } from "../../../src/physics/uncertainty/checkedMean.ts";
import { meanOf } from "../../../src/physics/uncertainty/readingMean.ts";
import { worded } from "../../../src/saying/texts.ts";
import { exact, within } from "../staticFitments.ts";

describe("the mean of a reading", () => {
  it("is the sum of its repeats over how many they are", () => {
    expect(meanOf(exact(7))).toBe(7);
    expect(meanOf({ values: [10, 13, 16, 21], tol: 1 })).toBe(15);
  });
});

describe("a reading that is fit to compute with", () => {
  it.each<[ReadingSort, Reading, number]>([
    ["length", exact(0.1), 0.1],
    ["mass", exact(0.1), 0.1],
    ["gap", exact(0), 0],
    ["gap", exact(12), 12],
    ["angle", exact(0), 0],
    ["angle", exact(-40), -40],
    ["angle", exact(89.9), 89.9],
    ["angle", exact(-89.9), -89.9],
  ])("of the sort %s: %o gives its mean", (sort, reading, mean) => {
    expect(checkedMean(reading, "left.gap", sort)).toEqual(succeed(mean));
  });

  it("may have some repeats that would be refused alone, since the mean counts", () => {
    expect(checkedMean({ values: [-2, 8], tol: 0 }, "track", "length")).toEqual(succeed(3));
    expect(checkedMean({ values: [-2, 2], tol: 0 }, "left.gap", "gap")).toEqual(succeed(0));
    expect(checkedMean({ values: [80, 98], tol: 0 }, "armAngle", "angle")).toEqual(succeed(89));
  });

  it("may be as great as 1e5, and its ± from 0 to as great", () => {
    expect(checkedMean(exact(1e5), "track", "length")).toEqual(succeed(1e5));
    expect(checkedMean(within(5, 1e5), "track", "length")).toEqual(succeed(5));
  });
});

describe("a reading that is not fit to compute with", () => {
  const refused = (
    reading: Reading | undefined,
    id: string,
    sort: ReadingSort,
    limitKind?: "tyre",
  ) => {
    const outcome = checkedMean(reading, id, sort, limitKind);
    if (outcome.ok) throw new Error("not refused");
    return { ...outcome.fault, sentence: worded(outcome.fault.sentence) };
  };

  it("is missing where there is none, or none of its values", () => {
    const fault = {
      code: "readingMissing",
      sentence: ["There is no value for the left gap. Measure it."],
      reading: "left.gap",
    };
    expect(refused(undefined, "left.gap", "gap")).toEqual(fault);
    expect(refused({ values: [], tol: 1 }, "left.gap", "gap")).toEqual(fault);
  });

  it.each([Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, 100_000.1, -100_000.1])(
    "has a repeat of %d, which is not usable beside one that is",
    (value) => {
      const fault = {
        code: "readingNotFinite",
        sentence: ["The track is not a usable number. Type it again."],
        reading: "track",
      };
      expect(refused({ values: [value], tol: 0 }, "track", "length")).toEqual(fault);
      expect(refused({ values: [1500, value], tol: 0 }, "track", "length")).toEqual(fault);
    },
  );

  it.each([-0.1, Number.NaN, Number.POSITIVE_INFINITY, 100_000.1])("has a ± of %d", (tol) => {
    expect(refused(within(40, tol), "right.limits.0", "gap", "tyre")).toEqual({
      code: "toleranceNegative",
      sentence: [
        "The ± of the right clearance over the tire must be zero or more. Type the tool's half-width again.",
      ],
      reading: "right.limits.0",
    });
  });

  it.each([0, -3])("is a length of %d", (value) => {
    expect(refused(exact(value), "damperLength", "length")).toEqual({
      code: "lengthNotPositive",
      sentence: ["The shock length must be above zero. Re-measure it."],
      reading: "damperLength",
    });
  });

  it.each([0, -3])("is a mass of %d", (value) => {
    expect(refused(exact(value), "left.cornerMassKg", "mass")).toEqual({
      code: "massNotPositive",
      sentence: ["The left corner weight must be above zero. Weigh it again."],
      reading: "left.cornerMassKg",
    });
  });

  it("is a gap below zero", () => {
    expect(refused(exact(-0.1), "right.gap", "gap")).toEqual({
      code: "gapNegative",
      sentence: ["The right gap cannot be below zero. Type 0 if the stop already touches its pad."],
      reading: "right.gap",
    });
  });

  it.each([90, -90, 120])("is an angle of %d°", (value) => {
    expect(refused(exact(value), "stopLean", "angle")).toEqual({
      code: "angleTooSteep",
      sentence: ["The lean of the stop must lie between −90° and 90°."],
      reading: "stopLean",
    });
  });
});

describe("a sentence's first letter", () => {
  it("is a capital, the others as they were", () => {
    expect(capital("the left gap at A")).toBe("The left gap at A");
    expect(capital("")).toBe("");
  });
});
