import { simulateImpact } from "../../src/physics/impact/impact.ts";
import type { ImpactSetup } from "../../src/physics/impact/impactSetup.ts";
import { roadProfile } from "../../src/physics/impact/roadProfile.ts";
import { unwrapped } from "../physics/demoFitments.ts";
import { linearStop, oneMass } from "./support/oneMassSetup.ts";
import { publishedSource } from "./support/published.ts";

/*
 * A weight dropped on a linear spring: δ = W/k·(1 + √(1 + 2hk/W)), any strength-of-materials text;
 * 500 kg, 28 kN/m, 0.1 m: 0.43142 m. Free fall: √(2g·0.1 m) = 1.400475 m/s.
 *
 * A landing begins at the rest position, where the spring bears W already and has taken W²/2k less
 * from the fall than it would have given: so the same motion begins with a fall of h + W/2k, and ends
 * W/k short of δ.
 */

const weight = 500 * 9.80665;
const rate = 28_000;
const fall = { kind: "landing", heightM: 0.1 + weight / (2 * rate) } as const;

function run(setup: ImpactSetup) {
  return unwrapped(simulateImpact(setup, fall, { mostSteps: 200_000 }));
}

const onStop = () => ({
  ...oneMass,
  gapMm: 0,
  stop: linearStop(28 - 1e-6),
  wheelRateNPerMm: 1e-6,
});

export const droppedWeight = publishedSource(
  "A weight dropped on a linear spring (strength of materials)",
  "met",
  (published) => {
    const deflection = (peakMm: number) => peakMm / 1000 + weight / rate;
    published(
      "deflection, 500 kg on the ride spring, m",
      0.43142,
      () => deflection(run(oneMass).result.peakWheelTravelMm),
      0.00015,
    );
    published(
      "deflection, 500 kg on a stop in contact, m",
      0.43142,
      () => deflection(run(onStop()).result.peakCompressionMm),
      0.00015,
    );
    published(
      "energy left in the stop, share of the fall's",
      0,
      () => run(onStop()).energy.stop / (weight * fall.heightM),
      5e-4,
    );
    published(
      "energy given back, share of the fall's",
      1,
      () => {
        const { kinetic, potential } = run(onStop()).energy;
        return (kinetic + potential) / (weight * fall.heightM);
      },
      5e-4,
    );
    published(
      "speed after a free fall of 0.1 m, m/s",
      1.400475,
      () => -unwrapped(roadProfile({ kind: "landing", heightM: 0.1 })).startSpeed,
      5e-7,
    );
  },
);
