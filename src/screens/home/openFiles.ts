import { type Outcome, succeed } from "../../physics/outcome.ts";
import type { Sentence } from "../../physics/sentence.ts";
import { recordBounds } from "../../records/checkRecord.ts";
import { readCheckText } from "../../records/readCheck.ts";
import { newId, type StoredCheck, storedFromRecord } from "../../records/storedCheck.ts";
import type { LengthUnit } from "../../records/units.ts";
import type { CheckStore } from "../../storage/checkStore.ts";
import { loadReferencePack } from "../referencePack.ts";
import { readDraftText } from "./readDraft.ts";

export interface OpenedFiles {
  readonly checks: readonly StoredCheck[];
  readonly refused: readonly { readonly file: string; readonly sentence: Sentence }[];
}

/** UTF-8 takes at most three bytes for each of a record's characters. */
const mostBytes = 3 * recordBounds.textCharacters;
const mostFiles = 200;

/** Nothing is stored yet: what the files hold, and a sentence for each that is no check. */
export async function readFiles(files: readonly File[], unit: LengthUnit): Promise<OpenedFiles> {
  const checks: StoredCheck[] = [];
  const refused: { file: string; sentence: Sentence }[] = [];
  for (const [index, file] of files.entries()) {
    const refuse = (sentence: Sentence) => refused.push({ file: file.name, sentence });
    if (index >= mostFiles) {
      refuse([`Only ${mostFiles} files are opened at a time. Open the rest after these.`]);
      break;
    }
    if (file.size > mostBytes) {
      refuse([`The file is ${Math.round(file.size / 1e6)} MB, too large to be a fitment check.`]);
      continue;
    }
    let text: string;
    try {
      text = await file.text();
    } catch {
      refuse(["The file can't be read. Copy it to this phone and open it again."]);
      continue;
    }
    const read = readCheckText(text);
    if (!read.ok) await loadReferencePack();
    const draft = read.ok ? null : readDraftText(text);
    if (read.ok) checks.push(storedFromRecord(read.value, { unit }));
    else if (draft) checks.push(draft);
    else refuse(read.fault.sentence);
  }
  return { checks, refused };
}

/** Keeps opened checks. One whose id is on this phone already is kept beside it, under a new id. */
export async function keepChecks(
  store: CheckStore,
  checks: readonly StoredCheck[],
): Promise<Outcome<number>> {
  for (const check of checks) {
    const kept: StoredCheck = { ...check, updatedAt: new Date().toISOString() };
    const added = await store.add(kept);
    if (!added.ok) return added;
    if (added.value) continue;
    const id = newId();
    const beside = await store.add({
      ...kept,
      id,
      name: `${kept.name} (from a file)`,
      record: { ...kept.record, id },
    });
    if (!beside.ok) return beside;
  }
  return succeed(checks.length);
}
