import { describe, expect, it } from "vitest";
import { simulateImpact } from "../../src/physics/impact/impact.ts";
import { roadProfile } from "../../src/physics/impact/roadProfile.ts";
import { linearStop, oneMass } from "./oneMassSetup.ts";

/*
 * A weight dropped on a linear spring: δ = W/k·(1 + √(1 + 2hk/W)), any strength-of-materials text;
 * 500 kg, 28 kN/m, 0.1 m: 0.43142 m. Free fall: √(2g·0.1 m) = 1.400475 m/s. Both recomputed in
 * references.md.
 *
 * A landing begins at the rest position, where the spring bears W already and has taken W²/2k less
 * from the fall than it would have given: so the same motion begins with a fall of h + W/2k, and ends
 * W/k short of δ.
 */

const g = 9.80665;
const weight = 500 * g;
const rate = 28_000;
const height = 0.1;
const textbook = (weight / rate) * (1 + Math.sqrt(1 + (2 * height * rate) / weight));
const fall = { kind: "landing", heightM: height + weight / (2 * rate) } as const;
const fromRest = 1000 * (textbook - weight / rate);

describe("a weight dropped on a linear spring (strength of materials)", () => {
  it("is the textbook's 0.43142 m", () => {
    expect(textbook).toBeCloseTo(0.43142, 5);
  });

  it("goes as deep on the ride spring", () => {
    const run = simulateImpact(oneMass, fall, { mostSteps: 200_000 });
    expect(run.ok && run.value.result.peakWheelTravelMm / fromRest - 1).toBeCloseTo(0, 3);
  });

  it("goes as deep on a stop in contact, and gets its energy back", () => {
    const onStop = {
      ...oneMass,
      gapMm: 0,
      stop: linearStop(28 - 1e-6),
      wheelRateNPerMm: 1e-6,
    };
    const run = simulateImpact(onStop, fall, { mostSteps: 200_000 });
    if (!run.ok) throw new Error(run.fault.code);
    const { result, energy } = run.value;
    expect(result.peakCompressionMm / fromRest - 1).toBeCloseTo(0, 3);
    expect(energy.stop / (weight * fall.heightM)).toBeCloseTo(0, 3);
    expect((energy.kinetic + energy.potential) / (weight * fall.heightM)).toBeCloseTo(1, 3);
  });

  it("falls at 1.400475 m/s from 0.1 m", () => {
    const profile = roadProfile({ kind: "landing", heightM: 0.1 });
    expect(profile.ok && profile.value.startSpeed).toBeCloseTo(-1.400475, 6);
  });
});
