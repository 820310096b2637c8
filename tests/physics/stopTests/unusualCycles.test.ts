import { describe, expect, it } from "vitest";
import { inModelUnits } from "../../../src/physics/sentence.ts";
import { analyseCycles } from "../../../src/physics/stopTests/analyseCycles.ts";
import type { TimeDisplacementForce } from "../../../src/physics/stopTests/benchTest.ts";
import { orientCycles, usableSamples } from "../../../src/physics/stopTests/orientCycles.ts";
import { sineFit } from "../../../src/physics/stopTests/sineFit.ts";
import { speedGroups } from "../../../src/physics/stopTests/speedGroups.ts";
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

describe("samples out of order", () => {
  const test = cyclesOfPlan({ ...plan, samplesPerCycle: 200 });

  it("a few that repeat a time are left out, and told", () => {
    const again = { ...test, timeS: test.timeS.slice() };
    again.timeS[50] = again.timeS[49] as number;
    const { samples, remarks } = given(usableSamples(again));
    expect(samples.timeS).toHaveLength(test.timeS.length - 1);
    expect(remarks.map(({ sentence }) => inModelUnits(sentence))).toEqual([
      "1 rows whose time is not after the row before were left out.",
    ]);
  });

  it("all in order stay as they are", () => {
    expect(given(usableSamples(test)).samples).toBe(test);
  });
});

describe("which way a cyclic test counts", () => {
  const waves = (force: (x: number) => number) => {
    const displacementMm = Float64Array.from({ length: 100 }, (_, at) => 5 * Math.sin(at / 5));
    return {
      timeS: displacementMm.map((_, at) => at),
      displacementMm,
      forceN: displacementMm.map(force),
    };
  };

  it("a force about 0 that falls as the stop is pressed is turned", () => {
    const { samples, remarks, forceSignKnown } = given(orientCycles(waves((x) => -60 * x)));
    expect(remarks.map(({ code }) => code)).toEqual(["forceReversed"]);
    expect(forceSignKnown).toBe(true);
    expect(samples.forceN[1]).toBeCloseTo(60 * 5 * Math.sin(0.2), 9);
  });

  it("a pushing force that falls means the displacement is counted the other way", () => {
    const { samples, remarks } = given(orientCycles(waves((x) => 600 - 60 * x)));
    expect(remarks.map(({ code }) => code)).toEqual(["depthReversed"]);
    expect(samples.displacementMm[1]).toBeCloseTo(-5 * Math.sin(0.2), 9);
  });

  it("a force that has nothing to do with the displacement tells no sign", () => {
    const still = waves(() => 0);
    const forceN = still.displacementMm.map((_, at) => 300 * Math.cos(at / 5));
    expect(given(orientCycles({ ...still, forceN })).forceSignKnown).toBe(false);
  });
});

describe("a sine through samples", () => {
  it("of one moment alone is their mean, and no sine", () => {
    const fit = sineFit(Float64Array.of(2, 2, 2), Float64Array.of(4, 5, 6), 0, 3, omega);
    expect(fit).toMatchObject({ mean: 5, cosine: 0, sine: 0 });
    expect(fit.rms).toBeCloseTo(Math.sqrt(2 / 3), 12);
  });
});

describe("the speeds of a test", () => {
  it("are at most twelve, in even steps of their ratio", () => {
    // Thirteen speeds, each twice the one before: 12 groups over a ratio of 2^12, so 2 each.
    const speeds = Float64Array.from({ length: 13 }, (_, at) => 2 ** at);
    const { count, groupOf } = speedGroups(speeds);
    expect(count).toBe(12);
    expect([1, 1.9, 2.1, 1500, 4096].map(groupOf)).toEqual([0, 0, 1, 10, 11]);
  });

  it("are one where there is one", () => {
    expect(speedGroups(Float64Array.of(100, 101)).count).toBe(1);
  });
});
