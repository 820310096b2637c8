import * as messages from "../../words/compiled/screens/readings.ts";
import type { ReadingWords, WordedLayout } from "../layouts/wordedReading.ts";
import { outerEnd, stopPoint } from "./places.ts";

type Bolt = "front" | "rear";
type End = (layout: WordedLayout) => string;

const mount: End = () => messages.lowerShockBolt;

function fromBolt(bolt: Bolt, end: End, to: End = end) {
  return (layout: WordedLayout): ReadingWords => ({
    name: messages.front({ bolt, to: to(layout) }),
    how: messages.straightByTapeAlone({ bolt, stop: stopWords(end(layout)) }),
    wrong: messages.tapeMustRunStraight,
    a: messages.boltCenter({ bolt }),
    b: end(layout),
    note: messages.phoneWorksOutLength,
  });
}

function stopWords(end: string): string {
  return end.startsWith("where ") ? end : messages.the({ end });
}

const stop: End = (layout) => (layout.stopOn === "arm" ? messages.stopTip : "stop");

export const boltWords = {
  boltSpacing: (): ReadingWords => ({
    name: messages.boltToBolt,
    how: messages.fromCenterOfFront,
    wrong: messages.notEdgeToEdge,
    a: messages.frontBoltCenter,
    b: messages.rearBoltCenter,
  }),
  frontBoltToStop: fromBolt("front", stopPoint, stop),
  rearBoltToStop: fromBolt("rear", stopPoint, stop),
  frontBoltToMount: fromBolt("front", mount),
  rearBoltToMount: fromBolt("rear", mount),
  frontBoltToOuter: fromBolt("front", outerEnd),
  rearBoltToOuter: fromBolt("rear", outerEnd),
} as const;
