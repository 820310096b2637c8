import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { analyseCycles } from "../../../src/physics/stopTests/analyseCycles.ts";
import type { TimeDisplacementForce } from "../../../src/physics/stopTests/benchTest.ts";
import { type CyclePlan, cyclesOfPlan } from "./generatedTests.ts";
import { faultCode, given } from "./outcomes.ts";

const omega = 2 * Math.PI * 3;
/** A spring of 60 N/mm pressed 15 mm with a dashpot of 0.5 N·s/mm, 3 Hz. */
const plan: CyclePlan = {
  amplitudeMm: 5,
  frequencyHz: 3,
  cycles: 12,
  samplesPerCycle: 250,
  meanMm: 15,
  force: (x, v) => 60 * (15 + x) + 0.5 * v,
};
const lossJ = (Math.PI * 0.5 * omega * 25) / 1000;

function changed(
  test: TimeDisplacementForce,
  change: (row: readonly [number, number, number], place: number) => readonly number[] | null,
): TimeDisplacementForce {
  const rows = Array.from(test.timeS, (time, place) =>
    change([time, test.displacementMm[place] as number, test.forceN[place] as number], place),
  ).filter((row) => row !== null);
  return {
    kind: "cycles",
    timeS: Float64Array.from(rows, (row) => row[0] as number),
    displacementMm: Float64Array.from(rows, (row) => row[1] as number),
    forceN: Float64Array.from(rows, (row) => row[2] as number),
  };
}

function expectKnown(test: TimeDisplacementForce, ...told: string[]): void {
  const found = given(analyseCycles(test));
  expect(found.remarks.map(({ code }) => code)).toEqual(told);
  expect(found.cycles).toBeGreaterThan(8);
  expect(found.lossJ.value / lossJ).toBeCloseTo(1, 2);
  expect(found.equivalentDampingNsPerMm?.value).toBeCloseTo(0.5, 2);
  expect(found.dynamicRateNPerMm.value).toBeCloseTo(60, 1);
  expect(found.lossFactor?.value).toBeCloseTo((0.5 * omega) / 60, 2);
}

describe("known answers", () => {
  test("without noise", () => expectKnown(cyclesOfPlan(plan)));

  test("noise of 10 N and 0.02 mm: within four standard errors and 2 %", () => {
    const found = given(
      analyseCycles(cyclesOfPlan({ ...plan, noiseN: 10, noiseMm: 0.02, seed: 11 })),
    );
    expect(found.lossJ.standardError).toBeGreaterThan(0);
    expect(Math.abs(found.lossJ.value - lossJ)).toBeLessThan(
      4 * found.lossJ.standardError + 0.001 * lossJ,
    );
    expect(Math.abs((found.equivalentDampingNsPerMm?.value ?? 0) / 0.5 - 1)).toBeLessThan(0.02);
    expect(Math.abs(found.dynamicRateNPerMm.value / 60 - 1)).toBeLessThan(0.005);
  });

  test("force reversed", () =>
    expectKnown(
      changed(cyclesOfPlan(plan), ([t, x, f]) => [t, x, -f]),
      "forceReversed",
    ));

  test("displacement reversed", () =>
    expectKnown(
      changed(cyclesOfPlan(plan), ([t, x, f]) => [t, 200 - x, f]),
      "depthReversed",
    ));

  test("displacement and force swapped", () =>
    expectKnown(
      changed(cyclesOfPlan(plan), ([t, x, f]) => [t, f, x]),
      "columnsSwapped",
    ));

  test("samples missing in two cycles: those are left out", () =>
    expectKnown(
      changed(cyclesOfPlan(plan), (row, place) =>
        (place > 600 && place < 640) || (place > 1700 && place < 1720) ? null : row,
      ),
      "cyclesLeftOut",
    ));

  test("a run-up of small strokes is left out", () => {
    const small = cyclesOfPlan({ ...plan, amplitudeMm: 2, cycles: 2 });
    const full = cyclesOfPlan(plan);
    const later = (small.timeS.at(-1) ?? 0) + 1 / 750;
    const found = given(
      analyseCycles({
        kind: "cycles",
        timeS: Float64Array.from([...small.timeS, ...full.timeS.map((t) => t + later)]),
        displacementMm: Float64Array.from([...small.displacementMm, ...full.displacementMm]),
        forceN: Float64Array.from([...small.forceN, ...full.forceN]),
      }),
    );
    expect(found.remarks.map(({ code }) => code)).toContain("cyclesLeftOut");
    expect(found.lossJ.value / lossJ).toBeCloseTo(1, 2);
  });
});

