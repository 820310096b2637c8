import { describe, expect, it } from "vitest";
import {
  type Explanation,
  likeliestWrong,
  type Suspect,
} from "../../../src/physics/fullTravel/likeliestWrong.ts";
import { SymmetricSystem } from "../../../src/physics/fullTravel/symmetricSystem.ts";

/** Something whose change moves the differences in proportion, that is 5 off once it is wrong. */
function suspect(change: Partial<Suspect> & { readonly id: string }): Suspect {
  const { slopes = Float64Array.of(1) } = change;
  return {
    wouldBe: (by) => 100 + by,
    grossError: 5,
    slopes,
    caused: (by) => slopes.map((slope) => slope * by),
    slips: [],
    ...change,
  };
}

/** What explains differences that each have a doubt of its own, √Σ_jj = 1 unless given. */
function explained(
  differences: readonly number[],
  suspects: readonly Suspect[],
  doubts: readonly number[] = differences.map(() => 1),
): readonly Explanation[] {
  const covariance = doubts.map((doubt, row) =>
    Float64Array.from(doubts, (_, column) => (row === column ? doubt ** 2 : 0)),
  );
  return likeliestWrong(
    Float64Array.from(differences),
    covariance,
    Float64Array.from(doubts),
    suspects,
  );
}

const first = (explanations: readonly Explanation[]) => explanations[0] as Explanation;

/** The evidence that the documentation of `likeliestWrong` states, for Σ = 1 and one difference. */
const freeEvidence = (d: number, slope: number, gross: number): number => {
  const gain = (gross * slope) ** 2;
  return (d ** 2 * gain) / (1 + gain) / 2 - Math.log(1 + gain) / 2;
};
const slipEvidence = (d: number, left: number): number => Math.log(0.1) + (d ** 2 - left ** 2) / 2;

/** How likely each is among all, from their evidence. */
function sharesOf(...evidence: readonly number[]): number[] {
  const total = evidence.reduce((sum, each) => sum + Math.exp(each), 0);
  return evidence.map((each) => Math.exp(each) / total);
}

describe("what one change explains", () => {
  it("is the whole of a single difference, by as much as the slope asks", () => {
    const [only] = explained([10], [suspect({ id: "a", slopes: Float64Array.of(0.4) })]);
    expect(only).toMatchObject({ id: "a", slip: null, explains: true, share: 1 });
    expect(only?.change).toBeCloseTo(25, 6);
    expect(only?.wouldBe).toBeCloseTo(125, 6);
  });

  it("is the weighed mean of two that it moves alike: δ = JᵀΣ⁻¹d / JᵀΣ⁻¹J", () => {
    // Weights 1 and 1/4: (1·10 + 0.25·20)/1.25 = 12.
    const both = suspect({ id: "both", slopes: Float64Array.of(1, 1) });
    const [only] = explained([10, 20], [both], [1, 2]);
    expect(only?.change).toBeCloseTo(12, 6);
    expect(only?.explains).toBe(false);
  });

  it.each([
    [[10, 1.96], [1, 1], true],
    [[10, 1.97], [1, 1], false],
    [[10, -1.97], [1, 1], false],
    [[10, 3.9], [1, 2], true],
    [[10, 3.94], [1, 2], false],
    [[10, 0.97], [1, 0.5], true],
    [[10, 0.99], [1, 0.5], false],
  ])(
    "holds where all that is left is within 1.96 u: %j, u %j: %s",
    (differences, doubts, holds) => {
      const one = suspect({ id: "one", slopes: Float64Array.of(1, 0) });
      expect(first(explained(differences, [one], doubts)).explains).toBe(holds);
    },
  );

  it("is nothing for a suspect that moves none of the differences", () => {
    const idle = suspect({ id: "idle", slopes: Float64Array.of(0) });
    expect(explained([10], [idle, suspect({ id: "a" })]).map(({ id }) => id)).toEqual(["a"]);
  });
});

