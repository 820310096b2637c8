import type { Fault, Outcome } from "../../physics/outcome.ts";
import { succeed } from "../../physics/outcome.ts";
import { readCheckText } from "../../records/check/readCheck.ts";
import { csvLine } from "../../records/review/csv.ts";
import {
  decisionsByCheck,
  deskChecks,
  deskState,
  standingDecision,
} from "../../records/review/decision.ts";
import { tableHeader, tableLine } from "../../records/review/figuresTable.ts";
import { cellTexts } from "../../saying/tableCells.ts";
import type { DeskStore } from "../../storage/deskStore.ts";
import { saveWhole, wholeBackup } from "../saved/wholeBackup.ts";
import { csvFile, saveCsvFile, styleHere } from "./csvFile.ts";

const pageSize = 100;

/** Every side of every version of every check as one table. */
export async function tableFile(store: DeskStore, style = styleHere()): Promise<Outcome<File>> {
  const [submissions, decisions] = await Promise.all([store.submissions(), store.decisions()]);
  if (!submissions.ok) return submissions;
  if (!decisions.ok) return decisions;
  const ofCheck = decisionsByCheck(decisions.value);
  const places = new Map<string, number>();
  for (const { versions } of deskChecks(submissions.value, decisions.value)) {
    versions.forEach(({ key }, index) => {
      places.set(key, versions.length - index);
    });
  }
  const parts: BlobPart[] = [csvLine(cellTexts(tableHeader), style)];
  for (let at = 0; at < submissions.value.length; at += pageSize) {
    const page = submissions.value.slice(at, at + pageSize);
    const judged = await store.judged(page.map(({ key }) => key));
    if (!judged.ok) return judged;
    const lines: string[] = [];
    for (const [place, submission] of page.entries()) {
      const { text = "", assessment = null } = judged.value[place] ?? {};
      const read = readCheckText(text);
      if (!read.ok) continue;
      const record = read.value;
      const own = ofCheck.get(submission.checkId) ?? [];
      const decision = standingDecision(own, submission.key);
      for (const side of submission.sides) {
        lines.push(
          csvLine(
            cellTexts(
              tableLine({
                submission,
                record,
                side,
                decision,
                state: deskState(own, submission.key),
                version: places.get(submission.key) ?? 1,
                assessment,
              }),
            ),
            style,
          ),
        );
      }
    }
    parts.push(new Blob(lines));
  }
  return succeed(csvFile("figures", parts));
}

export async function saveTable(store: DeskStore): Promise<Fault | null> {
  const table = await tableFile(store);
  return table.ok ? saveCsvFile(table.value) : table.fault;
}

export async function saveBackup(store: DeskStore): Promise<Fault | null> {
  const backup = await wholeBackup(store);
  if (!backup.ok) return backup.fault;
  const saved = await saveWhole(backup.value);
  return saved.ok ? null : saved.fault;
}
