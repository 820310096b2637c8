import * as messages from "../../words/compiled/physics/readings.ts";
import type { ValueDefinition, ValueDefinitions } from "./valueDefinition.ts";

const plain = {
  usualTolerance: 0,
  allowed: "aboveZero",
} as const satisfies Partial<ValueDefinition>;

/** Masses, rates and damping at the wheel. Any of them may be unknown or an estimate with a ±. */
export const rideReadings = {
  unsprungMassKg: { ...plain, name: messages.unsprungMass, kind: "mass", believable: [15, 400] },
  wheelRateNPerMm: { ...plain, name: messages.wheelRate, kind: "rate", believable: [8, 250] },
  tyreRateNPerMm: { ...plain, name: messages.tireRate, kind: "rate", believable: [100, 1500] },
  damperBumpNsPerMm: {
    ...plain,
    name: messages.dampingInBump,
    kind: "damping",
    believable: [0.2, 15],
    allowed: "zeroOrMore",
  },
  damperReboundNsPerMm: {
    ...plain,
    name: messages.dampingInRebound,
    kind: "damping",
    believable: [0.2, 25],
    allowed: "zeroOrMore",
  },
  payloadPerCornerKg: {
    ...plain,
    name: messages.payload,
    kind: "mass",
    believable: [0, 2000],
    allowed: "zeroOrMore",
  },
} as const satisfies ValueDefinitions;

export type RideQuantity = keyof typeof rideReadings;

export const rideQuantities = Object.keys(rideReadings) as readonly RideQuantity[];
