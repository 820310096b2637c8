import * as messages from "../../words/compiled/screens/readings.ts";
import { otherArm } from "../layouts/linkageFromFront.ts";
import type { Skeleton } from "../layouts/skeleton.ts";
import type { ToldReading } from "../layouts/toldReading.ts";
import type { ReadingWords, WordedLayout } from "../layouts/wordedReading.ts";
import { heightOver } from "../shapes/measurement.ts";
import { outerEnd, stopPoint } from "./places.ts";

const byHeights = messages.phoneWorksOutAngle;

function words(of: (layout: WordedLayout) => string, more: Partial<ReadingWords> = {}) {
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

function over(point: "pivot" | "outer" | "foot"): ToldReading["view"] {
  return {
    from: "along",
    around: "ground",
    measure: ({ skeleton }) => heightOver(groundY(skeleton), skeleton[point]),
  };
}

function groundY({ wheelCentre, wheelRadius }: Skeleton): number {
  return wheelCentre.y - wheelRadius;
}

function overToOther(end: "pivot" | "joint"): ToldReading["view"] {
  return {
    from: "front",
    ground: true,
    measure: (linkage) => heightOver(linkage.groundY, otherArm(linkage)[end]),
  };
}

export const toldHeights = {
  pivotHeight: { words: words(() => messages.pivotLine, pivotLine), view: over("pivot") },
  outerHeight: { words: words(outerEnd), view: over("outer") },
  stopHeight: {
    words: (layout) => ({
      ...words(() => messages.stopsLandingPoint)(layout),
      how: messages.fromLevelGroundStraightUpTo({ stopOn: layout.stopOn }),
      b: stopPoint(layout),
    }),
    view: over("foot"),
  },
  mountHeight: { words: words(() => messages.lowerShockBolt), view: over("foot") },
  otherPivotHeight: {
    words: words(() => messages.otherPivotLine, pivotLine),
    view: overToOther("pivot"),
  },
  otherOuterHeight: { words: words(() => messages.otherArmsJoint), view: overToOther("joint") },
} as const satisfies { readonly [name: string]: ToldReading };