describe("the shares of several suspects", () => {
  it("are as the evidence of a gross error of each: the likelier to be so wrong, the likelier", () => {
    const gross = [5, 1, 0.1];
    const explanations = explained(
      [4],
      gross.map((grossError) => suspect({ id: `${grossError}`, grossError })),
    );
    const wanted = sharesOf(...gross.map((each) => freeEvidence(4, 1, each)));
    expect(explanations.map(({ id }) => id)).toEqual(["5", "1", "0.1"]);
    explanations.forEach(({ share }, index) => {
      expect(share).toBeCloseTo(wanted[index] as number, 12);
    });
  });

  it("count a steep slope as a great error: what would move everything is not so likely", () => {
    const slopes = [40, 1];
    const explanations = explained(
      [4],
      slopes.map((slope) => suspect({ id: `${slope}`, slopes: Float64Array.of(slope) })),
    );
    const [steep = 0, plain = 0] = sharesOf(...slopes.map((each) => freeEvidence(4, each, 5)));
    expect(plain).toBeGreaterThan(steep);
    expect(explanations.map(({ id }) => id)).toEqual(["1", "40"]);
    expect(explanations[0]?.share).toBeCloseTo(plain, 12);
  });
});

describe("a known slip", () => {
  const slipping = (...changes: readonly number[]) =>
    suspect({
      id: "slipped",
      slips: changes.map((change) => ({ slip: "unit" as const, change })),
    });
  const plain = suspect({ id: "plain" });

  it("is what happened where it fits better than an error of any size would", () => {
    const explanations = explained([10], [plain, slipping(10.5)]);
    const [slip = 0] = sharesOf(slipEvidence(10, -0.5), freeEvidence(10, 1, 5));
    expect(slip).toBeGreaterThan(0.5);
    expect(explanations[0]).toMatchObject({ id: "slipped", slip: "unit", change: 10.5 });
    expect(explanations[0]?.wouldBe).toBe(110.5);
    expect(explanations[0]?.share).toBeCloseTo(slip, 12);
  });

  it("is told beside a free change that fits better", () => {
    // What it leaves, 1.9, is within 1.96 u, but is less likely than a free error that leaves nothing.
    expect(slipEvidence(10, -1.9)).toBeLessThan(freeEvidence(10, 1, 5));
    const only = first(explained([10], [slipping(11.9)]));
    expect(only.slip).toBe("unit");
    expect(only.change).toBeCloseTo(10, 6);
  });

  it("is the best of those that fit", () => {
    expect(first(explained([10], [slipping(10.8, 10.1, 9.5)])).change).toBe(10.1);
  });

  it.each([
    ["that leaves more than the doubt", 10, 12.5],
    ["that leaves as much as it takes", 1.9, 3.8],
    ["that leaves more than there was", 1.9, 3.84],
    ["that cannot be", 10, Number.NaN],
  ])("is none %s", (_, difference, change) => {
    const only = first(explained([difference], [slipping(change)]));
    expect(only.slip).toBeNull();
    expect(only.change).toBeCloseTo(difference, 6);
  });
});

describe("a change that does not act in proportion", () => {
  it("is followed to where it explains all", () => {
    // x + 0.01·x² = 20 has the root (−1 + √1.8)/0.02.
    const bent = suspect({
      id: "bent",
      caused: (by) => Float64Array.of(by + 0.01 * by ** 2),
    });
    const only = first(explained([20], [bent]));
    expect(only.change).toBeCloseTo((-1 + Math.sqrt(1.8)) / 0.02, 5);
    expect(only.explains).toBe(true);
  });

  it("goes only as far as the layout can follow it", () => {
    const lost = suspect({
      id: "lost",
      caused: (by) => Float64Array.of(by > 15 ? Number.NaN : by),
    });
    const only = first(explained([20], [lost]));
    expect(only.change).toBeCloseTo(20, 6);
    expect(only.explains).toBe(false);
    // Half as strong as it looks: 10 would not do, and 20, where all would be explained, cannot be.
    const weak = suspect({
      id: "weak",
      caused: (by) => Float64Array.of(by > 15 ? Number.NaN : by / 2),
    });
    const reached = first(explained([10], [weak]));
    expect(reached.change).toBeCloseTo(10, 6);
    expect(reached.explains).toBe(false);
  });
});

describe("the weight of differences", () => {
  it("goes down with the square of their unit: (cA)⁻¹ = A⁻¹/c, also where two say the same", () => {
    const weight = (scale: number) =>
      new SymmetricSystem([
        Float64Array.of(4 * scale, 4 * scale),
        Float64Array.of(4 * scale, 4 * scale),
      ]).product(Float64Array.of(1, 2), Float64Array.of(1, 2));
    expect(weight(100) / (weight(1) / 100)).toBeCloseTo(1, 9);
    expect(weight(0.01) / (weight(1) * 100)).toBeCloseTo(1, 9);
  });
});
