import { fail, type Outcome } from "../physics/outcome.ts";
import { looksLikeBackup } from "../records/backup/backupLine.ts";
import { readCheckText } from "../records/check/readCheck.ts";
import { recordBounds } from "../records/check/recordFormat.ts";
import { looksLikePack } from "../records/pack/readPack.ts";
import { looksLikeReply } from "../records/review/readReply.ts";
import { cleanName } from "../records/text/soundText.ts";
import * as messages from "../words/compiled/sharing.ts";
import type { Words } from "../words/message.ts";
import {
  checkOnly,
  type Shared,
  type SharedCheck,
  sharedCheck,
  sharedOfPayload,
  sharedPack,
  sharedReply,
} from "./sharedCheck.ts";
import { findPayloads } from "./shareLink.ts";

/** One thing that someone sent: a file's text, or a message with a link in it. */
export interface ReceivedText {
  /** How a sentence names it: "The file", "The file “marlow.txt”", "The pasted text". */
  readonly what: Words;
  readonly text: string;
}

/** No character takes more than four bytes in UTF-8, and a check is letters and digits. */
const fileBytesLimit = recordBounds.textCharacters;

/** What does not begin as a record can only be a message with links in it, and no message is longer. */
const messageBytesLimit = 2_000_000;

function holdsNoCheck(what: Words): Outcome<never> {
  return fail("noCheckInText", [messages.holdsNoCheckNeither({ what })]);
}

/** More than this becomes text beside the screen only. */
const textAtOnceBytes = 1_000_000;

/**
 * What a file holds, if it is small enough to be a check; a larger one is not even read. What would hold up
 * the screen while it became text is left as bytes.
 */
export async function readFileContent(
  file: File,
): Promise<Outcome<{ readonly what: Words; readonly text: string | Blob }>> {
  const what = messages.file({ name: cleanName(file.name, 80) });
  if (file.size > fileBytesLimit) {
    const most = Math.round(fileBytesLimit / 1e6);
    const size = Math.round(file.size / 1e6);
    return fail("fileTooLarge", [messages.isTooLargeTo({ what, size, most })]);
  }
  try {
    const isMessage = !looksLikeRecord(await file.slice(0, 200).text());
    if (isMessage && file.size > messageBytesLimit) return holdsNoCheck(what);
    if (file.size <= textAtOnceBytes) return { ok: true, value: { what, text: await file.text() } };
    // A copy: the file itself may be gone before it is read.
    return { ok: true, value: { what, text: new Blob([await file.arrayBuffer()]) } };
  } catch {
    return fail("fileUnreadable", [messages.couldNotBeRead({ what })]);
  }
}

export async function isBackup(file: Blob): Promise<boolean> {
  try {
    return looksLikeBackup(await file.slice(0, 200).text());
  } catch {
    return false;
  }
}

/** What is in a text: a record or a reply as a file holds it, or the first link with one. */
export function sharedOfText({ text, what }: ReceivedText): Outcome<Shared> {
  if (looksLikeReply(text)) return sharedReply(text, what);
  if (looksLikePack(text)) return sharedPack(text, what);
  const [payload] = looksLikeRecord(text) ? [] : findPayloads(text);
  if (payload !== undefined) return sharedOfPayload(payload);
  const bare = /^\s*(\d[bd][A-Za-z0-9_-]{20,})\s*$/.exec(text)?.[1];
  if (bare !== undefined) return sharedOfPayload(bare);
  if (!looksLikeRecord(text)) return holdsNoCheck(what);
  const read = readCheckText(text, what);
  if (read.ok) {
    return { ok: true, value: { kind: "check", check: sharedCheck(read.value) } };
  }
  if (/"draft"\s*:/.test(text)) {
    return fail("checkNotComplete", [messages.isCheckThatIs({ what })]);
  }
  return { ok: false, fault: read.fault };
}

export function checkOfText(received: ReceivedText): Outcome<SharedCheck> {
  return checkOnly(sharedOfText(received), received.what);
}

function looksLikeRecord(text: string): boolean {
  return /^\ufeff?\s*[{[]/.test(text);
}
