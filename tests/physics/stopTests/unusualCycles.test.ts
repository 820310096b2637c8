import { describe, expect, it } from "vitest";
import { analyseCycles } from "../../../src/physics/stopTests/analyseCycles.ts";
import type { TimeDisplacementForce } from "../../../src/physics/stopTests/benchTest.ts";
import { timedSamples } from "../../../src/physics/stopTests/timedSamples.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";
import { cyclesOfPlan } from "./generatedTests.ts";
import { faultCode, given } from "./outcomes.ts";

const spring = (x: number) => 60 * (15 + x);
const plan = {
  amplitudeMm: 5,
  frequencyHz: 3,
  cycles: 4,
  samplesPerCycle: 100,
  meanMm: 15,
  force: (x: number, v: number) => spring(x) + 0.5 * v,
};
const omega = 2 * Math.PI * 3;

const told = (test: TimeDisplacementForce) =>
  given(analyseCycles(test)).remarks.map(({ sentence }) => inModelUnits(sentence));

describe("cycles that are refused", () => {
  it("a displacement that never changes", () => {
    const still = { ...cyclesOfPlan(plan) };
    const outcome = analyseCycles({ ...still, displacementMm: still.displacementMm.map(() => 15) });
    expect(faultCode(outcome)).toBe("columnsNotUsable");
    expect(outcome.ok ? "" : inModelUnits(outcome.fault.sentence)).toBe(
      "The displacement does not change in this file. Check that the right columns are chosen.",
    );
  });

  it("cycles of fewer than 16 samples", () => {
    expect(faultCode(analyseCycles(cyclesOfPlan({ ...plan, samplesPerCycle: 12 })))).toBe(
      "noCycle",
    );
  });
});

describe("one cycle alone", () => {
  it("has no standard error, and loses π·c·ω·X²", () => {
    const found = given(analyseCycles(cyclesOfPlan({ ...plan, cycles: 1, samplesPerCycle: 400 })));
    expect(found.cycles).toBe(1);
    expect(found.lossJ.standardError).toBe(0);
    expect((1000 * found.lossJ.value) / (Math.PI * 0.5 * omega * 25)).toBeCloseTo(1, 3);
  });
});

describe("a motion that is no sine", () => {
  it("gives energies and no equivalent damping, its stroke from end to end", () => {
    // Held at its ends for most of the time: a square wave with steep flanks.
    const sine = cyclesOfPlan({ ...plan, samplesPerCycle: 400 });
    const square = sine.displacementMm.map(
      (x) => 15 + (5 * Math.tanh((8 * (x - 15)) / 5)) / Math.tanh(8),
    );
    const test = { ...sine, displacementMm: square, forceN: square.map((x) => 60 * x) };
    const found = given(analyseCycles(test));
    expect(found.equivalentDampingNsPerMm).toBeNull();
    expect(found.amplitudeMm).toBeCloseTo(5, 6);
    expect(found.dynamicRateNPerMm.value).toBeCloseTo(60, 6);
    expect(told(test)).toContain(
      "The motion is not a sine, so no equivalent viscous damping is given; energies and loss per cycle hold.",
    );
  });
});

describe("a stop that is still settling", () => {
  it("is told by its first and last greatest force", () => {
    const test = cyclesOfPlan({ ...plan, samplesPerCycle: 200 });
    const fading = test.forceN.map((force, place) => force * (1 - (0.05 * place) / 200));
    const [remark] = told({ ...test, forceN: fading }).filter((each) => each.includes("settling"));
    expect(remark).toMatch(
      /^The greatest force went from 11\d\d N in the first cycle to (9|10)\d\d N in the last: the stop was still settling\.$/,
    );
    expect(told(test)).toEqual([]);
  });
});

describe("samples that are all in order", () => {
  it("stay as they are", () => {
    const test = cyclesOfPlan(plan);
    expect(given(timedSamples(test)).samples).toBe(test);
  });
});
