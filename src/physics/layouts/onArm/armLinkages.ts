import * as messages from "../../../words/compiled/physics/layouts/onArm.ts";
import type { LinkageDefinition } from "../layoutDefinition.ts";
import type { ReadingOf } from "../readings/sharedReadings.ts";

/** What a layout has whose stop is moved by an arm. */
export const armParts = ["stop", "arm", "otherArm", "wheelByJoint"] as const;

export type ArmReading = ReadingOf<(typeof armParts)[number]>;

const aboutFixedAxis = messages.geometryOfArmAbout;

/**
 * How the wheel may follow an arm. What a planar model itself may be off was found on published geometries
 * solved in three dimensions; provisional.
 */
export const armLinkages = {
  carriesWheel: { doubt: 0.02, source: aboutFixedAxis },
  fourBar: {
    doubt: 0.02,
    source: messages.planarFourBarLinkage,
  },
  instantCentre: {
    doubt: 0.02,
    source: messages.wheelCarrierTurnsAbout,
  },
  typed: { doubt: 0.02, source: aboutFixedAxis },
  prior: { doubt: 0.02, source: aboutFixedAxis },
} as const satisfies Readonly<Record<string, LinkageDefinition>>;

export type ArmLinkage = keyof typeof armLinkages;

/** The other arm's readings, and where joints and tire stand. */
export const otherArmReadings = {
  parts: ["otherArm", "wheelByJoint"],
  first: "otherArmAngle",
  ask: messages.measureOtherArmAs,
  from: "prior",
  to: "fourBar",
  ofTwoArms: true,
} as const;
