import type { Outcome } from "../../physics/outcome.ts";
import { succeed } from "../../physics/outcome.ts";
import type { Sentence } from "../../physics/sentence.ts";
import type { StoredCheck } from "../../records/check/storedCheck.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import { storedFromRecord } from "../../records/filling/storedFromRecord.ts";
import type { CheckStore } from "../../storage/checkStore.ts";
import { keepBeside } from "../exchange/presentVersions.ts";
import { receivedOfFiles } from "../exchange/received.ts";
import { keepReplies } from "../exchange/reply/takeReplies.ts";

export interface OpenedFiles {
  readonly checks: readonly StoredCheck[];
  readonly refused: readonly { readonly file: string; readonly sentence: Sentence }[];
  /** Checks here that a reply among the files is about, by their id here; those replies are kept. */
  readonly replied: readonly string[];
  readonly backup: File | null;
}

/** Checks are not stored yet; replies are with the checks they are about. */
export async function readFiles(
  store: CheckStore,
  files: readonly File[],
  unit: LengthUnit,
): Promise<OpenedFiles> {
  const { checks, drafts, replies, backups, refused } = await receivedOfFiles(files);
  const kept = await keepReplies(store, replies);
  return {
    checks: [...checks.map(({ record }) => storedFromRecord(record, { unit })), ...drafts],
    refused: [
      ...refused.map(({ name, fault }) => ({ file: name, sentence: fault.sentence })),
      ...kept.faults.map(({ sentence }) => ({ file: "A reply", sentence })),
    ],
    replied: kept.storedIds,
    backup: backups[0] ?? null,
  };
}

/** Keeps opened checks. One whose id is on this phone already is kept beside it, as it came. */
export async function keepChecks(
  store: CheckStore,
  checks: readonly StoredCheck[],
): Promise<Outcome<number>> {
  for (const check of checks) {
    const kept = await keepBeside(store, { ...check, updatedAt: new Date().toISOString() });
    if (!kept.ok) return kept;
  }
  return succeed(checks.length);
}
