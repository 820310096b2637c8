import * as messages from "../../words/compiled/screens/readings.ts";
import { layoutsOnScreen } from "../layouts/layoutsOnScreen.ts";
import { lowerPositive } from "../layouts/lowerPositive.ts";
import type { ReadingWords, WordedLayout } from "../layouts/wordedReading.ts";
import { angleView, outerEnd, stopPoint } from "./places.ts";

const straightEdge = messages.layStraightEdgeAlong;
const notFromABolt = messages.takenFromOneBolt;

export const armWords = {
  pivotToStop: (layout: WordedLayout): ReadingWords => ({
    name: messages.pivotLineToStop,
    how: messages.tapeSquareFromIt({ straightEdge, stopOn: layout.stopOn }),
    wrong: notFromABolt,
    a: messages.pivotLine,
    b: stopPoint(layout),
    ...(layout.stopOn === "arm" && { note: messages.noStopThereMeasure }),
  }),
  pivotToMount: (): ReadingWords => ({
    name: messages.pivotLineToShock,
    how: messages.tapeSquareFromItTo({ straightEdge }),
    wrong: notFromABolt,
    a: messages.pivotLine,
    b: messages.lowerShockBolt,
  }),
  pivotToOuter: (layout: WordedLayout): ReadingWords => ({
    name: messages.pivotLineTo({ outerEnd: outerEnd(layout) }),
    how: messages.tapeSquareFromItToCenter({ straightEdge, armRole: layout.armRole }),
    wrong: notFromABolt,
    a: messages.pivotLine,
    b: `${outerEnd(layout)}${layout.armRole === "carriesWheel" ? "" : messages.center}`,
  }),
  damperLength: (): ReadingWords => ({
    name: messages.shockLengthEyeTo,
    how: messages.fromCenterOfLower,
    wrong: messages.measuredAtFullDroop,
    a: messages.lowerBoltCenter,
    b: messages.upperBoltCenter,
    note: messages.upperEndStudTo,
  }),
  armAngle: (layout: WordedLayout): ReadingWords => ({
    name: messages.armAngle,
    how: messages.betweenLevelAndLine({ angleView: angleView(layout), outerEnd: outerEnd(layout) }),
    wrong: messages.notAlongArmsEdge,
    a: messages.pivotLine,
    b: outerEnd(layout),
    note: lowerPositive,
  }),
  stopLineAngle: (layout: WordedLayout): ReadingWords => ({
    name: messages.offsetAngleOfStop,
    how: messages.onlyIfBSits({ stopPoint: stopPoint(layout), angleView: angleView(layout) }),
    wrong: messages.notArmsOwnAngle,
    a: messages.pivotLine,
    b: stopPoint(layout),
    note: lowerPositive,
    skipped: messages.skipItAndArm,
  }),
  mountLineAngle: (layout: WordedLayout): ReadingWords => ({
    name: messages.offsetAngleOfShock,
    how: messages.onlyIfShocksLower({ angleView: angleView(layout) }),
    wrong: messages.notArmsOwnAngleWhere,
    a: messages.pivotLine,
    b: messages.lowerShockBolt,
    note: lowerPositive,
    skipped: messages.skipItAndArm,
  }),
  stopLean: (layout: WordedLayout): ReadingWords => layoutsOnScreen[layout.kind].words.lean(layout),
} as const;
