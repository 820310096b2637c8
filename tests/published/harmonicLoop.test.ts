import { describe, expect, test } from "vitest";
import { analyseCycles } from "../../src/physics/stopTests/analyseCycles.ts";
import { cyclesOfPlan } from "../physics/stopTests/generatedTests.ts";
import { given } from "../physics/stopTests/outcomes.ts";

/**
 * Loss of a harmonic cycle, vibration texts (recalled from memory; each follows by integrating F·dx over
 * one period of x = X·sin ωt): viscous dashpot ΔE = π·c·ω·X²; linear spring ΔE = 0; hysteretic damping
 * ΔE = π·η·k·X² at any frequency, so c = η·k/ω; dry friction ΔE = 4·F·X; loss factor ΔE/(2π·½kX²).
 * A polygon of N samples misses (2π/N)²/6 of an ellipse's area: 2.6e-6 at N = 1600.
 */
const plan = { amplitudeMm: 6, frequencyHz: 4, cycles: 5, samplesPerCycle: 1600 };
const omega = 2 * Math.PI * plan.frequencyHz;

function near(value: number | undefined, expected: number, share: number): void {
  expect(Math.abs((value ?? Number.NaN) / expected - 1)).toBeLessThan(share);
}

describe("viscous dashpot with c = 0.8 N·s/mm", () => {
  const found = given(analyseCycles(cyclesOfPlan({ ...plan, force: (_, v) => 0.8 * v })));

  test("loss per cycle and equivalent viscous damping", () => {
    near(found.lossJ.value, (Math.PI * 0.8 * omega * 36) / 1000, 1e-5);
    near(found.equivalentDampingNsPerMm?.value, 0.8, 1e-5);
  });

  test("amplitude, frequency, and no rate to refer a loss factor to", () => {
    near(found.amplitudeMm, 6, 1e-6);
    near(found.frequencyHz, 4, 1e-6);
    expect(found.cycles).toBe(5);
    expect(found.lossFactor).toBeNull();
  });
});

describe("linear spring of 50 N/mm pressed 20 ± 6 mm", () => {
  const found = given(
    analyseCycles(cyclesOfPlan({ ...plan, meanMm: 20, force: (x) => 50 * (20 + x) })),
  );

  test("gives back all that was put in: F·dx from 14 to 26 mm", () => {
    near(found.energyInJ.value, (0.5 * 50 * (26 ** 2 - 14 ** 2)) / 1000, 1e-4);
    near(found.energyOutJ.value, found.energyInJ.value, 1e-9);
    expect(Math.abs(found.lossJ.value)).toBeLessThan(1e-9);
  });

  test("rate, no loss factor, no damping", () => {
    near(found.dynamicRateNPerMm.value, 50, 1e-9);
    expect(Math.abs(found.lossFactor?.value ?? Number.NaN)).toBeLessThan(1e-9);
    expect(Math.abs(found.equivalentDampingNsPerMm?.value ?? Number.NaN)).toBeLessThan(1e-9);
  });
});

describe("spring and dashpot together: 50 N/mm, 0.8 N·s/mm", () => {
  const found = given(
    analyseCycles(cyclesOfPlan({ ...plan, meanMm: 20, force: (x, v) => 50 * (20 + x) + 0.8 * v })),
  );

  test("loss factor c·ω/k", () => {
    near(found.lossFactor?.value, (0.8 * omega) / 50, 1e-5);
    near(found.dynamicRateNPerMm.value, 50, 1e-6);
    near(found.lossJ.value, found.energyInJ.value - found.energyOutJ.value, 1e-9);
  });
});

describe("hysteretic loop: loss factor 0.15 at 50 N/mm, at any frequency", () => {
  test.each([0.5, 4, 15])("%f Hz: ΔE = π·η·k·X², c = η·k/ω", (frequencyHz) => {
    const w = 2 * Math.PI * frequencyHz;
    const force = (x: number, v: number) => 50 * (20 + x) + ((0.15 * 50) / w) * v;
    const found = given(analyseCycles(cyclesOfPlan({ ...plan, frequencyHz, meanMm: 20, force })));
    near(found.lossJ.value, (Math.PI * 0.15 * 50 * 36) / 1000, 1e-5);
    near(found.lossFactor?.value, 0.15, 1e-5);
    near(found.equivalentDampingNsPerMm?.value, (0.15 * 50) / w, 1e-5);
  });
});

test("dry friction of 40 N on a spring: ΔE = 4·F·X, c = 4F/(π·ω·X)", () => {
  const force = (x: number, v: number) => 50 * (20 + x) + 40 * Math.sign(v);
  const found = given(
    analyseCycles(cyclesOfPlan({ ...plan, samplesPerCycle: 1601, meanMm: 20, force })),
  );
  near(found.lossJ.value, (4 * 40 * 6) / 1000, 1e-3);
  near(found.equivalentDampingNsPerMm?.value, (4 * 40) / (Math.PI * omega * 6), 1e-3);
});
