import type { ReadingId } from "../../physics/readings/index.ts";
import type { Listed } from "./listedSubmission.ts";

export const decisionKinds = ["accept", "askAgain", "otherPart", "undo"] as const;
export type DecisionKind = (typeof decisionKinds)[number];

/**
 * Who decided what of one version of a check, and when. Decisions are only ever added: undoing one is
 * another that names it, so nothing that was decided, in whatever tab, is lost.
 */
export interface Decision {
  readonly key: string;
  readonly checkId: string;
  /** The key of the version that was decided on. */
  readonly submission: string;
  readonly kind: DecisionKind;
  readonly by: string;
  readonly at: string;
  readonly note: string;
  /** askAgain: the readings to take again. */
  readonly readings?: readonly ReadingId[];
  /** The stop advised, in words: otherPart, and accept where the answer asks for another one. */
  readonly stop?: string;
  /** The same as a part that can be ordered, where it is one. */
  readonly part?: { readonly partNumber: string; readonly revision?: string };
  /** The reply as it was written. */
  readonly reply?: string;
  /** undo: the key of the decision taken back. */
  readonly undoes?: string;
  /** Its place among all decisions of a shared desk; absent: made at this desk alone, or not there yet. */
  readonly shared?: { readonly sequence: number };
  /** When it was taken in from a backup, confirmed here; absent: decided at this desk. */
  readonly fromBackup?: string;
}

export type DeskState = "new" | "accepted" | "askedAgain" | "otherPart";

const states: { readonly [Kind in Exclude<DecisionKind, "undo">]: DeskState } = {
  accept: "accepted",
  askAgain: "askedAgain",
  otherPart: "otherPart",
};

/** A moment to sort by; one that lies ahead of `now` is none, and comes before all others. */
function pastMoment(moment: string, now: string): string {
  return moment > now ? "" : moment;
}

/** Oldest first; equal times by key, so that every tab and every desk sees one order. */
export function inOrder(decisions: readonly Decision[]): Decision[] {
  const now = new Date().toISOString();
  const at = (decision: Decision) => pastMoment(decision.at, now);
  return [...decisions].sort((a, b) =>
    at(a) === at(b) ? (a.key < b.key ? -1 : 1) : at(a) < at(b) ? -1 : 1,
  );
}

/** In the order of the shared desk; those that are not there yet come after all others. */
function inSharedOrder(decisions: readonly Decision[]): Decision[] {
  const place = ({ shared }: Decision) => shared?.sequence ?? Number.MAX_SAFE_INTEGER;
  return inOrder(decisions).sort((a, b) => place(a) - place(b));
}

interface SharedDecisions {
  readonly standing: Decision | null;
  /** Made while another stood, and not taken back: their replies are not sent. */
  readonly twice: readonly Decision[];
}

/** Of several decisions on one version at a shared desk the first stands, until it is taken back. */
export function sharedDecisions(
  decisions: readonly Decision[],
  submission: string,
): SharedDecisions {
  let standing: Decision | null = null;
  const twice = new Map<string, Decision>();
  for (const decision of inSharedOrder(decisions)) {
    if (decision.submission !== submission) continue;
    if (decision.kind === "undo") {
      if (standing?.key === decision.undoes) standing = null;
      else twice.delete(decision.undoes ?? "");
    } else if (standing === null) standing = decision;
    else twice.set(decision.key, decision);
  }
  return { standing, twice: [...twice.values()] };
}

/**
 * The newest decision on this version that was not taken back; at a shared desk the first of them. Null: none.
 */
export function standingDecision(
  decisions: readonly Decision[],
  submission: string,
): Decision | null {
  if (decisions.some(({ shared, submission: of }) => shared && of === submission)) {
    return sharedDecisions(decisions, submission).standing;
  }
  const undone = new Set(decisions.map(({ undoes }) => undoes));
  const standing = inOrder(decisions).filter(
    ({ key, kind, submission: of }) => of === submission && kind !== "undo" && !undone.has(key),
  );
  return standing.at(-1) ?? null;
}

/** A version that nobody has decided on is new, also where one before it was decided on. */
export function deskState(decisions: readonly Decision[], submission: string): DeskState {
  return stateOf(standingDecision(decisions, submission));
}

function stateOf(decision: Decision | null): DeskState {
  return decision === null || decision.kind === "undo" ? "new" : states[decision.kind];
}

/** One check at the desk: its versions, newest first, and where it stands. */
export interface DeskCheck {
  readonly latest: Listed;
  readonly versions: readonly Listed[];
  readonly state: DeskState;
  /** The decision that it stands by came out of a backup. */
  readonly fromBackup?: true;
  /** The key of that decision. */
  readonly decidedBy?: string;
}

/** By when they came; those that came together by their files' times, then in the order given. */
function newestFirst(a: Listed, b: Listed, now: string): number {
  const [cameA, cameB] = [pastMoment(a.receivedAt, now), pastMoment(b.receivedAt, now)];
  if (cameA !== cameB) return cameA < cameB ? 1 : -1;
  const [sentA, sentB] = [a.sentAt ?? "", b.sentAt ?? ""];
  if (sentA !== sentB) return sentA < sentB ? 1 : -1;
  const [placeA, placeB] = [a.place ?? 0, b.place ?? 0];
  if (placeA !== placeB) return placeB - placeA;
  return a.key < b.key ? 1 : -1;
}

/** Submissions put together by their check. */
export function deskChecks(
  submissions: readonly Listed[],
  decisions: readonly Decision[],
): DeskCheck[] {
  const versions = new Map<string, Listed[]>();
  for (const submission of submissions) {
    const known = versions.get(submission.checkId);
    if (known) known.push(submission);
    else versions.set(submission.checkId, [submission]);
  }
  const decided = new Map<string, Decision[]>();
  for (const decision of decisions) {
    const known = decided.get(decision.checkId);
    if (known) known.push(decision);
    else decided.set(decision.checkId, [decision]);
  }
  const checks: DeskCheck[] = [];
  const now = new Date().toISOString();
  for (const [checkId, all] of versions) {
    const sorted = all.length === 1 ? all : all.sort((a, b) => newestFirst(a, b, now));
    const [latest] = sorted;
    if (latest === undefined) continue;
    const own = decided.get(checkId);
    const standing = own === undefined ? null : standingDecision(own, latest.key);
    checks.push({
      latest,
      versions: sorted,
      state: stateOf(standing),
      ...(standing?.fromBackup !== undefined && { fromBackup: true as const }),
      ...(standing !== null && { decidedBy: standing.key }),
    });
  }
  return checks;
}

/** The decisions of each check, by its id, in their order. */
export function decisionsByCheck(
  decisions: readonly Decision[],
): ReadonlyMap<string, readonly Decision[]> {
  const found = new Map<string, Decision[]>();
  for (const decision of decisions) {
    const known = found.get(decision.checkId);
    if (known) known.push(decision);
    else found.set(decision.checkId, [decision]);
  }
  return found;
}
