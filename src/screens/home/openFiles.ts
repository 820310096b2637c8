import type { Outcome } from "../../physics/outcome.ts";
import { succeed } from "../../physics/outcome.ts";
import type { Sentence } from "../../physics/sentence.ts";
import type { StoredCheck } from "../../records/check/storedCheck.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import { storedFromRecord } from "../../records/filling/storedFromRecord.ts";
import type { Pack } from "../../records/pack/pack.ts";
import type { Reply } from "../../records/review/reply.ts";
import { cleanName } from "../../records/text/soundText.ts";
import type { CheckStore } from "../../storage/checkStore.ts";
import * as messages from "../../words/compiled/screens/home.ts";
import { goTo, packHref } from "../addresses.ts";
import { handReceived } from "../exchange/handed.ts";
import { keepBeside } from "../exchange/presentVersions.ts";
import { receivedOfFiles } from "../exchange/received.ts";
import { openHref } from "../exchange/shareRoutes.ts";
import { handPack } from "../handedPack.ts";
import { handBackup } from "../saved/backupHere.ts";
import { savedHref } from "../saved/savedRoute.ts";

export interface OpenedFiles {
  readonly checks: readonly StoredCheck[];
  readonly refused: readonly { readonly file: string; readonly sentence: Sentence }[];
  /** Looked at on a screen of their own before they are kept. */
  readonly replies: readonly Reply[];
  readonly backup: File | null;
  readonly pack: Pack | null;
}

/** Nothing of it is stored yet. */
export async function readFiles(files: readonly File[], unit: LengthUnit): Promise<OpenedFiles> {
  const { checks, drafts, replies, backups, packs, refused } = await receivedOfFiles(files);
  return {
    checks: [...checks.map(({ record }) => storedFromRecord(record, { unit })), ...drafts],
    refused: refused.map(({ name, fault }) => ({
      file: cleanName(name, 80),
      sentence: fault.sentence,
    })),
    replies,
    backup: backups[0] ?? null,
    pack: packs[0] ?? null,
  };
}

/** Goes to the screen of what has one of its own: replies, a backup, or a pack. */
export function goOnWith({ backup, pack, replies }: OpenedFiles): void {
  if (replies.length > 0) {
    handReceived({ replies, backup });
    goTo(openHref);
  } else if (backup) {
    handBackup(backup, messages.openedFromList);
    goTo(savedHref);
  } else if (pack) {
    handPack(pack, pack.name);
    goTo(packHref);
  }
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
