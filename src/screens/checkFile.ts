import type { Fault } from "../physics/outcome.ts";
import { entriesWithChoices } from "../records/check/choicesAmongEntries.ts";
import { completeRecord } from "../records/check/completeRecord.ts";
import type { StoredCheck } from "../records/check/storedCheck.ts";
import { downloadFile } from "../sharing/checkFile.ts";
import * as messages from "../words/compiled/screens/saved.ts";
import { markSent } from "./saved/safety.ts";

/** A name that every file system takes. */
export function checkFileName(stored: StoredCheck): string {
  const label = (stored.name || stored.record.vehicle?.label || "check")
    .normalize("NFKD")
    .replace(/[^\p{L}\p{N}]+/gu, "-")
    .replace(/^-+|-+$/g, "")
    .slice(0, 60);
  return `stopfit-${label || "check"}-${stored.createdAt.slice(0, 10)}.json`;
}

/**
 * The check as a file holds it: the record, and beside it, while it is not complete, what was typed and
 * how far it is, so that it can be gone on with on another phone.
 */
export function checkFileText(stored: StoredCheck): string {
  const completion = completeRecord(stored);
  const content = completion.ok
    ? completion.value
    : {
        ...stored.record,
        draft: {
          name: stored.name,
          entries: entriesWithChoices(stored),
          progress: stored.progress,
          ...(stored.aside && { aside: stored.aside }),
        },
      };
  return `${JSON.stringify(content, null, 2)}\n`;
}

const notSaved: Fault = { code: "fileNotSaved", sentence: [messages.fileIsNotSaved] };

/** It counts as saved once it was; the fault where the person closed the share sheet. */
export async function saveCheckFile(stored: StoredCheck): Promise<Fault | null> {
  const saved = await downloadFile({
    name: checkFileName(stored),
    text: checkFileText(stored),
    mime: "application/json",
  });
  if (!saved) return notSaved;
  await markSent(stored);
  return null;
}

/** What is left of a check that can't be shown, for someone who can read it. */
export async function saveDamagedRow(text: string): Promise<Fault | null> {
  const day = new Date().toISOString().slice(0, 10);
  const name = `stopfit-damaged-${day}.json`;
  const saved = await downloadFile({ name, text, mime: "application/json" });
  return saved ? null : notSaved;
}
