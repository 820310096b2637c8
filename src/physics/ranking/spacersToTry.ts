import type { RankedStop } from "./rankedStop.ts";

export interface SpacerOptions {
  /** Spacers come in steps of this, mm; 1 where absent. */
  readonly spacerStepMm?: number;
  /** The tallest spacer that is tried, mm; 50 where absent (common practice). */
  readonly mostSpacerMm?: number;
}

/**
 * Heights worth trying under a stop that does not fit, most promising first, mm: what makes its reserve
 * sure, what gives it on the mean, and where its stiffness fails half and all of what early contact
 * leaves. One height for every side, a whole number of steps that early contact leaves; none for what is
 * out of its reach by more than a step.
 */
export function spacersToTry(
  plain: Pick<RankedStop, "group" | "assessment" | "shortcomings">,
  { spacerStepMm: step = 1, mostSpacerMm = 50 }: SpacerOptions,
): readonly number[] {
  if (plain.group === "fits" || plain.assessment === null) return [];
  const { corners } = plain.assessment;
  const most = Math.min(
    mostSpacerMm,
    ...corners.map(({ mostExtraHeightMm }) => mostExtraHeightMm ?? mostSpacerMm),
  );
  const fails = (id: string) => plain.shortcomings.some(({ check }) => check === id);
  const heights: number[] = [];
  if (fails("clearance")) {
    heights.push(
      Math.max(...corners.map(({ intervals }) => intervals.spacerMm?.[1] ?? 0)),
      Math.max(...corners.map(({ spacerMm }) => spacerMm ?? 0)),
    );
  }
  if (fails("stiffness")) heights.push(most / 2, most);
  const inSteps = heights
    .filter((height) => height <= most + step)
    .map((height) => step * Math.min(Math.ceil(height / step), Math.floor(most / step)));
  return [...new Set(inSteps)].filter((height) => height > 0);
}