describe("a dashpot alone, force reversed", () => {
  test("its loss tells the sign", () => {
    const found = given(analyseCycles(cyclesOfPlan({ ...plan, force: (_, v) => -0.5 * v })));
    expect(found.equivalentDampingNsPerMm?.value).toBeCloseTo(0.5, 3);
    expect(found.remarks.map(({ code }) => code)).toEqual(["forceReversed"]);
  });
});

describe("what gives no damping", () => {
  test("cycles slower than the static speed: loss, but damping shows only at speed", () => {
    const slow = { ...plan, frequencyHz: 0.05 };
    const found = given(
      analyseCycles(cyclesOfPlan({ ...slow, force: (x, v) => 60 * (15 + x) + 20 * Math.sign(v) })),
    );
    expect(found.lossJ.value).toBeCloseTo((4 * 20 * 5) / 1000, 2);
    expect(found.equivalentDampingNsPerMm).toBeNull();
    expect(found.remarks.map(({ code }) => code)).toContain("slowCycles");
  });

  test("a triangle of displacement is no sine: energies hold", () => {
    const triangle = changed(cyclesOfPlan({ ...plan, meanMm: 0 }), ([t, x]) => {
      const ramp = (10 / Math.PI) * Math.asin(Math.max(-1, Math.min(1, x / 5)));
      return [t, 15 + ramp, 60 * (15 + ramp)];
    });
    const found = given(analyseCycles(triangle));
    expect(found.equivalentDampingNsPerMm === null).toBe(
      found.remarks.some(({ code }) => code === "notASine"),
    );
    expect(Math.abs(found.lossJ.value)).toBeLessThan(1e-6);
    expect(found.energyInJ.value).toBeCloseTo((0.5 * 60 * (20 ** 2 - 10 ** 2)) / 1000, 1);
  });
});

describe("refused in a sentence", () => {
  test("time that does not rise", () => {
    const test = changed(cyclesOfPlan(plan), ([t, x, f]) => [x, t, f]);
    expect(faultCode(analyseCycles(test))).toBe("timeNotRising");
  });

  test("energy out of nothing", () => {
    const backwards = cyclesOfPlan({ ...plan, force: (x, v) => 60 * (15 + x) - 0.5 * v });
    expect(faultCode(analyseCycles(backwards))).toBe("energyGained");
  });

  test("half a cycle", () => {
    const test = changed(cyclesOfPlan(plan), (row, place) => (place < 120 ? row : null));
    expect(faultCode(analyseCycles(test))).toBe("noCycle");
  });

  test("twenty samples", () => {
    const test = changed(cyclesOfPlan(plan), (row, place) => (place < 20 ? row : null));
    expect(faultCode(analyseCycles(test))).toBe("tooFewSamples");
  });
});

test("energy in less energy out is the loss, and none is NaN, whatever spring and dashpot", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 5, max: 900, noNaN: true }),
      fc.double({ min: 0.05, max: 5, noNaN: true }),
      fc.double({ min: 1, max: 20, noNaN: true }),
      fc.double({ min: 0.5, max: 20, noNaN: true }),
      (rate, damping, amplitudeMm, frequencyHz) => {
        const found = given(
          analyseCycles(
            cyclesOfPlan({
              amplitudeMm,
              frequencyHz,
              cycles: 2,
              samplesPerCycle: 400,
              meanMm: 25,
              force: (x, v) => rate * (25 + x) + damping * v,
            }),
          ),
        );
        const expected = (Math.PI * damping * 2 * Math.PI * frequencyHz * amplitudeMm ** 2) / 1000;
        expect(found.lossJ.value / expected).toBeCloseTo(1, 3);
        expect(found.lossJ.value).toBeCloseTo(found.energyInJ.value - found.energyOutJ.value, 9);
      },
    ),
  );
});
