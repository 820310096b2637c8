import { useCallback, useState } from "preact/hooks";
import type { ReadingId } from "../../physics/readings/index.ts";
import type { Decision, DecisionKind } from "../../records/review/decision.ts";

export type DecidedKind = Exclude<DecisionKind, "undo">;

/** What was begun of a decision and is not decided yet. */
export interface DecisionDraft {
  /** Null: not chosen by hand. */
  readonly kind: DecidedKind | null;
  readonly note: string;
  /** Replies changed by hand, by the decision they belong to. */
  readonly typed: { readonly [Kind in DecidedKind]?: string };
  /** otherPart: the stop picked, by its id. */
  readonly picked: string | null;
  /** askAgain: the readings chosen. */
  readonly asked: readonly ReadingId[];
}

const emptyDraft: DecisionDraft = {
  kind: null,
  note: "",
  typed: {},
  picked: null,
  asked: [],
};

export function hasWords({ note, typed }: DecisionDraft): boolean {
  return note.trim() !== "" || Object.keys(typed).length > 0;
}

/** What a decision that was taken back began from. */
export function draftOf({ kind, note, readings = [], reply }: Decision): DecisionDraft {
  if (kind === "undo") return emptyDraft;
  // The advice of another part is written anew once its stop is picked again.
  const typed = reply && kind !== "otherPart" ? { [kind]: reply } : {};
  return { ...emptyDraft, kind, note, typed, asked: readings };
}

function keyOf(submission: string): string {
  return `stopfit.desk.draft ${submission}`;
}

function kept(submission: string): DecisionDraft {
  try {
    const text = sessionStorage.getItem(keyOf(submission));
    return text === null ? emptyDraft : { ...emptyDraft, ...(JSON.parse(text) as DecisionDraft) };
  } catch {
    return emptyDraft;
  }
}

function keep(submission: string, draft: DecisionDraft): void {
  try {
    if (draft === emptyDraft) sessionStorage.removeItem(keyOf(submission));
    else sessionStorage.setItem(keyOf(submission), JSON.stringify(draft));
  } catch {
    // Then it lasts as long as the check stays open.
  }
}

/** What was begun for one version: it outlasts going to another check and a reload of this tab. */
export function useDecisionDraft(
  submission: string,
): [DecisionDraft, (change: Partial<DecisionDraft> | null) => void] {
  const [draft, setDraft] = useState(() => kept(submission));
  const change = useCallback(
    (part: Partial<DecisionDraft> | null) =>
      setDraft((before) => {
        const next = part === null ? emptyDraft : { ...before, ...part };
        keep(submission, next);
        return next;
      }),
    [submission],
  );
  return [draft, change];
}
