import * as messages from "../../words/compiled/physics/readings.ts";
import type { ValueDefinition, ValueDefinitions } from "./valueDefinition.ts";

const plain = {
  kind: "number",
  usualTolerance: 0,
  allowed: "aboveZero",
} as const satisfies Partial<ValueDefinition>;

/** The numbers among what a use demands. */
export const ruleValues = {
  speedKmPerH: { ...plain, name: messages.roadSpeed, kind: "roadSpeed", believable: [5, 150] },
  allowedContactsPerKm: {
    ...plain,
    name: messages.contactsAllowedOnRoad,
    kind: "contactRate",
    believable: [0.01, 1000],
  },
  accelerationCapG: { ...plain, name: messages.greatestAccelerationAllowed, believable: [0.5, 20] },
  reserveMm: {
    ...plain,
    name: messages.reserveWanted,
    kind: "length",
    believable: [0, 50],
    allowed: "zeroOrMore",
  },
  balanceMm: {
    ...plain,
    name: messages.differenceAllowedLeftTo,
    kind: "length",
    believable: [1, 50],
  },
} as const satisfies ValueDefinitions;

export type RuleValueName = keyof typeof ruleValues;

export const ruleValueNames = Object.keys(ruleValues) as readonly RuleValueName[];
