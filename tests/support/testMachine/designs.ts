import { hold, type Motion, move, ramp, sequence, sine, triangle } from "./motions.ts";
import { progressive, type TrueStop } from "./trueStop.ts";

/** Invented stops whose law is known. */
export const trueStops: { readonly [name: string]: TrueStop } = {
  lossless: { force: progressive(60, 0.03) },
  soft: { force: progressive(25, 0.008) },
  dashpot: {
    force: progressive(60, 0.03),
    damping: (x, direction) => (direction > 0 ? 0.5 + 0.01 * x : 0.8 + 0.02 * x),
  },
  restLoss: { force: progressive(60, 0.03), restLoss: 0.1 },
  smallRestLoss: { force: progressive(60, 0.03), restLoss: 0.03 },
  oneBranch: { force: progressive(60, 0.03), branches: [{ tauS: 0.03, share: 0.5 }] },
  oddBranch: { force: progressive(60, 0.03), branches: [{ tauS: 0.017, share: 0.5 }] },
  twoBranches: {
    force: progressive(60, 0.03),
    branches: [
      { tauS: 0.005, share: 0.6 },
      { tauS: 0.2, share: 0.4 },
    ],
  },
  manyBranches: {
    force: progressive(60, 0.03),
    branches: [0.0005, 0.002, 0.008, 0.03, 0.12, 0.5, 2, 8].map((tauS) => ({ tauS, share: 0.12 })),
  },
  everything: {
    force: progressive(60, 0.03),
    restLoss: 0.05,
    branches: [{ tauS: 0.02, share: 0.4 }],
    damping: () => 0.3,
  },
};

/** Motions of test machines: a slow ramp, then cycles from 0.05 to 0.5 m/s. */
export const designs: { readonly [name: string]: () => Motion } = {
  sines: () =>
    sequence([...ramp(0, 45, 2), ...[50, 150, 300, 500].map((speed) => sine(0, 40, speed, 5))]),
  triangles: () =>
    sequence([...ramp(0, 45, 2), ...[50, 150, 300, 500].map((speed) => triangle(0, 40, speed, 5))]),
  aboutAMean: () =>
    sequence([...ramp(0, 45, 3), ...[50, 200, 500].map((speed) => sine(10, 36, speed, 6))]),
  twoRampsAndHold: () =>
    sequence([
      ...ramp(0, 44, 4),
      move(0, 44, 4),
      hold(44, 3),
      move(44, 0, 4),
      ...[60, 250, 500].map((speed) => sine(0, 38, speed, 4)),
    ]),
  approach: () =>
    sequence([...ramp(-8, 45, 2), ...[50, 160, 500].map((speed) => triangle(-5, 40, speed, 4))]),
};

/** Designs that lack something. */
export const lackingDesigns: { readonly [name: string]: () => Motion } = {
  rampsOnly: () => sequence([...ramp(0, 44, 4), ...ramp(0, 44, 4)]),
  cyclesOnly: () => sequence([sine(10, 36, 200, 5), sine(10, 36, 500, 5)], 0),
  shallowRamp: () =>
    sequence([...ramp(0, 30, 4), ...[60, 250, 500].map((speed) => sine(0, 40, speed, 4))]),
  quickRamp: () =>
    sequence([...ramp(0, 44, 10), ...[100, 250, 500].map((speed) => triangle(0, 40, speed, 4))]),
};

/** Mass, kg, that a stop of `trueStops` takes at 2 m/s within the depths of the designs. */
export const hitMassKg = 40;
