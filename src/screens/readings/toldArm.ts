import * as messages from "../../words/compiled/screens/readings.ts";
import { layoutsOnScreen } from "../layouts/layoutsOnScreen.ts";
import { lowerPositive } from "../layouts/lowerPositive.ts";
import type { ToldReading } from "../layouts/toldReading.ts";
import { distance } from "../shapes/geometry.ts";
import { inboard, leanAngle, lengthBetween, lineAngle } from "../shapes/measurement.ts";
import { stopHalfWidth } from "../shapes/parts.tsx";
import { angleView, outerEnd, stopPoint } from "./places.ts";

const straightEdge = messages.layStraightEdgeAlong;
const notFromABolt = messages.takenFromOneBolt;

export const toldArm = {
  pivotToStop: {
    words: (layout) => ({
      name: messages.pivotLineToStop,
      how: messages.tapeSquareFromIt({ straightEdge, stopOn: layout.stopOn }),
      wrong: notFromABolt,
      a: messages.pivotLine,
      b: stopPoint(layout),
      ...(layout.stopOn === "arm" && { note: messages.noStopThereMeasure }),
    }),
    view: { from: "above", start: "pivotLine", end: "Stop" },
  },
  pivotToMount: {
    words: () => ({
      name: messages.pivotLineToShock,
      how: messages.tapeSquareFromItTo({ straightEdge }),
      wrong: notFromABolt,
      a: messages.pivotLine,
      b: messages.lowerShockBolt,
    }),
    view: { from: "above", start: "pivotLine", end: "Mount" },
  },
  pivotToOuter: {
    words: (layout) => ({
      name: messages.pivotLineTo({ outerEnd: outerEnd(layout) }),
      how: messages.tapeSquareFromItToCenter({ straightEdge, armRole: layout.armRole }),
      wrong: notFromABolt,
      a: messages.pivotLine,
      b: `${outerEnd(layout)}${layout.armRole === "carriesWheel" ? "" : messages.center}`,
    }),
    view: { from: "above", start: "pivotLine", end: "Outer" },
  },
  damperLength: {
    words: () => ({
      name: messages.shockLengthEyeTo,
      how: messages.fromCenterOfLower,
      wrong: messages.measuredAtFullDroop,
      a: messages.lowerBoltCenter,
      b: messages.upperBoltCenter,
      note: messages.upperEndStudTo,
    }),
    view: {
      from: "along",
      around: "rod",
      measure: ({ skeleton: { foot, head, axis } }) => ({
        ...lengthBetween(foot, head, axis, inboard),
        offset: 58,
      }),
    },
  },
  armAngle: {
    words: (layout) => ({
      name: messages.armAngle,
      how: messages.betweenLevelAndLine({
        angleView: angleView(layout),
        outerEnd: outerEnd(layout),
      }),
      wrong: messages.notAlongArmsEdge,
      a: messages.pivotLine,
      b: outerEnd(layout),
      note: lowerPositive,
    }),
    view: {
      from: "along",
      around: "arm",
      measure: ({ skeleton: { pivot, outer }, numbers }) =>
        lineAngle(pivot, numbers.armAngle, distance(pivot, outer)),
    },
    tilt: "line",
  },
  stopLineAngle: {
    words: (layout) => ({
      name: messages.offsetAngleOfStop,
      how: messages.onlyIfBSits({ stopPoint: stopPoint(layout), angleView: angleView(layout) }),
      wrong: messages.notArmsOwnAngle,
      a: messages.pivotLine,
      b: stopPoint(layout),
      note: lowerPositive,
      skipped: messages.skipItAndArm,
    }),
    view: {
      from: "along",
      around: "arm",
      measure: ({ skeleton: { pivot, pad }, numbers }) =>
        lineAngle(pivot, numbers.stopLineAngle, distance(pivot, pad)),
    },
    tilt: "line",
  },
  mountLineAngle: {
    words: (layout) => ({
      name: messages.offsetAngleOfShock,
      how: messages.onlyIfShocksLower({ angleView: angleView(layout) }),
      wrong: messages.notArmsOwnAngleWhere,
      a: messages.pivotLine,
      b: messages.lowerShockBolt,
      note: lowerPositive,
      skipped: messages.skipItAndArm,
    }),
    view: {
      from: "along",
      around: "arm",
      measure: ({ skeleton: { pivot, foot }, numbers }) =>
        lineAngle(pivot, numbers.mountLineAngle, distance(pivot, foot)),
    },
    tilt: "line",
  },
  stopLean: {
    words: (layout) => layoutsOnScreen[layout.kind].words.lean(layout),
    view: {
      from: "along",
      around: "lean",
      measure: ({ skeleton: { foot, head }, numbers }) =>
        leanAngle(
          foot,
          numbers.stopLean,
          Math.max(distance(foot, head) * 1.15, 120),
          stopHalfWidth(numbers.freeHeight) + 8,
        ),
    },
    tilt: "lean",
  },
} as const satisfies { readonly [name: string]: ToldReading };
