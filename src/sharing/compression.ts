import { deflateSync, inflateSync } from "fflate";
import { fail, type Outcome, succeed } from "../physics/outcome.ts";
import * as messages from "../words/compiled/sharing.ts";
import { type DictionaryVersion, recordDictionaries } from "./recordDictionary.ts";

/** The most that a link or a set of codes may hold once unpacked: 1 MiB, 300 times a usual check. */
export const unpackedBytesLimit = 1_048_576;

/** DEFLATE (RFC 1951) with the dictionary of check records set before the text. */
export function pack(text: string, version: DictionaryVersion = 2): Uint8Array {
  const dictionary = recordDictionaries[version];
  return deflateSync(new TextEncoder().encode(text), { level: 9, dictionary });
}

/**
 * The text again. Memory is bounded by `limit` whatever the bytes claim: the buffer is made once,
 * and what would go past its end is dropped and refused.
 */
export function unpack(
  bytes: Uint8Array,
  limit = unpackedBytesLimit,
  version: DictionaryVersion = 2,
): Outcome<string> {
  if (bytes.length === 0) return unreadable;
  const room = new Uint8Array(limit + 1);
  let unpacked: Uint8Array;
  try {
    unpacked = inflateSync(bytes, { out: room, dictionary: recordDictionaries[version] });
  } catch (error) {
    // Raw bytes that do not fit throw a RangeError; all else is a fault of the packed form.
    return error instanceof RangeError ? tooLarge(limit) : unreadable;
  }
  if (unpacked.length > limit) return tooLarge(limit);
  try {
    return succeed(new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(unpacked));
  } catch {
    return unreadable;
  }
}

const unreadable: Outcome<never> = fail("packedUnreadable", [messages.whatWasSentCant]);

function tooLarge(limit: number): Outcome<never> {
  const most =
    limit >= 1_048_576 ? `${Math.floor(limit / 1_048_576)} MB` : messages.bytes({ limit });
  return fail("packedTooLarge", [messages.whatWasSentUnpacks({ most })]);
}
