import * as messages from "../../words/compiled/physics/readings.ts";
import type { ValueDefinition, ValueDefinitions } from "./valueDefinition.ts";

/** What may be met while the wheel is moved up by hand; `block` is a rigid block in the stop's place. */
export const contactParts = [
  "stop",
  "block",
  "tyre",
  "damper",
  "spring",
  "metal",
  "hose",
  "other",
] as const;
export type ContactPart = (typeof contactParts)[number];

const length = {
  kind: "length",
  usualTolerance: 2,
  allowed: "aboveZero",
} as const satisfies Partial<ValueDefinition>;

/** What is read of a check of the whole travel: travel and height apart, and how high the block is. */
export const fullTravelReadings = {
  wheelTravel: {
    ...length,
    name: messages.wheelTravel,
    believable: [0, 400],
    allowed: "zeroOrMore",
  },
  heightToArch: { ...length, name: messages.heightFromHubTo, believable: [100, 1200] },
  blockHeight: {
    ...length,
    name: messages.heightOfBlock,
    believable: [5, 300],
    usualTolerance: 0.5,
  },
} as const satisfies ValueDefinitions;

export type FullTravelReadingName = keyof typeof fullTravelReadings;
