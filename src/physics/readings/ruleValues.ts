import type { ValueDefinition, ValueDefinitions } from "./valueDefinition.ts";

const plain = {
  kind: "number",
  usualTolerance: 0,
  allowed: "aboveZero",
} as const satisfies Partial<ValueDefinition>;

/** The numbers among what a use demands. */
export const ruleValues = {
  speedKmPerH: { ...plain, name: "road speed", kind: "roadSpeed", believable: [5, 150] },
  allowedContactsPerKm: {
    ...plain,
    name: "contacts allowed on the road",
    kind: "contactRate",
    believable: [0.01, 1000],
  },
  accelerationCapG: { ...plain, name: "greatest acceleration allowed", believable: [0.5, 20] },
  reserveMm: {
    ...plain,
    name: "reserve wanted",
    kind: "length",
    believable: [0, 50],
    allowed: "zeroOrMore",
  },
  balanceMm: {
    ...plain,
    name: "difference allowed left to right",
    kind: "length",
    believable: [1, 50],
  },
} as const satisfies ValueDefinitions;

export type RuleValueName = keyof typeof ruleValues;

export const ruleValueNames = Object.keys(ruleValues) as readonly RuleValueName[];
