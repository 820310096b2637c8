import type { Corner, Interval, Layout } from "../fitment.ts";
import { type GeometryReading, geometryReadings } from "../layoutReadings.ts";
import { type Fault, fail, type Outcome, succeed } from "../outcome.ts";
import { length, type Sentence } from "../sentence.ts";
import { checkedMean } from "../uncertainty/readingMean.ts";
import { ArmMotion } from "./armMotion.ts";
import { DamperMotion } from "./damperMotion.ts";
import type { LayoutMotion, MotionFault } from "./layoutMotion.ts";
import { AxleMotion, type AxleMovement, StrutMotion } from "./straightMotion.ts";

/**
 * How a stop closes as its wheel rises. z: wheel travel, s: stop closing, both mm, zero at the measured
 * ride height, positive in jounce and as the gap closes. On `range` s rises strictly with z.
 */
export interface Kinematics {
  /** Wheel travel that the layout can reach, mm [least, greatest]; finite numbers always. */
  readonly range: Interval;
  /** s(z), mm. Error: `unreachable`. */
  closing(z: number): Outcome<number>;
  /** z(s), mm. Error: `unreachable`. */
  wheelTravel(s: number): Outcome<number>;
  /** Lever ratio R = dz/ds, wheel per stop; above 0. Its inverse is stop per wheel. Error: `unreachable`. */
  ratio(z: number): Outcome<number>;
  /** For inner loops, z clamped to the range: fills [s, ds/dz, d²s/dz²] in mm, 1, 1/mm. No allocation. */
  evaluate(z: number, out: Float64Array): void;
}

/** An unset motion of the layout, for those who set readings draw by draw. */
export function motionOf(layout: Layout, movement: AxleMovement = "both"): LayoutMotion {
  const wheelPerOuter = layout.wheelPerOuter ?? 1;
  switch (layout.kind) {
    case "arm":
      return new ArmMotion(wheelPerOuter);
    case "damper":
      return new DamperMotion(wheelPerOuter);
    case "strut":
      return new StrutMotion();
    case "axle":
      return new AxleMotion(movement);
  }
}

/**
 * The kinematics of a layout at its mean readings; `geometry` holds a corner's own readings, which go
 * before the layout's. For a beam axle, `movement` says whether both wheels rise or one.
 *
 * Errors: a missing or impossible reading, by its name; `wheelPerOuterNotPositive`; `armTooSteep`,
 * `leverLost`, `degenerateTriangle`, `stopLeansFlat` where the readings give no motion.
 */
export function kinematicsOf(
  layout: Layout,
  geometry?: Corner["geometry"],
  movement: AxleMovement = "both",
  side?: Corner["side"],
): Outcome<Kinematics> {
  const wheelPerOuter = layout.wheelPerOuter ?? 1;
  if (!(Number.isFinite(wheelPerOuter) && wheelPerOuter > 0 && wheelPerOuter <= 1e3)) {
    return fail("wheelPerOuterNotPositive", [
      "The wheel's travel per travel of the outer joint must be a number above zero.",
    ]);
  }
  const places = geometryReadings(layout, geometry, side);
  const values = new Float64Array(places.length);
  for (const [index, { id, sort, reading, present }] of places.entries()) {
    if (reading === null && present) continue;
    const mean = checkedMean(reading ?? undefined, id, sort);
    if (!mean.ok) return mean;
    values[index] = mean.value;
  }
  const motion = motionOf(layout, movement);
  const fault = motion.set(values);
  if (fault !== null) return { ok: false, fault: motionFault(fault, layout, geometry, side) };
  return succeed(kinematicsFrom(motion));
}

function kinematicsFrom(motion: LayoutMotion): Kinematics {
  const range = motion.range();
  const [least, greatest] = range;
  const slopes = new Float64Array(3);
  const reached = (value: number, sentence: Sentence): Outcome<number> =>
    Number.isNaN(value) ? fail("unreachable", sentence) : succeed(value);
  const wheelSentence = (z: number): Sentence =>
    Number.isFinite(z)
      ? ["The suspension cannot reach a wheel travel of ", length(z), ". Check the readings."]
      : ["A wheel travel is not a usable number. Check the readings."];
  return {
    range,
    closing: (z) => reached(motion.closing(z), wheelSentence(z)),
    wheelTravel: (s) =>
      reached(
        motion.wheelTravel(s),
        Number.isFinite(s)
          ? ["The suspension cannot close the stop by ", length(s), ". Check the readings."]
          : ["A closing of the stop is not a usable number. Check the readings."],
      ),
    ratio: (z) => {
      if (Number.isNaN(motion.closing(z))) return fail("unreachable", wheelSentence(z));
      motion.evaluate(z, slopes);
      return succeed(1 / (slopes[1] as number));
    },
    evaluate: (z, out) => motion.evaluate(Math.min(Math.max(z, least), greatest), out),
  };
}

const motionSentences: Readonly<Record<MotionFault, string>> = {
  armTooSteep: "The arm stands upright, so it cannot move the wheel. Measure the arm angle again.",
  leverLost:
    "With these angles the stop's axis points along the arm, so it has no lever. Measure the lean and the angles again.",
  degenerateTriangle:
    "With these readings the pivot and the damper's two mounts do not form a triangle. Measure the damper length and the lean again.",
  stopLeansFlat: "The stop lies flat, so the wheel cannot close it. Measure its lean again.",
};

function motionFault(
  fault: MotionFault,
  layout: Layout,
  geometry: Corner["geometry"],
  side: Corner["side"] | undefined,
): Fault {
  const name = {
    armTooSteep: "armAngle",
    leverLost: "stopLean",
    degenerateTriangle: "damperLength",
    stopLeansFlat: "stopLean",
  }[fault];
  const places = geometryReadings(layout, geometry, side);
  const { id } = places.find((entry) => entry.name === name) as GeometryReading;
  return { code: fault, sentence: [motionSentences[fault]], reading: id };
}
