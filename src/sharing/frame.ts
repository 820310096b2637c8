import { fail, type Outcome, succeed } from "../physics/outcome.ts";
import { crc32 } from "../records/bytes/checksum.ts";
import * as messages from "../words/compiled/sharing.ts";
import type { Words } from "../words/message.ts";
import type { DictionaryVersion } from "./recordDictionary.ts";

/**
 * What one link or one code carries: a packed record, or one of the numbered parts of it.
 *
 * Bytes: photos left out (1), parts in all (1), this part from 0 (1), length of the body (3, big
 * end first), where there is more than one part the mark of the set (4), the body, CRC-32 of all
 * before it (4).
 */
export interface Frame {
  /** How many photos the record has that do not travel with it; 255 stands for that many or more. */
  readonly photosLeftOut: number;
  readonly parts: number;
  /** From 0. */
  readonly part: number;
  /** CRC-32 of the whole packed record: parts with another mark are of another check. */
  readonly mark: number;
  readonly body: Uint8Array;
  /** The version of the link, which says what its body was packed with; absent: the present one. */
  readonly version?: DictionaryVersion;
}

export const partsLimit = 255;
/** The most that one link or a whole set of codes may hold, packed. */
export const packedBytesLimit = 32_768;

const headerBytes = 6;
const markBytes = 4;
const sumBytes = 4;

/** Bytes that a frame adds to its body. */
export function frameOverhead(parts: number): number {
  return headerBytes + (parts > 1 ? markBytes : 0) + sumBytes;
}

export function frameBytes(frame: Frame): Uint8Array {
  const { photosLeftOut, parts, part, mark, body } = frame;
  const bytes = new Uint8Array(frameOverhead(parts) + body.length);
  const view = new DataView(bytes.buffer);
  bytes.set([Math.min(255, photosLeftOut), parts, part]);
  view.setUint8(3, body.length >>> 16);
  view.setUint16(4, body.length & 0xffff);
  if (parts > 1) view.setUint32(headerBytes, mark);
  bytes.set(body, bytes.length - sumBytes - body.length);
  view.setUint32(bytes.length - sumBytes, crc32(bytes.subarray(0, -sumBytes)));
  return bytes;
}

/** Bytes of the whole frame that begins so; null where too little is there to tell. */
export function frameLength(bytes: Uint8Array): number | null {
  if (bytes.length < headerBytes) return null;
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
  const body = view.getUint8(3) * 65_536 + view.getUint16(4);
  return frameOverhead(view.getUint8(1)) + body;
}

/** Reads exactly the bytes of one frame. `what` names it in the sentence: "The link", "The code". */
export function readFrame(bytes: Uint8Array, what: Words): Outcome<Frame> {
  if (bytes.length < headerBytes + sumBytes || frameLength(bytes) !== bytes.length) {
    return altered(what);
  }
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
  const end = bytes.length - sumBytes;
  if (crc32(bytes.subarray(0, end)) !== view.getUint32(end)) return altered(what);
  const parts = view.getUint8(1);
  const part = view.getUint8(2);
  if (parts === 0 || part >= parts) return altered(what);
  const start = frameOverhead(parts) - sumBytes;
  const body = bytes.slice(start, end);
  if (body.length === 0 || body.length > packedBytesLimit) return altered(what);
  return succeed({
    photosLeftOut: view.getUint8(0),
    parts,
    part,
    mark: parts > 1 ? view.getUint32(headerBytes) : crc32(body),
    body,
  });
}

export function altered(what: Words): Outcome<never> {
  return fail("payloadAltered", [messages.isDamagedPartOf({ what })]);
}
