import { useCallback, useState } from "preact/hooks";
import { isReadingId, type ReadingId } from "../../physics/readings/index.ts";
import type { Decision, DecisionKind } from "../../records/review/decision.ts";
import { isPlainObject, type PlainObject } from "../../records/text/plainObject.ts";

export type DecidedKind = Exclude<DecisionKind, "undo">;

const decidedKinds: readonly DecidedKind[] = ["accept", "askAgain", "otherPart"];

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

function isAsked(id: unknown): id is ReadingId {
  return typeof id === "string" && isReadingId(id);
}

/** A draft as kept; what is not as it was written is left out. */
function readDraft({ kind, note, typed, picked, asked }: PlainObject): DecisionDraft {
  const replies: { [Kind in DecidedKind]?: string } = {};
  for (const each of decidedKinds) {
    const reply = isPlainObject(typed) ? typed[each] : undefined;
    if (typeof reply === "string") replies[each] = reply;
  }
  return {
    kind: decidedKinds.find((each) => each === kind) ?? null,
    note: typeof note === "string" ? note : "",
    typed: replies,
    picked: typeof picked === "string" ? picked : null,
    asked: Array.isArray(asked) ? asked.filter(isAsked) : [],
  };
}

function kept(submission: string): DecisionDraft {
  try {
    const value: unknown = JSON.parse(sessionStorage.getItem(keyOf(submission)) ?? "null");
    return isPlainObject(value) ? readDraft(value) : emptyDraft;
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
