import * as messages from "../../words/compiled/screens/readings.ts";
import type { ToldReading } from "../layouts/toldReading.ts";
import type { WordedLayout } from "../layouts/wordedReading.ts";
import type { ArmPoint } from "../shapes/armLength.ts";
import { outerEnd, stopPoint } from "./places.ts";

type Bolt = "front" | "rear";
type End = (layout: WordedLayout) => string;

const mount: End = () => messages.lowerShockBolt;

function fromBolt(bolt: Bolt, point: ArmPoint, end: End, to: End = end): ToldReading {
  return {
    words: (layout) => ({
      name: messages.front({ bolt, to: to(layout) }),
      how: messages.straightByTapeAlone({ bolt, stop: stopWords(end(layout)) }),
      wrong: messages.tapeMustRunStraight,
      a: messages.boltCenter({ bolt }),
      b: end(layout),
      note: messages.phoneWorksOutLength,
    }),
    view: { from: "above", start: `${bolt}Bolt`, end: point },
  };
}

function stopWords(end: string): string {
  return end.startsWith("where ") ? end : messages.the({ end });
}

const stop: End = (layout) => (layout.stopOn === "arm" ? messages.stopTip : "stop");

export const toldBolts = {
  boltSpacing: {
    words: () => ({
      name: messages.boltToBolt,
      how: messages.fromCenterOfFront,
      wrong: messages.notEdgeToEdge,
      a: messages.frontBoltCenter,
      b: messages.rearBoltCenter,
    }),
    view: { from: "above", start: "frontBolt", end: "rearBolt" },
  },
  frontBoltToStop: fromBolt("front", "Stop", stopPoint, stop),
  rearBoltToStop: fromBolt("rear", "Stop", stopPoint, stop),
  frontBoltToMount: fromBolt("front", "Mount", mount),
  rearBoltToMount: fromBolt("rear", "Mount", mount),
  frontBoltToOuter: fromBolt("front", "Outer", outerEnd),
  rearBoltToOuter: fromBolt("rear", "Outer", outerEnd),
} as const satisfies { readonly [name: string]: ToldReading };
