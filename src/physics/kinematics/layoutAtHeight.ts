import type { Layout, Reading } from "../fitment.ts";
import { geometryReadings } from "../layoutReadings.ts";
import { fail, type Outcome, succeed } from "../outcome.ts";
import { length } from "../sentence.ts";
import { meanOf } from "../uncertainty/readingMean.ts";
import { kinematicsOf } from "./kinematics.ts";

/** A layout standing at another ride height, and what that did to the stop. */
export interface LayoutAtHeight {
  readonly layout: Layout;
  /** By how much the gap opened along the stop's axis, mm; negative = closed. */
  readonly openedMm: number;
  /** … and how much that changes per mm of ride height. */
  readonly openedPerMm: number;
}

const degreesPerRadian = 180 / Math.PI;

/**
 * The same suspension with its body `raisedMm` higher over the wheel (its springs longer or stiffer, its
 * joints as they were): wheel travel z = −raised. An arm's lines turn down by α with
 * sin(θ0 − α) = sin θ0 + raised/(κ·b); a damper's length and lean follow from its upper mount, which
 * stays, and its lower one, which turns with the arm (model section 1). Strut and axle keep theirs. The
 * ± of the raised height (mm) joins that of the angles and of the damper's length, to first order.
 *
 * Raised by longer subframe spacers or a body lift the arm does not turn: measure the angle then.
 * Error "heightOutOfReach", and whatever the kinematics name.
 */
export function layoutAtHeight(
  layout: Layout,
  raisedMm: number,
  toleranceMm: number,
): Outcome<LayoutAtHeight> {
  const kinematics = kinematicsOf(layout);
  if (!kinematics.ok) return kinematics;
  const closed = kinematics.value.closing(-raisedMm);
  if (!closed.ok) {
    return fail("heightOutOfReach", [
      "The ride height is ",
      length(Math.abs(raisedMm)),
      ` ${raisedMm > 0 ? "above" : "below"} the usual one, which this suspension cannot reach by its springs. Measure the ride height again, from the wheel's centre to the arch.`,
    ]);
  }
  const motion = new Float64Array(3);
  kinematics.value.evaluate(-raisedMm, motion);
  const openedPerMm = motion[1] as number;
  return succeed({
    layout: turned(layout, raisedMm, toleranceMm, openedPerMm),
    openedMm: -closed.value,
    openedPerMm,
  });
}

function turned(
  layout: Layout,
  raisedMm: number,
  toleranceMm: number,
  openedPerMm: number,
): Layout {
  if (layout.kind === "strut" || layout.kind === "axle") return layout;
  const means = geometryReadings(layout).map(({ reading }) =>
    reading === null ? 0 : meanOf(reading),
  );
  const [first = 0, pivotToOuter = 0, armAngle = 0, lineAngle = 0, lean = 0, damperLength = 0] =
    means;
  const radius = (layout.wheelPerOuter ?? 1) * pivotToOuter;
  const before = armAngle / degreesPerRadian;
  const after = Math.asin(Math.sin(before) + raisedMm / radius);
  const turn = degreesPerRadian * (after - before);
  const turnTolerance = (degreesPerRadian * toleranceMm) / (radius * Math.cos(after));
  const shifted = (reading: Reading | undefined): Reading => ({
    values: (reading?.values ?? [0]).map((value) => value + turn),
    tol: Math.hypot(reading?.tol ?? 0, turnTolerance),
  });
  if (layout.kind === "arm") {
    const { stopLineAngle } = layout.readings;
    return {
      ...layout,
      readings: {
        ...layout.readings,
        armAngle: shifted(layout.readings.armAngle),
        ...(stopLineAngle === undefined ? {} : { stopLineAngle: shifted(stopLineAngle) }),
      },
    };
  }
  const { mountLineAngle, stopLean } = layout.readings;
  const lineBefore = lineAngle / degreesPerRadian;
  const lineAfter = lineBefore + (after - before);
  const leanBefore = lean / degreesPerRadian;
  const across =
    first * (Math.cos(lineBefore) - Math.cos(lineAfter)) - damperLength * Math.sin(leanBefore);
  const up =
    first * (Math.sin(lineAfter) - Math.sin(lineBefore)) + damperLength * Math.cos(leanBefore);
  const longer = Math.hypot(across, up) - damperLength;
  const leans = degreesPerRadian * (Math.atan2(-across, up) - leanBefore);
  const lengthReading = layout.readings.damperLength;
  return {
    ...layout,
    readings: {
      ...layout.readings,
      armAngle: shifted(layout.readings.armAngle),
      ...(mountLineAngle === undefined ? {} : { mountLineAngle: shifted(mountLineAngle) }),
      stopLean: {
        values: (stopLean?.values ?? [0]).map((value) => value + leans),
        tol: stopLean?.tol ?? 0,
      },
      ...(lengthReading === undefined
        ? {}
        : {
            damperLength: {
              values: lengthReading.values.map((value) => value + longer),
              tol: Math.hypot(lengthReading.tol, openedPerMm * toleranceMm),
            },
          }),
    },
  };
}
