import type { Assessment, Fitment } from "../physics/fitment.ts";
import type { CornerDynamics } from "../physics/stiffness/index.ts";

/** A complete answer, with what each stiffness class fails on. */
export interface WholeAnswer {
  readonly assessment: Assessment;
  readonly dynamics: readonly CornerDynamics[];
}

/** The present vehicle as it is, and the one before. */
const most = 2;

/** The last answers that were worked out, by the values of their fitments. */
export class LastAnswers {
  readonly #answers = new Map<string, WholeAnswer>();

  at(fitment: Fitment): WholeAnswer | null {
    return this.#answers.get(JSON.stringify(fitment)) ?? null;
  }

  keep(fitment: Fitment, answer: WholeAnswer): void {
    const key = JSON.stringify(fitment);
    this.#answers.delete(key);
    this.#answers.set(key, answer);
    for (const oldest of this.#answers.keys()) {
      if (this.#answers.size <= most) return;
      this.#answers.delete(oldest);
    }
  }
}

const ofThisPage = new LastAnswers();

/** The answer to a fitment of the very same values, where it was one of the last to be worked out. */
export function answerAtHand(fitment: Fitment): WholeAnswer | null {
  return ofThisPage.at(fitment);
}

export function keepAtHand(fitment: Fitment, answer: WholeAnswer): void {
  ofThisPage.keep(fitment, answer);
}
