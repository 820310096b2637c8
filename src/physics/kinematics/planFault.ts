import * as messages from "../../words/compiled/physics/kinematics.ts";
import type { GeometryReadingName } from "../fitment.ts";
import { geometryRegistry } from "../layouts/geometryRegistry.ts";
import type { MotionFault } from "../motion/layoutMotion.ts";
import { StraightMotion } from "../motion/straightMotion.ts";
import type { Fault } from "../outcome.ts";
import type { Message } from "../sentence.ts";
import type { LayoutPlan } from "./layoutPlan.ts";
import type { NamedQuantity } from "./measuredPlaces.ts";

/** What is told of a motion that there is none of. */
interface Told {
  readonly code: string;
  readonly text: Message;
  /** The readings to take again, the likeliest first; the first that was measured is named. */
  readonly readings: readonly GeometryReadingName[];
}

const leverLost: Told = {
  code: "leverLost",
  text: messages.withTheseAnglesStops,
  readings: ["stopLean", "jointToTopLean", "stopLineAngle", "mountLineAngle", "armAngle"],
};

const armTooSteep = (name: GeometryReadingName): Told => ({
  code: "armTooSteep",
  text: messages.armStandsUprightSo,
  readings: [name],
});

const told: Readonly<Record<MotionFault, Told>> = {
  lengthLost: {
    code: "lengthLost",
    text: messages.lengthMustBeAbove,
    readings: [],
  },
  boltsApart: {
    code: "boltsApart",
    text: messages.distancesFromTwoBolts,
    readings: [],
  },
  heightsApart: {
    code: "heightsApart",
    text: messages.heightsDifferByMore,
    readings: [],
  },
  angleTooSteep: leverLost,
  leverLost,
  degenerateTriangle: {
    code: "degenerateTriangle",
    text: messages.withTheseReadingsPivot,
    readings: ["damperLength", "jointToTop"],
  },
  jointsTooClose: {
    code: "jointsTooClose",
    text: messages.withTheseReadingsTwo,
    readings: ["jointHeight"],
  },
  linkageStretched: {
    code: "linkageStretched",
    text: messages.withTheseReadingsOther,
    readings: ["otherArmAngle", "otherOuterHeight", "armAngle"],
  },
  wheelDoesNotRise: {
    code: "wheelDoesNotRise",
    text: messages.withTheseReadingsWheel,
    readings: ["tyreOffset", "otherArmAngle"],
  },
};

/** Why the readings of a plan give no motion at their means, with the reading to take again; null where they do. */
export function planFault(plan: LayoutPlan): Fault | null {
  const means = Float64Array.from(plan.places, ({ drawn }) => drawn.mean);
  const fault = plan.motion.set(means);
  if (fault === null) return null;
  const wrong = plan.quantities.find(({ quantity }) => quantity.set(means, 0) === fault)?.name;
  const { code, text, readings } = toldOf(fault, plan, wrong);
  const named = readings
    .map((name) => plan.places.find((place) => place.name === name))
    .find((place) => place !== undefined);
  const reading = named?.id ?? readings[0];
  return { code, sentence: [text], ...(reading !== undefined && { reading }) };
}

function toldOf(
  fault: MotionFault,
  { motion }: LayoutPlan,
  wrong: NamedQuantity["name"] | undefined,
): Told {
  if (wrong === undefined || wrong === "gap") return told[fault];
  if (fault === "angleTooSteep") {
    if (wrong.endsWith("ArmAngle") || wrong === "armAngle") return armTooSteep(wrong);
    if (!(motion instanceof StraightMotion)) return leverLost;
    return {
      code: "stopLeansFlat",
      text: messages.stopLiesFlatSo,
      readings: ["stopLean"],
    };
  }
  const own = geometryRegistry[wrong].madeOf?.own ?? [wrong];
  return { ...told[fault], readings: own };
}
