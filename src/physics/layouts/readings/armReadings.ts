import * as messages from "../../../words/compiled/physics/layouts/readings.ts";
import type { LinkageArm } from "../../motion/path/fourBarPath.ts";
import type { Places } from "../places.ts";
import { type GeometryDefinitions, usual } from "./geometryDefinition.ts";

/**
 * Lengths of the arm that carries the stop, or the damper with the stop on its rod. All are square to
 * the pivot line, the straight line through the centres of both pivot bolts.
 */
export const armLengths = {
  pivotToStop: {
    sort: "length",
    name: messages.distanceFromPivotTo,
    believable: [20, 1500],
    typical: 150,
    usualTolerance: usual.tape,
    of: "stopOnArm",
    use: "needed",
    madeOf: {
      by: "bolts",
      common: ["boltSpacing"],
      own: ["frontBoltToStop", "rearBoltToStop"],
    },
  },
  pivotToMount: {
    sort: "length",
    name: messages.distanceFromPivotToShock,
    believable: [20, 1500],
    typical: 270,
    usualTolerance: usual.tape,
    of: "rodOnArm",
    use: "needed",
    madeOf: {
      by: "bolts",
      common: ["boltSpacing"],
      own: ["frontBoltToMount", "rearBoltToMount"],
    },
  },
  pivotToOuter: {
    sort: "length",
    name: messages.distanceFromPivotToOuter,
    believable: [80, 2000],
    typical: 410,
    usualTolerance: usual.tape,
    of: "arm",
    use: "needed",
    madeOf: {
      by: "bolts",
      common: ["boltSpacing"],
      own: ["frontBoltToOuter", "rearBoltToOuter"],
    },
  },
  damperLength: {
    sort: "length",
    name: messages.shockLength,
    believable: [120, 1000],
    typical: 410,
    usualTolerance: usual.tape,
    of: "rodOnArm",
    use: "needed",
  },
} as const satisfies GeometryDefinitions;

/**
 * Angles below the horizontal, straight across the vehicle (straight along it for a trailing arm), outer
 * end lower positive; the lean of the stop's or damper's axis, top toward the pivot positive.
 */
export const armAngles = {
  armAngle: {
    sort: "angle",
    name: messages.armAngle,
    believable: [-35, 35],
    typical: 8,
    usualTolerance: usual.angle,
    of: "arm",
    use: "optional",
    madeOf: { by: "heights", along: "pivotToOuter", common: ["pivotHeight"], own: ["outerHeight"] },
  },
  stopLineAngle: {
    sort: "angle",
    name: messages.angleOfLineFrom,
    believable: [-45, 60],
    typical: 8,
    usualTolerance: usual.lean,
    of: "stopOnArm",
    use: "optional",
    madeOf: { by: "heights", along: "pivotToStop", common: ["pivotHeight"], own: ["stopHeight"] },
    standIn: "armAngle",
  },
  mountLineAngle: {
    sort: "angle",
    name: messages.angleOfLineFromPivot,
    believable: [-45, 60],
    typical: 8,
    usualTolerance: usual.lean,
    of: "rodOnArm",
    use: "optional",
    madeOf: { by: "heights", along: "pivotToMount", common: ["pivotHeight"], own: ["mountHeight"] },
    standIn: "armAngle",
  },
  stopLean: {
    sort: "angle",
    name: messages.leanOfStop,
    believable: [-45, 60],
    typical: 0,
    usualTolerance: usual.lean,
    of: "stop",
    use: "optional",
  },
} as const satisfies GeometryDefinitions;

/** The arm that was measured, as its motion takes it from these. */
export function measuredArm(places: Places<"pivotToOuter" | "armAngle", never>): LinkageArm {
  return { length: places.neededLength("pivotToOuter"), line: places.angle("armAngle") };
}
