import { simulateImpact } from "../../src/physics/impact/impact.ts";
import type { ImpactSetup } from "../../src/physics/impact/impactSetup.ts";
import { unwrapped } from "../physics/demoFitments.ts";
import { dashpotOnly, linearStop, oneMass } from "./support/oneMassSetup.ts";
import { publishedSource } from "./support/published.ts";

/*
 * A mass that meets a spring and dashpot at speed v leaves with e·v. Ended at zero displacement:
 * e = exp(−πζ/√(1 − ζ²)) (textbook; from memory). Ended where the force is zero, for one that pushes and
 * never pulls: the free vibration x = (v/ωd)·e^(−βt)·sin ωd·t has k·x + c·ẋ = 0 first at
 * ωd·t = π − atan2(2ζ√(1 − ζ²), 1 − 2ζ²), and nothing slows the mass after that.
 */

const heightM = 0.02;
const speed = Math.sqrt(2 * 9.80665 * heightM);

/** Dashpot of share ζ for 500 kg on 28 N/mm, N·s/mm. */
function dashpot(share: number): number {
  return (2 * share * Math.sqrt(28_000 * 500)) / 1000;
}

function leavingShare(setup: ImpactSetup): number {
  const run = unwrapped(
    // A wheel of next to no mass takes steps at the edge of their stability, which asks for finer ones.
    simulateImpact(setup, { kind: "landing", heightM }, { mostSteps: 200_000, tolerance: 1e-6 }),
  );
  return run.result.leaveSpeedMmPerS / (1000 * speed);
}

export const springDashpotContact = publishedSource(
  "A mass that meets a spring and dashpot (vibration texts)",
  "from memory",
  (published) => {
    for (const share of [0.05, 0.2, 0.5]) {
      const root = Math.sqrt(1 - share ** 2);
      const atRest = Math.exp((-Math.PI * share) / root);
      published(
        `leaving speed, share of v, ended at zero displacement, ζ ${share}`,
        atRest,
        () =>
          leavingShare({
            ...oneMass,
            // The stop only marks the place; ride spring and damper are the spring and dashpot.
            gapMm: 0,
            stop: linearStop(1e-9),
            damperBumpNsPerMm: dashpot(share),
            damperReboundNsPerMm: dashpot(share),
          }),
        0.005 * atRest,
      );
      const angle = Math.PI - Math.atan2(2 * share * root, 1 - 2 * share ** 2);
      const ratio = share / root;
      const atNoForce = -Math.exp(-ratio * angle) * (Math.cos(angle) - ratio * Math.sin(angle));
      published(
        `leaving speed, share of v, ended where a stop would begin to pull, ζ ${share}`,
        atNoForce,
        () =>
          leavingShare({
            ...oneMass,
            gapMm: 0,
            wheelRateNPerMm: 1e-9,
            stop: linearStop(28),
            atSpeed: dashpotOnly({ coefficient: () => dashpot(share) }),
          }),
        0.005 * atNoForce,
      );
    }
  },
);
