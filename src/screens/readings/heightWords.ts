import * as messages from "../../words/compiled/screens/readings.ts";
import type { ReadingWords, WordedLayout } from "../layouts/wordedReading.ts";
import { outerEnd, stopPoint } from "./places.ts";

const byHeights = messages.phoneWorksOutAngle;

function height(of: (layout: WordedLayout) => string, more: Partial<ReadingWords> = {}) {
  return (layout: WordedLayout): ReadingWords => ({
    name: messages.heightOf({ of: of(layout) }),
    how: messages.fromLevelGroundStraight({ of: of(layout) }),
    wrong: messages.groundMustBeLevel,
    a: messages.levelGround,
    b: of(layout),
    note: byHeights,
    ...more,
  });
}

const pivotLine = {
  how: messages.fromLevelGroundStraightUp,
} as const;

export const heightWords = {
  pivotHeight: height(() => messages.pivotLine, pivotLine),
  outerHeight: height(outerEnd),
  stopHeight: (layout: WordedLayout): ReadingWords => ({
    ...height(() => messages.stopsLandingPoint)(layout),
    how: messages.fromLevelGroundStraightUpTo({ stopOn: layout.stopOn }),
    b: stopPoint(layout),
  }),
  mountHeight: height(() => messages.lowerShockBolt),
  otherPivotHeight: height(() => messages.otherPivotLine, pivotLine),
  otherOuterHeight: height(() => messages.otherArmsJoint),
} as const;
