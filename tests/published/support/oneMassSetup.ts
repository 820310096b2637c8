import type { ImpactSetup } from "../../../src/physics/impact/impactSetup.ts";
import type { Kinematics } from "../../../src/physics/kinematics/kinematics.ts";
import { succeed } from "../../../src/physics/outcome.ts";
import type { StopDamping } from "../../../src/physics/stop/damping.ts";
import { type StopAtSpeed, staticOnly } from "../../../src/physics/stop/stopAtSpeed.ts";
import type { StopCurve } from "../../../src/physics/stop/stopCurve.ts";

/** The stop stands upright over the wheel: s = z. */
export const straight: Kinematics = {
  range: [-1e4, 1e4],
  closing: (z) => succeed(z),
  wheelTravel: (s) => succeed(s),
  ratio: () => succeed(1),
  evaluate(z, out) {
    out[0] = z;
    out[1] = 1;
    out[2] = 0;
  },
};

/** A stop of constant rate, N/mm. */
export function linearStop(rate: number): StopCurve {
  return {
    usableCompressionMm: 1e4,
    force: (x) => (x > 0 ? rate * x : 0),
    slope: (x) => (x >= 0 ? rate : 0),
    energy: (x) => (x > 0 ? (rate * x * x) / 2 : 0),
    scaled: (factor) => linearStop(factor * rate),
  };
}

/** A stop that loses energy in a dashpot alone. */
export function dashpotOnly(dashpot: StopDamping): StopAtSpeed {
  return { ...staticOnly, dashpot };
}

/**
 * A quarter car that is one mass for all that matters here: a wheel of next to no mass on a tyre so
 * stiff that it hardly moves. 500 kg on 28 N/mm, undamped, its stop out of the way.
 */
export const oneMass: ImpactSetup = {
  kinematics: straight,
  stop: linearStop(1),
  atSpeed: staticOnly,
  gapMm: 5e3,
  heldAtRideN: 0,
  hardLimitMm: null,
  sprungMassKg: 500,
  unsprungMassKg: 0.05,
  payloadKg: 0,
  wheelRateNPerMm: 28,
  tyreRateNPerMm: 1e5,
  damperBumpNsPerMm: 0,
  damperReboundNsPerMm: 0,
  restTravelMm: 0,
};
