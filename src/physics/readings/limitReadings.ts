import * as messages from "../../words/compiled/physics/readings.ts";
import type { Message } from "../sentence.ts";
import type { ValueDefinition, ValueDefinitions } from "./valueDefinition.ts";

/** What ends the travel harder than the stop does. */
export const limitKinds = ["tyre", "damper", "spring", "metal", "other"] as const;
export type LimitKind = (typeof limitKinds)[number];

/** Where a clearance is measured. */
export const limitPlaces = ["wheel", "stop", "arm"] as const;
export type LimitPlace = (typeof limitPlaces)[number];

/** What a hard limit's reading measures, by its kind. */
export const limitNames: Readonly<Record<LimitKind, Message>> = {
  tyre: messages.clearanceOverTire,
  damper: messages.shockTravelLeft,
  spring: messages.springTravelLeft,
  metal: messages.metalToMetalClearance,
  other: messages.otherClearance,
};

/** What happens at a hard limit, as the subject and verb of a clause. */
export const limitTouches: Readonly<Record<LimitKind, Message>> = {
  tyre: messages.tireTouches,
  damper: messages.shockReachesItsEnd,
  spring: messages.springClosesUp,
  metal: messages.metalTouchesMetal,
  other: messages.somethingHardTouches,
};

const length = {
  kind: "length",
  usualTolerance: 2,
  allowed: "aboveZero",
} as const satisfies Partial<ValueDefinition>;

/** What is read of one hard limit: its clearance, and where and how fast it closes. */
export const limitReadings = {
  reading: { ...length, name: messages.clearanceToHardContact, believable: [5, 400] },
  perWheel: {
    name: messages.closingPerWheelTravel,
    kind: "number",
    believable: [0.2, 1.5],
    usualTolerance: 0,
    allowed: "aboveZero",
  },
  distance: {
    ...length,
    name: messages.distanceFromPivotLine,
    believable: [20, 2000],
  },
} as const satisfies ValueDefinitions;

export type LimitPart = keyof typeof limitReadings;
