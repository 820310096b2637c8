import type { DesignEvent } from "../../../src/physics/fitment.ts";
import { type ImpactSetup, settled } from "../../../src/physics/impact/impactSetup.ts";
import { type StopAtSpeed, staticOnly } from "../../../src/physics/stop/stopAtSpeed.ts";
import { demoCorners, loadedSetup, unwrapped } from "../demoFitments.ts";
import type { HardCase } from "./hardCases.ts";

const setups = new Map(
  demoCorners.map(({ name, fitment, corner }) => [name, loadedSetup(fitment, corner)]),
);

/** A demo corner with another stop's losses, made taller by a spacer, at rest anew. */
function setupWith(name: string, atSpeed: StopAtSpeed, extraHeightMm = 0): ImpactSetup {
  const setup = setups.get(name);
  if (setup === undefined) throw new Error(`no demo corner ${name}`);
  return unwrapped(settled({ ...setup, atSpeed }, { extraHeightMm }));
}

/** As foams are: some rest loss, fading in some ten and some hundred milliseconds. */
const foam: StopAtSpeed = {
  dashpot: null,
  restLoss: 0.04,
  staticShare: 0.96,
  branches: [
    { tauS: 0.01, share: 0.25 },
    { tauS: 0.1, share: 0.15 },
  ],
};

const everyPart: StopAtSpeed = {
  dashpot: { coefficient: (x, velocity) => (velocity > 0 ? 0.1 : 0.3) + 0.005 * Math.max(0, x) },
  restLoss: 0.12,
  staticShare: 0.8,
  branches: [
    { tauS: 0.001, share: 0.6 },
    { tauS: 0.01, share: 0.4 },
    { tauS: 0.1, share: 0.3 },
    { tauS: 1, share: 0.2 },
  ],
};

const slowAndStiff: StopAtSpeed = { ...staticOnly, branches: [{ tauS: 0.05, share: 2 }] };

const landing = (heightM: number): DesignEvent => ({ kind: "landing", heightM });
const bump: DesignEvent = { kind: "obstacle", heightM: 0.1, lengthM: 2, speedKmPerH: 40 };
const hump: DesignEvent = { kind: "hump", heightM: 0.1, lengthM: 3.7, speedKmPerH: 40 };

/** Stops that lose energy every way, met once, met again before they have recovered, pressed at rest. */
export const lossyCases: readonly HardCase[] = [
  { name: "foam over a bump", setup: setupWith("arm-fits left", foam), event: bump },
  { name: "foam over a hump", setup: setupWith("arm-fits left", foam), event: hump },
  {
    name: "foam in a landing",
    setup: setupWith("strut-too-stiff left", foam),
    event: landing(0.1),
  },
  {
    name: "every loss, in a landing",
    setup: setupWith("arm-fits right", everyPart),
    event: landing(0.15),
  },
  {
    name: "every loss, pressed at rest, over a bump",
    setup: setupWith("arm-needs-taller left", everyPart, 60),
    event: bump,
  },
  {
    name: "foam pressed at rest, over a hump",
    setup: setupWith("axle-towing-early left", foam, 30),
    event: hump,
  },
  {
    name: "a slow branch that is left behind and met again, over a bump",
    setup: setupWith("strut-too-stiff right", slowAndStiff, 25),
    event: { kind: "obstacle", heightM: 0.12, lengthM: 1.2, speedKmPerH: 50 },
  },
  {
    name: "rest loss alone, in a landing",
    setup: setupWith("arm-fits left", { ...staticOnly, restLoss: 0.3 }),
    event: landing(0.1),
  },
];
