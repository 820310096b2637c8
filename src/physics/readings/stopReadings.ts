import * as messages from "../../words/compiled/physics/readings.ts";
import type { ValueDefinition, ValueDefinitions } from "./valueDefinition.ts";

const plain = { usualTolerance: 0 } as const satisfies Partial<ValueDefinition>;

/** What is typed of a stop. `freeHeight` is a reading, tables have a force or damping in their cells. */
export const stopReadings = {
  freeHeight: {
    name: messages.freeHeightOfStop,
    kind: "length",
    believable: [10, 400],
    usualTolerance: 1,
    allowed: "aboveZero",
  },
  usableCompressionMm: {
    ...plain,
    name: messages.usableCompressionOfStop,
    kind: "length",
    believable: [4, 300],
    allowed: "aboveZero",
  },
  /** ± half-width of the usable compression; absent: 5 % of it. */
  usableTolMm: {
    ...plain,
    name: messages.ofUsableCompression,
    kind: "length",
    believable: [0, 20],
    allowed: "zeroOrMore",
  },
  curve: {
    ...plain,
    name: messages.forceCurveOfStop,
    kind: "force",
    believable: [0, 200_000],
    allowed: "zeroOrMore",
  },
  damping: {
    ...plain,
    name: messages.dampingOfStop,
    kind: "damping",
    believable: [0, 50],
    allowed: "zeroOrMore",
  },
  /** Loss that does not vanish at rest, a share of the static force; from tests at speed only. */
  restLoss: {
    ...plain,
    name: messages.restLossOfStop,
    kind: "number",
    believable: [0, 0.4],
    allowed: "zeroOrMore",
  },
  /** Share of the static curve that remains at rest, 1 where absent; from tests at speed only. */
  staticShare: {
    ...plain,
    name: messages.staticShareOfStop,
    kind: "number",
    believable: [0.5, 1],
    allowed: "aboveZero",
  },
} as const satisfies ValueDefinitions;

export type StopReadingName = keyof typeof stopReadings;

/** The plain numbers that a stop may be without: 0 or more each. */
export const optionalStopNumbers = [
  "usableTolMm",
  "restLoss",
  "staticShare",
] as const satisfies readonly StopReadingName[];
export type OptionalStopNumber = (typeof optionalStopNumbers)[number];

/** All that are one plain number each. */
export const stopNumberNames = ["usableCompressionMm", ...optionalStopNumbers] as const;
