import { fail, type Outcome, succeed } from "../physics/outcome.ts";
import { crc32 } from "../records/bytes/checksum.ts";
import type { CheckRecord } from "../records/check/checkRecord.ts";
import type { Pack } from "../records/pack/pack.ts";
import type { Reply } from "../records/review/reply.ts";
import * as messages from "../words/compiled/sharing.ts";
import { pack, unpackedBytesLimit } from "./compression.ts";
import { type Frame, packedBytesLimit } from "./frame.ts";
import { payloadLengthOf, payloadText } from "./payload.ts";
import { toShortText } from "./shortText.ts";

export interface ShareLink {
  readonly address: string;
  readonly photosLeftOut: number;
  /** Some programs for messages cut an address as long as this one. */
  readonly long: boolean;
}

/** Addresses up to here go through every common program whole (common practice, no source). */
const shortAddressCharacters = 2000;

/** What stands between the app's own address and the payload. The part after # reaches no server. */
export const openPrefix = "#/open/";

/** The app's own address without what is open in it. */
export function appAddress(location: Pick<Location, "origin" | "pathname">): string {
  return `${location.origin}${location.pathname}`;
}

/** A check, or a reference pack, packed for a link or codes. */
export interface Packed {
  readonly photosLeftOut: number;
  readonly body: Uint8Array;
}

function packed(text: string, photosLeftOut: number): Packed | null {
  const body = pack(text);
  const unpackedBytes = new TextEncoder().encode(text).length;
  return body.length > packedBytesLimit || unpackedBytes > unpackedBytesLimit
    ? null
    : { photosLeftOut, body };
}

/** The record without its photos, packed for a link or codes. */
export function packCheck(record: CheckRecord): Outcome<Packed> {
  const { photos, ...withoutPhotos } = record;
  const photosLeftOut = photos?.length ?? 0;
  const made = packed(toShortText(photosLeftOut > 0 ? withoutPhotos : record), photosLeftOut);
  return made === null ? fail("tooLargeForLink", [messages.thisCheckIsToo]) : succeed(made);
}

/** For codes, which a camera reads the better the less they hold: without what the app advised, too. */
export function packCheckForCode({ advised: _, ...record }: CheckRecord): Outcome<Packed> {
  return packCheck(record);
}

/** The whole reference pack, packed for a link or codes. */
export function packLibrary(library: Pack): Outcome<Packed> {
  const made = packed(JSON.stringify(library), 0);
  return made === null ? fail("tooLargeForLink", [messages.thisLibraryIsToo]) : succeed(made);
}

export function wholeFrame({ photosLeftOut, body }: Packed): Frame {
  return { photosLeftOut, parts: 1, part: 0, mark: crc32(body), body };
}

export function linkTo(payload: string, app: string): string {
  return `${app}${openPrefix}${payload}`;
}

/** A link that holds the whole record but its photos. */
export function shareLink(record: CheckRecord, app: string): Outcome<ShareLink> {
  return linkOfPacked(packCheck(record), app);
}

/** A link that holds what was packed. */
export function linkOfPacked(whole: Outcome<Packed>, app: string): Outcome<ShareLink> {
  if (!whole.ok) return whole;
  const address = linkTo(payloadText(wholeFrame(whole.value), "letters"), app);
  return succeed({
    address,
    photosLeftOut: whole.value.photosLeftOut,
    long: address.length > shortAddressCharacters,
  });
}

/** A link that opens a reply on the phone that made its check; null where it would be too long. */
export function replyLink(reply: Reply, app: string): string | null {
  const body = pack(JSON.stringify(reply));
  if (body.length > packedBytesLimit) return null;
  return linkTo(payloadText(wholeFrame({ photosLeftOut: 0, body }), "letters"), app);
}

const linkStart = /#\/open\/(\d[a-z])/g;
const lettersRun = /[A-Za-z0-9_-]*/y;
/** How programs for mail break a long line: a plain break, or quoted-printable's "=" before it. */
const lineBreak = /=?[ \t]*\r?\n(?:>[> ]*)?[ \t]*/y;

/** A link is broken into no more lines than this on its way. */
const mostLines = 2000;

/**
 * Every payload of the links in a pasted text, in order, each once, and no more than `most`. A link that
 * was broken into lines on its way is put together again. Takes time in proportion to the text.
 */
export function findPayloads(text: string, most = Number.POSITIVE_INFINITY): string[] {
  const found = new Set<string>();
  for (const match of text.matchAll(linkStart)) {
    if (found.size >= most) break;
    let at = match.index + openPrefix.length;
    const pieces: string[] = [];
    let characters = 0;
    let wanted: number | null = null;
    for (let line = 0; line < mostLines; line += 1) {
      lettersRun.lastIndex = at;
      const run = lettersRun.exec(text)?.[0] ?? "";
      pieces.push(run);
      characters += run.length;
      at += run.length;
      wanted ??= payloadLengthOf(pieces.join(""));
      if (run === "" || (wanted === null ? characters > 40 : characters >= wanted)) break;
      lineBreak.lastIndex = at;
      const broken = lineBreak.exec(text)?.[0];
      if (broken === undefined) break;
      at += broken.length;
    }
    found.add(pieces.join(""));
  }
  return [...found];
}
