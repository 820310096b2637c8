import { describe, expect, it } from "vitest";
import { simulateImpact } from "../../src/physics/impact/impact.ts";
import type { ImpactSetup } from "../../src/physics/impact/impactSetup.ts";
import { linearStop, oneMass } from "./oneMassSetup.ts";

/*
 * A mass that meets a spring and dashpot at speed v leaves with e·v. Ended at zero displacement:
 * e = exp(−πζ/√(1 − ζ²)) (textbook; from memory). Ended where the force is zero, for one that pushes and
 * never pulls: the free vibration x = (v/ωd)·e^(−βt)·sin ωd·t has k·x + c·ẋ = 0 first at
 * ωd·t = π − atan2(2ζ√(1 − ζ²), 1 − 2ζ²), and nothing slows the mass after that.
 */

const speed = Math.sqrt(2 * 9.80665 * 0.02);
const event = { kind: "landing", heightM: 0.02 } as const;
const shares = [0.05, 0.2, 0.5];

/** Dashpot of share ζ for 500 kg on 28 N/mm, N·s/mm. */
function dashpot(share: number): number {
  return (2 * share * Math.sqrt(28_000 * 500)) / 1000;
}

function leavingShare(setup: ImpactSetup): number {
  const run = simulateImpact(setup, event, { mostSteps: 200_000 });
  if (!run.ok) throw new Error(run.fault.code);
  return run.value.result.leaveSpeedMmPerS / (1000 * speed);
}

describe("contact of a mass on spring and dashpot (textbook)", () => {
  it.each(shares)("ended at zero displacement, ζ %f", (share) => {
    const setup = {
      ...oneMass,
      // The stop only marks the place; ride spring and damper are the spring and dashpot.
      gapMm: 0,
      stop: linearStop(1e-9),
      damperBumpNsPerMm: dashpot(share),
      damperReboundNsPerMm: dashpot(share),
    };
    const wanted = Math.exp((-Math.PI * share) / Math.sqrt(1 - share ** 2));
    expect(leavingShare(setup) / wanted - 1).toBeCloseTo(0, 2);
  });

  it.each(shares)("ended where a stop would begin to pull, ζ %f", (share) => {
    const setup = {
      ...oneMass,
      gapMm: 0,
      wheelRateNPerMm: 1e-9,
      stop: linearStop(28),
      damping: { coefficient: () => dashpot(share) },
    };
    const root = Math.sqrt(1 - share ** 2);
    const angle = Math.PI - Math.atan2(2 * share * root, 1 - 2 * share ** 2);
    const ratio = share / root;
    const wanted = -Math.exp(-ratio * angle) * (Math.cos(angle) - ratio * Math.sin(angle));
    expect(leavingShare(setup) / wanted - 1).toBeCloseTo(0, 2);
  });
});
