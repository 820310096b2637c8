import { type Fault, type Outcome, succeed } from "../physics/outcome.ts";
import { checkName } from "../records/check/checkName.ts";
import type { Words } from "../words/message.ts";
import { faultOfPass, passOverBackup, type ReadLines } from "./backupPass.ts";
import type { CheckStore } from "./checkStore.ts";
import type { DeskStore } from "./deskStore.ts";
import { asTakenIn, joinedWithBackup } from "./joinBackup.ts";
import { MarkStore } from "./markStore.ts";
import { replacesSomething } from "./sameContent.ts";

/** What a backup holds and what restoring it would change; nothing is written to find out. */
export interface BackupSurvey {
  /** When it says that it was made; never ahead of now. */
  readonly createdAt: string;
  /** It says that this phone made it. */
  readonly madeHere: boolean;
  readonly checks: {
    /** Names of those that are not here. */
    readonly added: readonly Words[];
    /** Names of those here in which readings would be replaced. */
    readonly replaced: readonly Words[];
    /** Names of those here that would only get what they lack. */
    readonly filled: readonly Words[];
    readonly present: number;
  };
  readonly submissions: { readonly added: number; readonly present: number };
  readonly decisions: { readonly added: number; readonly present: number };
  /** What is wrong with it; null where it is whole. */
  readonly fault: Fault | null;
}

export interface SurveySurroundings {
  readonly desk: Pick<DeskStore, "keys">;
  readonly checks: CheckStore;
  readonly readLines: ReadLines;
  readonly signal: AbortSignal;
}

export async function phoneMark(): Promise<string | null> {
  const marks = new MarkStore();
  const phone = await marks.phone();
  marks.close();
  return phone.ok ? phone.value : null;
}

/** Reads a backup through and holds it against what is here. Null where it was stopped. */
export async function surveyBackup(
  file: Blob,
  { desk, checks, readLines, signal }: SurveySurroundings,
): Promise<Outcome<BackupSurvey | null>> {
  const phone = await phoneMark();
  const known = await desk.keys();
  if (!known.ok) return known;
  const names = { added: [] as Words[], replaced: [] as Words[], filled: [] as Words[] };
  const present = { checks: 0, submissions: 0, decisions: 0 };
  const added = { submissions: new Set<string>(), decisions: new Set<string>() };
  const passed = await passOverBackup(
    file,
    readLines,
    async (entry, header) => {
      if (entry.kind === "submission") {
        const { checkId, digest } = entry.incoming.facts;
        const key = `${checkId} ${digest}`;
        if (known.value.submissions.has(key)) present.submissions += 1;
        else added.submissions.add(key);
      }
      if (entry.kind === "decision") {
        const { key } = entry.decision;
        if (known.value.decisions.has(key)) present.decisions += 1;
        else added.decisions.add(key);
      }
      if (entry.kind !== "check") return succeed(null);
      const here = await checks.get(entry.check.id);
      if (!here.ok) return here;
      const name = checkName(entry.check);
      if (here.value === null) {
        names.added.push(name);
        return succeed(null);
      }
      const madeHere = header.phone === phone;
      const backup = asTakenIn(entry.check, madeHere);
      const joined = joinedWithBackup(here.value, backup, madeHere);
      if (joined === here.value) present.checks += 1;
      else if (replacesSomething(here.value, joined)) names.replaced.push(checkName(here.value));
      else names.filled.push(checkName(here.value));
      return succeed(null);
    },
    signal,
  );
  if (!passed.ok) return passed;
  if (passed.value === null) return succeed(null);
  const { header } = passed.value;
  return succeed({
    createdAt: header.createdAt,
    madeHere: header.phone === phone,
    checks: { ...names, present: present.checks },
    submissions: { added: added.submissions.size, present: present.submissions },
    decisions: { added: added.decisions.size, present: present.decisions },
    fault: faultOfPass(passed.value),
  });
}
