import type { GeometryReadingName } from "../fitment.ts";
import { geometryRegistry } from "../layouts/geometryRegistry.ts";
import type { MotionFault } from "../motion/layoutMotion.ts";
import { StraightMotion } from "../motion/straightMotion.ts";
import type { Fault } from "../outcome.ts";
import type { LayoutPlan } from "./layoutPlan.ts";
import type { NamedQuantity } from "./measuredPlaces.ts";

/** What is told of a motion that there is none of. */
interface Told {
  readonly code: string;
  readonly text: string;
  /** The readings to take again, the likeliest first; the first that was measured is named. */
  readonly readings: readonly GeometryReadingName[];
}

const leverLost: Told = {
  code: "leverLost",
  text: "With these angles the stop's axis points along the arm, so it has no lever. Re-measure the lean and the angles.",
  readings: ["stopLean", "jointToTopLean", "stopLineAngle", "mountLineAngle", "armAngle"],
};

const armTooSteep = (name: GeometryReadingName): Told => ({
  code: "armTooSteep",
  text: "The arm stands upright, so it cannot move the wheel. Re-measure the arm angle.",
  readings: [name],
});

const told: Readonly<Record<MotionFault, Told>> = {
  lengthLost: {
    code: "lengthLost",
    text: "A length must be above zero. Re-measure it.",
    readings: [],
  },
  boltsApart: {
    code: "boltsApart",
    text: "The distances from the two bolts do not meet in one point. Re-measure all three, straight from the bolt centers.",
    readings: [],
  },
  heightsApart: {
    code: "heightsApart",
    text: "The heights differ by more than the arm is long. Re-measure them, from the same level ground.",
    readings: [],
  },
  angleTooSteep: leverLost,
  leverLost,
  degenerateTriangle: {
    code: "degenerateTriangle",
    text: "With these readings the pivot and the shock's two mounts do not form a triangle. Re-measure the shock length and the lean.",
    readings: ["damperLength", "jointToTop"],
  },
  jointsTooClose: {
    code: "jointsTooClose",
    text: "With these readings the two arms nearly meet at their joints. Re-measure the joint height and the inset.",
    readings: ["jointHeight"],
  },
  linkageStretched: {
    code: "linkageStretched",
    text: "With these readings the other arm points along the wheel carrier. Re-measure the angles of both arms.",
    readings: ["otherArmAngle", "otherOuterHeight", "armAngle"],
  },
  wheelDoesNotRise: {
    code: "wheelDoesNotRise",
    text: "With these readings the wheel does not rise with its arm. Re-measure the other arm and the tire's offset.",
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
      text: "The stop lies flat, so the wheel cannot close it. Re-measure its lean.",
      readings: ["stopLean"],
    };
  }
  const own = geometryRegistry[wrong].madeOf?.own ?? [wrong];
  return { ...told[fault], readings: own };
}
