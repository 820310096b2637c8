import { describe, expect, it } from "vitest";
import { analyseTimed } from "../../../src/physics/stopTests/analyseTimed.ts";
import type { TimedAnalysis } from "../../../src/physics/stopTests/benchTest.ts";
import { type FoundStop, foundStop } from "../../../src/physics/stopTests/foundStop.ts";
import { predictedHit } from "../../../src/physics/stopTests/predictedHit.ts";
import {
  designs,
  hitMassKg,
  lackingDesigns,
  trueStops,
} from "../../support/testMachine/designs.ts";
import { type Measuring, measure } from "../../support/testMachine/testMachine.ts";
import { type TrueStop, trueHit } from "../../support/testMachine/trueStop.ts";
import { faultCode, given } from "./outcomes.ts";

const usual: Measuring = { samplesPerS: 1000, whiteN: 15, whiteMm: 0.005, seed: 3 };

function stopOf(name: string): TrueStop {
  const stop = trueStops[name];
  if (stop === undefined) throw new Error(name);
  return stop;
}

const analyses = new Map<string, TimedAnalysis>();

/** What is found of one simulated test, worked out once. */
function tested(stop: string, design: string, more: Partial<Measuring> = {}): TimedAnalysis {
  const name = JSON.stringify([stop, design, more]);
  const analysis = analyses.get(name) ?? analysed(stop, design, more);
  analyses.set(name, analysis);
  return analysis;
}

function analysed(stop: string, design: string, more: Partial<Measuring>): TimedAnalysis {
  const motion = designs[design] ?? lackingDesigns[design];
  if (motion === undefined) throw new Error(design);
  const { timeS, depthMm, forceN } = measure(stopOf(stop), motion(), { ...usual, ...more });
  return given(analyseTimed({ kind: "cycles", timeS, displacementMm: depthMm, forceN }));
}

function foundOf(analysis: TimedAnalysis): FoundStop {
  const found = foundStop(analysis);
  if (found === null) throw new Error("no curve");
  return found;
}

describe("the parts of a known stop come back", () => {
  it.each(["sines", "triangles", "approach"])(
    "a dashpot within 3 of 100 at its depths: %s",
    (design) => {
      const { damping, branches, restLoss } = foundOf(tested("dashpot", design));
      const truth = stopOf("dashpot");
      expect([branches, restLoss]).toEqual([[], 0]);
      for (const [depth, into, out] of damping?.slice(1) ?? []) {
        expect(Math.abs(into / (truth.damping?.(depth, 1) ?? 0) - 1)).toBeLessThan(0.03);
        expect(Math.abs(out / (truth.damping?.(depth, -1) ?? 0) - 1)).toBeLessThan(0.03);
      }
      expect(damping).toHaveLength(5);
    },
  );

  it.each([
    ["restLoss", 0.1],
    ["smallRestLoss", 0.03],
  ])("rest loss, and no damping beside it: %s", (name, share) => {
    const found = foundOf(tested(name, "sines"));
    expect(Math.abs(found.restLoss - share)).toBeLessThan(0.002);
    expect([found.damping, found.branches]).toEqual([null, []]);
    expect(found.testedAtSpeed).toBe(true);
  });

  it("one branch, its time and its share", () => {
    const { branches, damping } = foundOf(tested("oneBranch", "triangles"));
    expect(branches).toEqual([{ tauS: 0.03, share: expect.closeTo(0.5, 1) }]);
    expect(damping).toBeNull();
  });

  it("nothing of a stop that loses nothing; it stays undamped, and that is said", () => {
    for (const design of ["sines", "approach"]) {
      const analysis = tested("lossless", design);
      const found = foundOf(analysis);
      expect(found).toMatchObject({
        testedAtSpeed: false,
        damping: null,
        branches: [],
        restLoss: 0,
      });
      expect(analysis.remarks.map(({ code }) => code)).toContain("lossNotTold");
      expect(found.doubt.damping[0]?.[1]).toBeGreaterThan(0);
    }
  });
});

describe("a hit at 2 m/s from tests at 0.05 to 0.5 m/s: peak within 7 %, leaving speed within 12 %", () => {
  it.each([
    ["dashpot", "sines", {}],
    ["twoBranches", "triangles", {}],
    ["manyBranches", "aboutAMean", {}],
    ["everything", "sines", { delayS: 0.0005 }],
    ["twoBranches", "approach", { driftN: 150 }],
    ["oneBranch", "sines", { samplesPerS: 100 }],
  ] as const)("%s by %s", (stop, design, more) => {
    const hit = given(predictedHit(tested(stop, design, more), hitMassKg, 2));
    const truth = trueHit(stopOf(stop), hitMassKg, 2);
    if (hit === null) throw new Error("no curve");
    expect(Math.abs(hit.hit.peakForceN / truth.peakForceN - 1)).toBeLessThan(0.07);
    expect(Math.abs(hit.hit.leaveSpeedMmPerS / truth.leaveSpeedMmPerS - 1)).toBeLessThan(0.12);
    const codes = hit.remarks.map(({ code }) => code);
    expect(codes).toContain("hitSimulated");
    expect(codes).toContain("hitFaster");
  });
});

