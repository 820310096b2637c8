import * as messages from "../../words/compiled/physics/readings.ts";
import type { ValueDefinition, ValueDefinitions } from "./valueDefinition.ts";

const reading = {
  kind: "length",
  usualTolerance: 2,
  allowed: "aboveZero",
} as const satisfies Partial<ValueDefinition>;

/**
 * What is read at one side of the axle, in the order in which it is. Half-widths offered at first: what a
 * rule or a tape in plain view, or wheel scales, give by common practice.
 */
export const cornerReadings = {
  gap: {
    ...reading,
    name: messages.gap,
    believable: [1, 250],
    ordinaryZero: true,
    usualTolerance: 1,
    allowed: "zeroOrMore",
  },
  pressedHeight: {
    ...reading,
    name: messages.heightOfPressedStop,
    believable: [5, 400],
    usualTolerance: 1,
  },
  seatToPad: {
    ...reading,
    name: messages.distanceFromSeatTo,
    believable: [5, 600],
    usualTolerance: 1,
  },
  rideHeight: { ...reading, name: messages.rideHeight, believable: [150, 1200] },
  cornerMassKg: {
    ...reading,
    name: messages.cornerWeight,
    kind: "mass",
    believable: [100, 3000],
    usualTolerance: 10,
  },
} as const satisfies ValueDefinitions;

export type CornerReadingName = keyof typeof cornerReadings;

export const cornerReadingNames = Object.keys(cornerReadings) as readonly CornerReadingName[];

/** The ways to know how the stop stands at ride: exactly one of them is read at each side. */
export const standingNames = ["gap", "pressedHeight", "seatToPad"] as const;

/**
 * Ride height after the vehicle was lifted and let down, and after it was pushed down and let up: half of
 * what lies between them is friction (`settleMm`).
 */
export const settleReadings = {
  liftedHeight: { ...reading, name: messages.rideHeightAfterLifting, believable: [150, 1200] },
  pushedHeight: { ...reading, name: messages.rideHeightAfterPushing, believable: [150, 1200] },
} as const satisfies ValueDefinitions;

export type SettleReadingName = keyof typeof settleReadings;

/** What friction leaves between ride heights, halved: derived, not read. */
export const settle = {
  ...reading,
  name: messages.settlingByFriction,
  believable: [0, 25],
  usualTolerance: 0,
  allowed: "zeroOrMore",
} as const satisfies ValueDefinition;
