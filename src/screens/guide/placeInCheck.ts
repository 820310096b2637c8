import * as messages from "../../words/compiled/screens/guide.ts";
import { leftSide, rightSide, type Section, type Step, sections } from "./step.ts";

/** Where a step is: its part of the check, of how many, and its place among that part's steps. */
export interface PlaceInCheck {
  readonly section: Section;
  readonly part: number;
  readonly parts: number;
  readonly step: number;
  readonly steps: number;
}

/** The parts of a check; both sides count until it is said which are measured, so that no part is added. */
export function partsOf(all: readonly Step[]): readonly Section[] {
  const has = (section: Section) => all.some((step) => step.section === section);
  const sided = has(leftSide) || has(rightSide);
  return sections.filter(
    (section) => has(section) || (!sided && (section === leftSide || section === rightSide)),
  );
}

export function placeInCheck(all: readonly Step[], at: number): PlaceInCheck | null {
  const here = all[at];
  if (!here) return null;
  const parts = partsOf(all);
  const own = all.filter(({ section }) => section === here.section);
  return {
    section: here.section,
    part: parts.indexOf(here.section) + 1,
    parts: parts.length,
    step: own.indexOf(here) + 1,
    steps: own.length,
  };
}

/** "Left side: 3 of 9". */
export function placeWords({ section, step, steps }: PlaceInCheck): string {
  return steps === 1 ? section : messages.ofWord({ section, step, steps });
}