describe("noise that holds together and leaves open whether a stop has a dashpot or quick branches", () => {
  const wandering = { correlatedN: 40, correlationS: 0.1, seed: 2 };

  it("has the laws that the test allows be of both kinds", () => {
    const { draws } = given(tested("everything", "sines", wandering).loss);
    const withDashpot = draws.filter((law) => law.damping !== null);
    expect(draws.length).toBeGreaterThanOrEqual(20);
    expect(withDashpot.length).toBeGreaterThan(0.05 * draws.length);
    expect(withDashpot.length).toBeLessThan(0.95 * draws.length);
  });

  it("has what was found be the mean of both, which is told from nothing as a whole", () => {
    const { whole } = given(tested("everything", "sines", wandering).loss);
    expect(whole.value).toBeGreaterThan(2 * whole.doubt);
  });

  it.each([
    ["dashpot", "twoRampsAndHold"],
    ["oneBranch", "sines"],
    ["twoBranches", "aboutAMean"],
    ["manyBranches", "triangles"],
    ["everything", "aboutAMean"],
    ["smallRestLoss", "approach"],
  ])("and hits at 2 m/s are foretold, peak and leaving speed: %s by %s", (stop, design) => {
    const hit = given(predictedHit(tested(stop, design, wandering), hitMassKg, 2));
    const truth = trueHit(stopOf(stop), hitMassKg, 2);
    if (hit === null) throw new Error("no curve");
    const off = hit.hit.peakForceN - truth.peakForceN;
    expect(Math.abs(off / truth.peakForceN)).toBeLessThan(0.07);
    expect(Math.abs(hit.hit.leaveSpeedMmPerS / truth.leaveSpeedMmPerS - 1)).toBeLessThan(0.12);
    expect(Math.abs(off)).toBeLessThan(hit.doubt?.peakForceN ?? 0);
  });

  it("has the ± of a dashpot reach what it is without the branch that was fitted beside it", () => {
    let held = 0;
    let all = 0;
    for (const [design, seed] of [
      ["sines", 2],
      ["aboutAMean", 6],
      ["twoRampsAndHold", 5],
    ] as const) {
      const found = foundOf(tested("dashpot", design, { ...wandering, seed }));
      expect(found.branches).toHaveLength(1);
      // The shallowest depth is little pressed by anything.
      for (const [row, [depth, into, out]] of (found.damping ?? []).slice(1).entries()) {
        const [, doubtIn = 0, doubtOut = 0] = found.doubt.damping[row + 1] ?? [];
        for (const [value, doubt, direction] of [
          [into, doubtIn, 1],
          [out, doubtOut, -1],
        ] as const) {
          all++;
          const truth = stopOf("dashpot").damping?.(depth, direction) ?? 0;
          if (Math.abs(value - truth) <= doubt) held++;
        }
      }
    }
    expect(held / all).toBeGreaterThanOrEqual(0.9);
  });

  it("leaves a branch that the test shows in every law", () => {
    const { draws } = given(tested("everything", "sines").loss);
    expect(draws.every(({ branches }) => branches.length > 0)).toBe(true);
  });

  it("is not stirred up without that noise", () => {
    for (const stop of ["everything", "dashpot"]) {
      const { draws } = given(tested(stop, "sines").loss);
      expect(draws.every((law) => law.damping !== null)).toBe(true);
    }
    for (const { damping } of given(tested("twoBranches", "sines").loss).draws) {
      expect(damping).toBeNull();
    }
  });
});

describe("a branch that the test does not need", () => {
  it("is not listed, though its values are free", () => {
    for (const seed of [1, 2, 3]) {
      const { branches, damping } = given(tested("everything", "triangles", { seed }).loss);
      expect(damping.length).toBe(5);
      for (const { share } of branches) expect(share.value).toBeGreaterThan(share.doubt / 2);
    }
  });
});

describe("what a test does not hold", () => {
  it("is a loss where every stroke is slow", () => {
    const analysis = tested("dashpot", "rampsOnly");
    expect(faultCode(analysis.loss)).toBe("staticRowsOnly");
    expect(foundOf(analysis)).toMatchObject({ testedAtSpeed: false, damping: null });
  });

  it("is a curve where there is no slow ramp; the loops stay", () => {
    const analysis = tested("dashpot", "cyclesOnly");
    expect(faultCode(analysis.staticCurve)).toBe("noRamp");
    expect(foundStop(analysis)).toBeNull();
    expect(analysis.blocks.length).toBeGreaterThan(0);
  });

  it("is a damping deeper than the ramp went", () => {
    const analysis = tested("dashpot", "shallowRamp");
    const deepest = foundOf(analysis).curve.at(-1)?.[0] ?? 0;
    for (const [depth] of foundOf(analysis).damping ?? []) expect(depth).toBeLessThan(deepest);
    expect(analysis.remarks.map(({ code }) => code)).toContain("deeperThanStatic");
  });

  it("is a ramp's speed below 5 mm/s: it is told by its duration", () => {
    const analysis = tested("dashpot", "quickRamp");
    expect(analysis.remarks.map(({ code }) => code)).toContain("rampByDuration");
    expect(foundOf(analysis).damping).toHaveLength(5);
  });
});

describe("the first loading", () => {
  it("of a stop that softens is left out and told, of ramps and of blocks", () => {
    const motion = designs.twoRampsAndHold;
    if (motion === undefined) throw new Error("no design");
    const { timeS, depthMm, forceN } = measure(stopOf("dashpot"), motion(), usual);
    // The first ramp, and the first cycle of the last block, 10 % harder.
    const ends = timeS.length - Math.round(4 * 1000 * 0.4776) - 100;
    const harder = forceN.map((force, row) =>
      (timeS[row] ?? 0) < 22 || (row > ends && row < ends + 470) ? 1.1 * force : force,
    );
    const analysis = given(
      analyseTimed({ kind: "cycles", timeS, displacementMm: depthMm, forceN: harder }),
    );
    expect(analysis.remarks.map(({ code }) => code)).toContain("firstRampLeftOut");
    for (const [depth, force] of foundOf(analysis).curve.slice(4)) {
      expect(Math.abs(force / stopOf("dashpot").force(depth) - 1)).toBeLessThan(0.02);
    }
  });
});
