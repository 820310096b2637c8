import type { Assessment, Fitment } from "../physics/fitment.ts";
import type { CornerDynamics } from "../physics/stiffness/index.ts";

/** A complete answer, with what each stiffness class fails on. */
export interface WholeAnswer {
  readonly assessment: Assessment;
  readonly dynamics: readonly CornerDynamics[];
}

/** The present vehicle as it is, and the one before. */
const most = 2;

const answers = new Map<string, WholeAnswer>();

/** The answer to a fitment of the very same values, where it was one of the last to be worked out. */
export function answerAtHand(fitment: Fitment): WholeAnswer | null {
  return answers.get(JSON.stringify(fitment)) ?? null;
}

export function keepAtHand(fitment: Fitment, answer: WholeAnswer): void {
  const key = JSON.stringify(fitment);
  answers.delete(key);
  answers.set(key, answer);
  for (const oldest of answers.keys()) {
    if (answers.size <= most) return;
    answers.delete(oldest);
  }
}
