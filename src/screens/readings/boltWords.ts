import type { ReadingWords, WordedLayout } from "../layouts/wordedReading.ts";
import { outerEnd, stopPoint } from "./places.ts";

type Bolt = "front" | "rear";
type End = (layout: WordedLayout) => string;

const mount: End = () => "lower shock bolt";

function fromBolt(bolt: Bolt, end: End, to: End = end) {
  return (layout: WordedLayout): ReadingWords => ({
    name: `${bolt === "front" ? "Front" : "Rear"} bolt to ${to(layout)}`,
    how: `Straight, by tape alone: from the center of the ${bolt} pivot bolt (A) to ${stopWords(end(layout))} (B).`,
    wrong: "The tape must run straight in the air, not around the arm.",
    a: `${bolt} bolt, center`,
    b: end(layout),
    note: "The phone works out the length square to the pivot line.",
  });
}

function stopWords(end: string): string {
  return end.startsWith("where ") ? end : `the ${end}`;
}

const stop: End = (layout) => (layout.stopOn === "arm" ? "stop tip" : "stop");

export const boltWords = {
  boltSpacing: (): ReadingWords => ({
    name: "Bolt to bolt",
    how: "From the center of the front pivot bolt (A) straight to the center of the rear one (B).",
    wrong: "Not edge to edge of the bushings: center to center.",
    a: "front bolt, center",
    b: "rear bolt, center",
  }),
  frontBoltToStop: fromBolt("front", stopPoint, stop),
  rearBoltToStop: fromBolt("rear", stopPoint, stop),
  frontBoltToMount: fromBolt("front", mount),
  rearBoltToMount: fromBolt("rear", mount),
  frontBoltToOuter: fromBolt("front", outerEnd),
  rearBoltToOuter: fromBolt("rear", outerEnd),
} as const;
