import { type Fault, type Outcome, succeed } from "../physics/outcome.ts";
import type { StoredCheck } from "../records/check/storedCheck.ts";
import type { Decision } from "../records/review/decision.ts";
import type { Incoming } from "../records/review/submission.ts";
import { faultOfPass, passOverBackup, type ReadLines } from "./backupPass.ts";
import type { CheckStore } from "./checkStore.ts";
import type { DeskStore } from "./deskStore.ts";
import { asTakenIn, joinedWithBackup } from "./joinBackup.ts";
import { phoneMark } from "./surveyBackup.ts";

const pageSize = 100;

/** What was new of a backup, and what was here already. */
export interface RestoreCounts {
  readonly added: number;
  readonly present: number;
  /** Of those added, checks that were here in another version, now joined. */
  readonly joined: number;
}

/** What a restore wrote, by which it is undone. */
export interface RestoreReceipt {
  readonly addedChecks: readonly Pick<StoredCheck, "id" | "updatedAt">[];
  readonly joinedChecks: readonly {
    readonly before: StoredCheck;
    /** The copy of what was replaced, among the deleted checks. */
    readonly aside: string | null;
  }[];
  readonly submissions: readonly string[];
  readonly decisions: readonly string[];
}

export interface RestoreSurroundings {
  readonly desk: Pick<DeskStore, "add" | "decide" | "takeOut">;
  readonly checks: CheckStore;
  readonly readLines: ReadLines;
  /** A person has said that the decisions in it are to count as well. */
  readonly withDecisions: boolean;
  onCounts(counts: RestoreCounts): void;
  readonly signal: AbortSignal;
}

export interface Restored {
  readonly counts: RestoreCounts;
  readonly receipt: RestoreReceipt;
  /** Why not all of it was restored; null where it was. */
  readonly fault: Fault | null;
}

/**
 * Joins a backup with what is here: adds what is missing, fills in what only the backup has, and never puts
 * the older in the place of the newer. What is replaced is kept among the deleted checks. Decisions are
 * marked as from a backup.
 */
export async function restoreBackup(
  file: Blob,
  { desk, checks, readLines, withDecisions, onCounts, signal }: RestoreSurroundings,
): Promise<Restored> {
  let counts: RestoreCounts = { added: 0, present: 0, joined: 0 };
  const count = (added: number, present: number, joined = 0): void => {
    counts = {
      added: counts.added + added,
      present: counts.present + present,
      joined: counts.joined + joined,
    };
    onCounts(counts);
  };
  const addedChecks: RestoreReceipt["addedChecks"][number][] = [];
  const joinedChecks: RestoreReceipt["joinedChecks"][number][] = [];
  const addedSubmissions: string[] = [];
  const addedDecisions: string[] = [];
  const fromBackup = new Date().toISOString();
  const phone = await phoneMark();
  let submissions: Incoming[] = [];
  let decisions: Decision[] = [];
  const keep = async (): Promise<Outcome<null>> => {
    const added = await desk.add(submissions);
    if (!added.ok) return added;
    addedSubmissions.push(...added.value.keys);
    const decided = await desk.decide(decisions);
    if (!decided.ok) return decided;
    addedDecisions.push(...decided.value);
    count(
      added.value.added + decided.value.length,
      added.value.present + decisions.length - decided.value.length,
    );
    submissions = [];
    decisions = [];
    return succeed(null);
  };
  const passed = await passOverBackup(
    file,
    readLines,
    async (entry, header) => {
      if (entry.kind === "decision" && withDecisions) {
        decisions.push({ ...entry.decision, fromBackup });
      }
      if (entry.kind === "submission") submissions.push(entry.incoming);
      if (entry.kind === "check") {
        const madeHere = header.phone === phone;
        const taken = await checks.takeIn(asTakenIn(entry.check, madeHere), (current, backup) =>
          joinedWithBackup(current, backup, madeHere),
        );
        if (!taken.ok) return taken;
        const { kind } = taken.value;
        const { id, updatedAt } = entry.check;
        if (kind === "added") addedChecks.push({ id, updatedAt });
        if (taken.value.kind === "joined") {
          const { before, aside } = taken.value;
          joinedChecks.push({ before, aside });
        }
        count(kind === "present" ? 0 : 1, kind === "present" ? 1 : 0, kind === "joined" ? 1 : 0);
      }
      return submissions.length + decisions.length >= pageSize ? keep() : succeed(null);
    },
    signal,
  );
  const kept = await keep();
  const pass = passed.ok ? passed.value : null;
  const fault = !passed.ok
    ? passed.fault
    : !kept.ok
      ? kept.fault
      : pass === null
        ? null
        : faultOfPass(pass);
  return {
    counts,
    receipt: {
      addedChecks,
      joinedChecks,
      submissions: addedSubmissions,
      decisions: addedDecisions,
    },
    fault,
  };
}

/** Everything that a restore wrote, taken back. */
export async function undoRestore(
  { addedChecks, joinedChecks, submissions, decisions }: RestoreReceipt,
  { desk, checks }: Pick<RestoreSurroundings, "desk" | "checks">,
): Promise<Outcome<null>> {
  // The last first: of a check that was joined twice, what was there before both.
  for (const { before, aside } of [...joinedChecks].reverse()) {
    const back = await checks.update(before.id, () => before);
    if (!back.ok) return back;
    const gone = aside === null ? succeed(null) : await checks.discard(aside);
    if (!gone.ok) return gone;
  }
  for (const { id, updatedAt } of addedChecks) {
    const here = await checks.get(id);
    if (!here.ok) return here;
    if (here.value === null) continue;
    // What was gone on with since goes where it can be brought back from.
    const isAsAdded = here.value.updatedAt === updatedAt;
    const gone = isAsAdded ? await checks.discard(id) : await checks.remove(id);
    if (!gone.ok) return gone;
  }
  return desk.takeOut({ submissions, decisions });
}
