import type { StoredCheck } from "../../records/check/storedCheck.ts";
import { chosen, withChoice } from "../../records/filling/choice.ts";
import { withSides } from "../../records/filling/sides.ts";
import type { Step } from "./step.ts";

/** One side, and no step that a tape does not answer: weights, rates and requirements come later, if at all. */
export function withShortWalk(stored: StoredCheck): StoredCheck {
  return withChoice(withSides(stored, "left"), "walk", "short");
}

function isForLater({ id }: Step): boolean {
  return id.startsWith("ride.") || id.endsWith(".cornerMassKg") || id === "rules";
}

/** The steps before and after one; a short walk passes those for later by, unless it was led to one. */
export function besideStep(
  stored: StoredCheck,
  all: readonly Step[],
  at: number,
): { readonly before: Step | undefined; readonly after: Step | undefined } {
  const here = all[at];
  const short = chosen(stored, "walk") === "short" && here !== undefined && !isForLater(here);
  const walked = (step: Step) => !short || !isForLater(step);
  return {
    before: all.slice(0, Math.max(0, at)).findLast(walked),
    after: all.slice(at + 1).find(walked),
  };
}
