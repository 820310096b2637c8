import type { ValueDefinition, ValueDefinitions } from "./valueDefinition.ts";

/** What ends the travel harder than the stop does. */
export const limitKinds = ["tyre", "damper", "spring", "metal", "other"] as const;
export type LimitKind = (typeof limitKinds)[number];

/** Where a clearance is measured. */
export const limitPlaces = ["wheel", "stop", "arm"] as const;
export type LimitPlace = (typeof limitPlaces)[number];

/** What a hard limit's reading measures, by its kind. */
export const limitNames: Readonly<Record<LimitKind, string>> = {
  tyre: "clearance over the tire",
  damper: "shock travel left",
  spring: "spring travel left",
  metal: "metal to metal clearance",
  other: "other clearance",
};

/** What happens at a hard limit, as the subject and verb of a clause. */
export const limitTouches: Readonly<Record<LimitKind, string>> = {
  tyre: "the tire touches",
  damper: "the shock reaches its end",
  spring: "the spring closes up",
  metal: "metal touches metal",
  other: "something hard touches",
};

const length = {
  kind: "length",
  usualTolerance: 2,
  allowed: "aboveZero",
} as const satisfies Partial<ValueDefinition>;

/** What is read of one hard limit: its clearance, and where and how fast it closes. */
export const limitReadings = {
  reading: { ...length, name: "clearance to the hard contact", believable: [5, 400] },
  perWheel: {
    name: "closing per wheel travel",
    kind: "number",
    believable: [0.2, 1.5],
    usualTolerance: 0,
    allowed: "aboveZero",
  },
  distance: {
    ...length,
    name: "distance from the pivot line to the contact on the arm",
    believable: [20, 2000],
  },
} as const satisfies ValueDefinitions;

export type LimitPart = keyof typeof limitReadings;
