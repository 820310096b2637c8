import * as messages from "../../words/compiled/physics/readings.ts";
import type { ValueDefinitions } from "./valueDefinition.ts";

/** What is typed of the vehicle as a whole. */
export const vehicleValues = {
  liftMm: {
    name: messages.lift,
    kind: "length",
    believable: [-100, 300],
    usualTolerance: 0,
    allowed: "any",
  },
} as const satisfies ValueDefinitions;

export type VehicleValueName = keyof typeof vehicleValues;

/** What is typed of a layout beside its readings. */
export const layoutValues = {
  wheelPerOuter: {
    name: messages.wheelTravelPerTravel,
    kind: "number",
    believable: [0.85, 1.3],
    usualTolerance: 0,
    allowed: "aboveZero",
  },
  wheelPerOuterTol: {
    name: messages.ofWheelTravelPer,
    kind: "number",
    believable: [0, 0.15],
    usualTolerance: 0,
    allowed: "zeroOrMore",
  },
} as const satisfies ValueDefinitions;

export type LayoutValueName = keyof typeof layoutValues;
