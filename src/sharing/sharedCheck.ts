import { fail, type Outcome, succeed } from "../physics/outcome.ts";
import type { CheckRecord } from "../records/check/checkRecord.ts";
import { readCheckText } from "../records/check/readCheck.ts";
import type { Pack } from "../records/pack/pack.ts";
import { looksLikePack, readPackText } from "../records/pack/readPack.ts";
import { withSoundPhotos } from "../records/photo/soundPhotos.ts";
import { looksLikeReply, readReplyText } from "../records/review/readReply.ts";
import type { Reply } from "../records/review/reply.ts";
import * as messages from "../words/compiled/sharing.ts";
import type { Words } from "../words/message.ts";
import { unpack, unpackedBytesLimit } from "./compression.ts";
import type { Frame } from "./frame.ts";
import { readPayload } from "./payload.ts";
import { fromShortText } from "./shortText.ts";

/** A check as it came from someone else: read and found sound, but not kept yet. */
export interface SharedCheck {
  readonly record: CheckRecord;
  /** Photos that the sender's record has and this one has not. */
  readonly photosLeftOut: number;
  /** Photos that were no pictures that can be shown here, and so were left out; absent: none. */
  readonly photosRefused?: number;
}

/** What every check passes that comes from outside: its photos are pictures, without what cameras write. */
export function sharedCheck(given: CheckRecord, photosLeftOut = 0): SharedCheck {
  const { record, refused } = withSoundPhotos(given);
  return { record, photosLeftOut, ...(refused > 0 && { photosRefused: refused }) };
}

/** What a link, a code or a file may bring. */
export type Shared =
  | { readonly kind: "check"; readonly check: SharedCheck }
  | { readonly kind: "reply"; readonly reply: Reply }
  | { readonly kind: "pack"; readonly pack: Pack };

/** The check or the reply of a frame that holds a whole one. */
export function sharedOfFrame(frame: Frame, what: Words = messages.link): Outcome<Shared> {
  if (frame.parts > 1) {
    return fail("oneCodeOfSeveral", [
      messages.holdsOnlyPartOf({ what, part: frame.part + 1, parts: frame.parts }),
    ]);
  }
  const text = unpack(frame.body, unpackedBytesLimit, frame.version);
  if (!text.ok) return text;
  if (looksLikeReply(text.value)) return sharedReply(text.value, what);
  if (looksLikePack(text.value)) return sharedPack(text.value, what);
  const read = readCheckText(inFull(text.value), what);
  return read.ok
    ? succeed({
        kind: "check",
        check: sharedCheck(read.value, frame.photosLeftOut),
      })
    : { ok: false, fault: read.fault };
}

export function sharedReply(text: string, what: Words): Outcome<Shared> {
  const reply = readReplyText(text, what);
  return reply.ok ? succeed({ kind: "reply", reply: reply.value }) : reply;
}

export function sharedPack(text: string, what: Words): Outcome<Shared> {
  const read = readPackText(text, what);
  return read.ok ? succeed({ kind: "pack", pack: read.value }) : { ok: false, fault: read.fault };
}

/** Only a check, where nothing else has a place. */
export function checkOnly(shared: Outcome<Shared>, what: Words): Outcome<SharedCheck> {
  if (!shared.ok) return shared;
  if (shared.value.kind === "check") return succeed(shared.value.check);
  if (shared.value.kind === "pack") {
    return fail("packNotCheck", [messages.isPartsLibraryNo({ what })]);
  }
  return fail("replyNotCheck", [messages.isReplyFromReview({ what })]);
}

export function checkOfFrame(frame: Frame, what: Words = messages.link): Outcome<SharedCheck> {
  return checkOnly(sharedOfFrame(frame, what), what);
}

/** The text in full; a text that is none as it is, so that reading it says what is wrong with it. */
function inFull(shortText: string): string {
  try {
    return fromShortText(shortText);
  } catch {
    return shortText;
  }
}

/** What the payload of a link holds. Never throws, whatever the payload is. */
export function sharedOfPayload(payload: string, what: Words = messages.link): Outcome<Shared> {
  const frame = readPayload(payload, what);
  return frame.ok ? sharedOfFrame(frame.value, what) : frame;
}

export function checkOfPayload(payload: string, what: Words = messages.link): Outcome<SharedCheck> {
  return checkOnly(sharedOfPayload(payload, what), what);
}
