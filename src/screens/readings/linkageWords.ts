import * as messages from "../../words/compiled/screens/readings.ts";
import { lowerPositive } from "../layouts/lowerPositive.ts";
import type { ReadingWords, WordedLayout } from "../layouts/wordedReading.ts";

/** The arm that was not measured first. */
function other({ armRole }: WordedLayout): string {
  return armRole === "upper" ? "lower" : "upper";
}

export const linkageWords = {
  otherArmAngle: (layout: WordedLayout): ReadingWords => ({
    name: messages.angleOfArm({ other: other(layout) }),
    how: messages.straightAcrossVehicleBetween({ other: other(layout) }),
    wrong: messages.notAlongArmsEdge,
    a: messages.pivotLine2({ other: other(layout) }),
    b: messages.joint({ other: other(layout) }),
    note: lowerPositive,
  }),
  otherArmLength: (layout: WordedLayout): ReadingWords => ({
    name: messages.lengthOfArm({ other: other(layout) }),
    how: messages.squareFromArmsPivotLine({ other: other(layout) }),
    wrong: messages.takenFromOneBoltIt,
    a: messages.pivotLine2({ other: other(layout) }),
    b: messages.jointCenter({ other: other(layout) }),
    skipped: messages.skipItAndArmIs,
  }),
  jointHeight: (): ReadingWords => ({
    name: messages.upperJointAboveLower,
    how: messages.straightUpFromCenter,
    wrong: messages.uprightNotAlongKnuckle,
    a: messages.lowerJointCenter,
    b: messages.levelOfUpper,
  }),
  jointInset: (): ReadingWords => ({
    name: messages.upperJointInboardOf,
    how: messages.levelAcrossVehicleHow,
    wrong: messages.notAlongArmHang,
    a: messages.upperJointCenter,
    b: messages.aboveLowerJoint,
    note: messages.inboardTowardFrameIs,
    skipped: messages.skipItAnd0,
  }),
  tyreOffset: (): ReadingWords => ({
    name: messages.lowerJointToMiddle,
    how: messages.levelAcrossVehicleFrom,
    wrong: messages.toMiddleOfTread,
    a: messages.lowerJointCenter,
    b: messages.middleOfTread,
  }),
  wheelCentreAbove: (): ReadingWords => ({
    name: messages.wheelCenterAboveJoint,
    how: messages.straightUpFromCenterOf,
    wrong: messages.bothHeightsFromSame,
    a: messages.lowerJointCenter,
    b: messages.wheelCentersHeight,
    skipped: messages.skipItAnd0,
  }),
} as const;
