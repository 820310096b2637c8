import * as messages from "../../../words/compiled/physics/layouts/readings.ts";
import { type GeometryDefinitions, usual } from "./geometryDefinition.ts";

/**
 * What tells how the wheel rises with the outer joint: the other arm of two, and where joints and tire
 * stand to each other, in front view. Absent is not measured: none of them has a default but those
 * that are usually near zero.
 */
export const linkageReadings = {
  otherArmAngle: {
    sort: "angle",
    name: messages.angleOfOtherArm,
    believable: [-35, 35],
    typical: 2,
    usualTolerance: usual.angle,
    of: "otherArm",
    use: "optional",
    madeOf: {
      by: "heights",
      along: "otherArmLength",
      common: [],
      own: ["otherPivotHeight", "otherOuterHeight"],
    },
    noDefault: true,
  },
  otherArmLength: {
    sort: "length",
    name: messages.lengthOfOtherArm,
    believable: [80, 1000],
    typical: 270,
    usualTolerance: usual.tape,
    of: "otherArm",
    use: "optional",
    noDefault: true,
  },
  jointHeight: {
    sort: "length",
    name: messages.heightOfUpperJoint,
    believable: [120, 600],
    typical: 300,
    usualTolerance: usual.height,
    of: "otherArm",
    use: "optional",
    noDefault: true,
  },
  jointInset: {
    sort: "offset",
    name: messages.upperJointsDistanceInboard,
    believable: [-50, 200],
    typical: 35,
    usualTolerance: usual.sighted,
    of: "otherArm",
    use: "optional",
  },
  tyreOffset: {
    sort: "offset",
    name: messages.distanceFromLowerJoint,
    believable: [-50, 300],
    typical: 110,
    usualTolerance: usual.sighted,
    of: "wheelByJoint",
    use: "optional",
    noDefault: true,
  },
  wheelCentreAbove: {
    sort: "offset",
    name: messages.heightOfWheelsCenter,
    believable: [-100, 400],
    typical: 85,
    usualTolerance: usual.sighted,
    of: "wheelByJoint",
    use: "optional",
  },
} as const satisfies GeometryDefinitions;
