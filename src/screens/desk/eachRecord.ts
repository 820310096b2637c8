import type { Outcome } from "../../physics/outcome.ts";
import { succeed } from "../../physics/outcome.ts";
import type { CheckRecord } from "../../records/check/checkRecord.ts";
import { readCheckText } from "../../records/check/readCheck.ts";
import { type Decision, decisionsByCheck, deskChecks } from "../../records/review/decision.ts";
import type { DeskStore } from "../../storage/deskStore.ts";

const pageSize = 100;

/**
 * Goes through the newest version of every check at the desk, some at a time, so that memory holds no
 * more; `visit` gets each with its decisions. How many there were.
 */
export async function eachRecord(
  store: DeskStore,
  visit: (
    check: { readonly key: string; readonly record: CheckRecord },
    decisions: readonly Decision[],
  ) => void,
  isLeft: () => boolean,
): Promise<Outcome<number>> {
  const [submissions, decisions] = await Promise.all([store.submissions(), store.decisions()]);
  if (!submissions.ok) return submissions;
  if (!decisions.ok) return decisions;
  const ofCheck = decisionsByCheck(decisions.value);
  const newest = new Set(
    deskChecks(submissions.value, decisions.value).map(({ latest }) => latest.key),
  );
  let count = 0;
  for await (const page of store.wholeSubmissions(pageSize)) {
    if (!page.ok) return page;
    if (isLeft()) break;
    for (const { submission, text } of page.value) {
      if (!newest.has(submission.key)) continue;
      const read = readCheckText(text);
      if (!read.ok) continue;
      count += 1;
      visit({ key: submission.key, record: read.value }, ofCheck.get(submission.checkId) ?? []);
    }
  }
  return succeed(count);
}
