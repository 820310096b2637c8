import { type Spread, spreadOf } from "./quantiles.ts";
import type { FindingSubject } from "./subject.ts";

export interface Answering {
  readonly checks: number;
  readonly answered: number;
  /** Of the answered, those in which readings were asked for again at least once. */
  readonly askedAgain: number;
  /** From when it came in until the first decision. */
  readonly days: Spread | null;
}

const dayMs = 24 * 60 * 60 * 1000;

/** How often readings are asked for again, and how long people wait. Decisions taken back do not count. */
export function answering(subjects: readonly FindingSubject[]): Answering {
  let answered = 0;
  let askedAgain = 0;
  const days: number[] = [];
  for (const { decisions, firstReceivedAt } of subjects) {
    const undone = new Set(decisions.map(({ undoes }) => undoes));
    const standing = decisions.filter(({ kind, key }) => kind !== "undo" && !undone.has(key));
    if (standing.length === 0) continue;
    answered += 1;
    if (standing.some(({ kind }) => kind === "askAgain")) askedAgain += 1;
    const first = Math.min(...standing.map(({ at }) => Date.parse(at)));
    days.push(Math.max(0, first - Date.parse(firstReceivedAt)) / dayMs);
  }
  return { checks: subjects.length, answered, askedAgain, days: spreadOf(days) };
}
