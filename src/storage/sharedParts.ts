import { withPersonal } from "../records/exchanged/personalParts.ts";
import type { Decision } from "../records/review/decision.ts";
import { isPlainObject } from "../records/text/plainObject.ts";
import type { PersonalPart, SentBy, Writing } from "./deskDatabase.ts";

interface Gives<Value> {
  get(key: string): Promise<Value | undefined>;
}

interface Parts {
  readonly sentBy: Gives<SentBy>;
  readonly personal: Gives<PersonalPart>;
}

export function partsIn(transaction: {
  objectStore(name: "sentBy"): Gives<SentBy>;
  objectStore(name: "personal"): Gives<PersonalPart>;
}): Parts {
  return {
    sentBy: transaction.objectStore("sentBy"),
    personal: transaction.objectStore("personal"),
  };
}

/** A check as it was sent, with those names, notes and photos of it that are kept here still. */
export async function wholeText(parts: Parts, key: string, text: string): Promise<string> {
  const sent = await parts.sentBy.get(key);
  if (sent === undefined) return text;
  const found = await Promise.all(sent.photos.map((hash) => parts.personal.get(hash)));
  const photos = found.flatMap((part) => part?.photo ?? []);
  const texts = sent.personal === null ? undefined : await parts.personal.get(sent.personal);
  if (photos.length === 0 && texts?.texts === undefined) return text;
  const sentRecord: unknown = JSON.parse(text);
  if (!isPlainObject(sentRecord)) return text;
  const record = withPersonal(sentRecord, texts?.texts ?? {});
  return JSON.stringify({ ...record, ...(photos.length > 0 && { photos }) });
}

/** A decision on what came by the shared desk is to be told there. */
export async function shareDecision(transaction: Writing, decision: Decision): Promise<void> {
  const sent = await transaction.objectStore("sentBy").get(decision.submission);
  if (sent === undefined || decision.shared !== undefined) return;
  await transaction.objectStore("toShare").put({
    key: `decision ${decision.key}`,
    kind: "decision",
    checkId: decision.checkId,
    id: decision.key,
    at: decision.at,
  });
}
