import * as messages from "../../words/compiled/screens/readings.ts";
import { otherArm } from "../layouts/linkageFromFront.ts";
import { lowerPositive } from "../layouts/lowerPositive.ts";
import type { ToldReading } from "../layouts/toldReading.ts";
import type { WordedLayout } from "../layouts/wordedReading.ts";
import { belowHorizontal, distance } from "../shapes/geometry.ts";
import { down, lengthBetween, lineAngle, outboard, up } from "../shapes/measurement.ts";

/** The arm that was not measured first. */
function other({ armRole }: WordedLayout): string {
  return armRole === "upper" ? "lower" : "upper";
}

export const toldLinkage = {
  otherArmAngle: {
    words: (layout) => ({
      name: messages.angleOfArm({ other: other(layout) }),
      how: messages.straightAcrossVehicleBetween({ other: other(layout) }),
      wrong: messages.notAlongArmsEdge,
      a: messages.pivotLine2({ other: other(layout) }),
      b: messages.joint({ other: other(layout) }),
      note: lowerPositive,
    }),
    view: {
      from: "front",
      measure: (linkage, { otherArmAngle }) => {
        const { pivot, joint } = otherArm(linkage);
        return lineAngle(pivot, otherArmAngle, distance(pivot, joint));
      },
    },
    tilt: "line",
  },
  otherArmLength: {
    words: (layout) => ({
      name: messages.lengthOfArm({ other: other(layout) }),
      how: messages.squareFromArmsPivotLine({ other: other(layout) }),
      wrong: messages.takenFromOneBoltIt,
      a: messages.pivotLine2({ other: other(layout) }),
      b: messages.jointCenter({ other: other(layout) }),
      skipped: messages.skipItAndArmIs,
    }),
    view: {
      from: "front",
      measure: (linkage, { otherArmAngle }) => {
        const { pivot, joint } = otherArm(linkage);
        return { ...lengthBetween(pivot, joint, belowHorizontal(otherArmAngle), up), offset: 42 };
      },
    },
  },
  jointHeight: {
    words: () => ({
      name: messages.upperJointAboveLower,
      how: messages.straightUpFromCenter,
      wrong: messages.uprightNotAlongKnuckle,
      a: messages.lowerJointCenter,
      b: messages.levelOfUpper,
    }),
    view: {
      from: "front",
      measure: ({ lowerJoint }, { jointHeight }) => {
        const level = { x: lowerJoint.x, y: lowerJoint.y + jointHeight };
        return { ...lengthBetween(lowerJoint, level, up, outboard), offset: 34 };
      },
    },
  },
  jointInset: {
    words: () => ({
      name: messages.upperJointInboardOf,
      how: messages.levelAcrossVehicleHow,
      wrong: messages.notAlongArmHang,
      a: messages.upperJointCenter,
      b: messages.aboveLowerJoint,
      note: messages.inboardTowardFrameIs,
      skipped: messages.skipItAnd0,
    }),
    view: {
      from: "front",
      measure: ({ lowerJoint, upper }) => {
        const joint = upper?.joint ?? lowerJoint;
        return {
          ...lengthBetween(joint, { x: lowerJoint.x, y: joint.y }, outboard, up),
          offset: 44,
        };
      },
    },
  },
  tyreOffset: {
    words: () => ({
      name: messages.lowerJointToMiddle,
      how: messages.levelAcrossVehicleFrom,
      wrong: messages.toMiddleOfTread,
      a: messages.lowerJointCenter,
      b: messages.middleOfTread,
    }),
    view: {
      from: "front",
      measure: ({ lowerJoint, wheelCentre }) => {
        const middle = { x: wheelCentre.x, y: lowerJoint.y };
        return { ...lengthBetween(lowerJoint, middle, outboard, down), offset: 44 };
      },
    },
  },
  wheelCentreAbove: {
    words: () => ({
      name: messages.wheelCenterAboveJoint,
      how: messages.straightUpFromCenterOf,
      wrong: messages.bothHeightsFromSame,
      a: messages.lowerJointCenter,
      b: messages.wheelCentersHeight,
      skipped: messages.skipItAnd0,
    }),
    view: {
      from: "front",
      measure: ({ lowerJoint, wheelCentre }) => {
        const level = { x: lowerJoint.x, y: wheelCentre.y };
        return { ...lengthBetween(lowerJoint, level, up, outboard), offset: 44 };
      },
    },
  },
} as const satisfies { readonly [name: string]: ToldReading };
