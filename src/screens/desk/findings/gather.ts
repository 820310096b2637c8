import { type Outcome, succeed } from "../../../physics/outcome.ts";
import { readCheckText } from "../../../records/check/readCheck.ts";
import type { FindingSubject } from "../../../records/findings/subject.ts";
import type { Decision, DeskCheck } from "../../../records/review/decision.ts";
import type { DeskStore } from "../../../storage/deskStore.ts";

/** Read between two looks of the screen. */
const atOnce = 40;

export interface Gathered extends FindingSubject {
  readonly text: string;
}

/** The newest version of each of these checks, with its answer and what was decided of it. */
export async function gather(
  store: DeskStore,
  checks: readonly DeskCheck[],
  decisions: readonly Decision[],
  onProgress: (done: number) => void,
  signal: AbortSignal,
): Promise<Outcome<Gathered[]>> {
  const ofCheck = new Map<string, Decision[]>();
  for (const decision of decisions) {
    const known = ofCheck.get(decision.checkId);
    if (known) known.push(decision);
    else ofCheck.set(decision.checkId, [decision]);
  }
  const gathered: Gathered[] = [];
  for (let at = 0; at < checks.length && !signal.aborted; at += atOnce) {
    const some = checks.slice(at, at + atOnce);
    const read = await store.judged(some.map(({ latest }) => latest.key));
    if (!read.ok) return read;
    for (const [place, check] of some.entries()) {
      const { text, assessment } = read.value[place] ?? { text: "", assessment: null };
      const record = readCheckText(text);
      if (!record.ok) continue;
      const received = check.versions.map((version) => version.receivedAt).sort();
      gathered.push({
        key: check.latest.key,
        text,
        record: record.value,
        assessment,
        firstReceivedAt: received[0] ?? check.latest.receivedAt,
        decisions: ofCheck.get(check.latest.checkId) ?? [],
      });
    }
    onProgress(gathered.length);
  }
  return succeed(gathered);
}
