import type { Stroke } from "./strokes.ts";

/** One cycle of a test: its strokes (and holds), by their numbers. */
export interface CycleUnit {
  readonly strokes: readonly number[];
  /** The block of like cycles that it belongs to. */
  readonly block: number;
}

/** Strokes of one direction belong to one block while travel and duration stay this near. */
const alikeTravel = 1.25;
const alikeDuration = 1.5;

/**
 * The cycles of a test in order: a stroke in and the stroke back make one, what follows each other with
 * like travel and duration makes a block. Holds go with the cycle before them. Common practice.
 */
export function cycleUnits(strokes: readonly Stroke[]): readonly CycleUnit[] {
  const units: { strokes: number[]; block: number }[] = [];
  let block = -1;
  let before: Stroke | null = null;
  let open: { strokes: number[]; block: number } | null = null;
  for (const [index, stroke] of strokes.entries()) {
    if (stroke.direction === 0) {
      const last = units.at(-1);
      if (last === undefined) units.push({ strokes: [index], block: ++block });
      else last.strokes.push(index);
      continue;
    }
    const continues = before !== null && isAlike(before, stroke);
    if (!continues) block++;
    if (continues && open !== null) {
      open.strokes.push(index);
      open = null;
    } else {
      open = { strokes: [index], block };
      units.push(open);
    }
    before = stroke;
  }
  return units;
}

function isAlike(a: Stroke, b: Stroke): boolean {
  const within = (one: number, other: number, ratio: number) =>
    one <= ratio * other && other <= ratio * one;
  return (
    within(a.travelMm, b.travelMm, alikeTravel) && within(a.durationS, b.durationS, alikeDuration)
  );
}
