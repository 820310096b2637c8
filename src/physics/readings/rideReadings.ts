import type { ValueDefinition, ValueDefinitions } from "./valueDefinition.ts";

const plain = {
  usualTolerance: 0,
  allowed: "aboveZero",
} as const satisfies Partial<ValueDefinition>;

/** Masses, rates and damping at the wheel. Any of them may be unknown or an estimate with a ±. */
export const rideReadings = {
  unsprungMassKg: { ...plain, name: "unsprung mass", kind: "mass", believable: [15, 400] },
  wheelRateNPerMm: { ...plain, name: "wheel rate", kind: "rate", believable: [8, 250] },
  tyreRateNPerMm: { ...plain, name: "tire rate", kind: "rate", believable: [100, 1500] },
  damperBumpNsPerMm: {
    ...plain,
    name: "damping in bump",
    kind: "damping",
    believable: [0.2, 15],
    allowed: "zeroOrMore",
  },
  damperReboundNsPerMm: {
    ...plain,
    name: "damping in rebound",
    kind: "damping",
    believable: [0.2, 25],
    allowed: "zeroOrMore",
  },
  payloadPerCornerKg: {
    ...plain,
    name: "payload",
    kind: "mass",
    believable: [0, 2000],
    allowed: "zeroOrMore",
  },
} as const satisfies ValueDefinitions;

export type RideQuantity = keyof typeof rideReadings;

export const rideQuantities = Object.keys(rideReadings) as readonly RideQuantity[];
