import * as messages from "../../words/compiled/physics/stopTests.ts";
import { mean } from "../uncertainty/readingMean.ts";
import type { Remark } from "./benchTest.ts";
import type { Stroke } from "./strokes.ts";

export interface RampFound {
  /** Numbers of the strokes that are slow ramps. */
  readonly strokes: readonly number[];
  readonly remarks: readonly Remark[];
}

/** A ramp covers at least this share of the depths moved through. */
const leastTravel = 0.3;
/** Without a stroke at static speed, the slowest counts from this duration on, s … */
const shortestRampS = 2;
/** … where it takes so many times as long as the other strokes do. */
const longerThanCycles = 3;
const alike = 1.5;

/**
 * The slow ramps among the strokes: those at a mean speed of at most `staticSpeed`, mm/s; else, by
 * duration, the slowest where it takes far longer than the cycles. Common practice, no source.
 */
export function rampStrokes(
  strokes: readonly Stroke[],
  rangeMm: number,
  staticSpeed: number,
): RampFound {
  const moving = strokes
    .map((stroke, index) => ({ ...stroke, index, speed: stroke.travelMm / stroke.durationS }))
    .filter(({ direction, travelMm }) => direction !== 0 && travelMm >= leastTravel * rangeMm);
  const slow = moving.filter(({ speed }) => speed <= staticSpeed);
  if (slow.length > 0) return { strokes: slow.map(({ index }) => index), remarks: [] };
  const longest = Math.max(0, ...moving.map(({ durationS }) => durationS));
  const others = moving.filter(({ durationS }) => alike * durationS < longest);
  const usual = others.map(({ durationS }) => durationS).sort((a, b) => a - b)[others.length >> 1];
  const isRamp = longest >= shortestRampS && longerThanCycles * (usual ?? 0) <= longest;
  const ramps = isRamp ? moving.filter(({ durationS }) => alike * durationS >= longest) : [];
  if (ramps.length === 0) return { strokes: [], remarks: [] };
  const speed = mean(ramps.map((ramp) => ramp.speed));
  return {
    strokes: ramps.map(({ index }) => index),
    remarks: [
      {
        code: "rampByDuration",
        sentence: [messages.noPartOfTest({ speed: { kind: "speed", value: speed } })],
      },
    ],
  };
}
