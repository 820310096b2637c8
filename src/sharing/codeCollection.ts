import { fail, type Outcome, succeed } from "../physics/outcome.ts";
import { crc32 } from "../records/bytes/checksum.ts";
import * as messages from "../words/compiled/sharing.ts";
import type { Message } from "../words/message.ts";
import type { Frame } from "./frame.ts";
import { readPayload } from "./payload.ts";
import { findPayloads } from "./shareLink.ts";

/** The numbered codes of one check that were scanned so far, in whatever order. */
export interface CodeCollection {
  readonly parts: number;
  readonly mark: number;
  readonly photosLeftOut: number;
  /** By their number from 0. */
  readonly bodies: ReadonlyMap<number, Uint8Array>;
}

export interface Scanned {
  readonly collection: CodeCollection;
  /** The very code was scanned before. */
  readonly repeated: boolean;
  /** The whole check, once every code is there. */
  readonly whole: Frame | null;
}

/** The frame of one scanned code: its text is a link that ends in a payload. */
export function readCode(text: string): Outcome<Frame> {
  const [payload] = findPayloads(text);
  if (payload === undefined) {
    return fail("codeForeign", [messages.thisCodeHoldsNo]);
  }
  return readPayload(payload, messages.code);
}

/**
 * The collection with one more code. A code scanned before changes nothing; a code of another check
 * is refused and the collection stays as it is.
 */
export function addCode(before: CodeCollection | null, frame: Frame): Outcome<Scanned> {
  if (before !== null && (frame.parts !== before.parts || frame.mark !== before.mark)) {
    return fail("codeOfAnotherCheck", [
      messages.thisCodeBelongsTo({ missing: missingWords(before) }),
    ]);
  }
  const collection: CodeCollection = {
    parts: frame.parts,
    mark: frame.mark,
    photosLeftOut: frame.photosLeftOut,
    bodies: new Map(before?.bodies ?? []).set(frame.part, frame.body),
  };
  const repeated = before?.bodies.has(frame.part) === true;
  if (collection.bodies.size < collection.parts) {
    return succeed({ collection, repeated, whole: null });
  }
  const body = joined(collection);
  if (crc32(body) !== collection.mark) {
    return fail("codesDisagree", [messages.codesDoNotFit]);
  }
  const { photosLeftOut, mark } = collection;
  const { version } = frame;
  const whole: Frame = {
    photosLeftOut,
    parts: 1,
    part: 0,
    mark,
    body,
    ...(version && { version }),
  };
  return succeed({ collection, repeated, whole });
}

/** Numbers, from 1, of the codes that are not there yet. */
export function missingCodes({ parts, bodies }: CodeCollection): number[] {
  return Array.from({ length: parts }, (_, part) => part)
    .filter((part) => !bodies.has(part))
    .map((part) => part + 1);
}

/** "code 2 of 3 is missing", "codes 1 and 3 of 4 are missing" */
export function missingWords(collection: CodeCollection): Message {
  const missing = missingCodes(collection);
  const last = missing.at(-1);
  if (last === undefined) return messages.noCodeIsMissing;
  if (missing.length === 1) return messages.codeOfIsMissing({ last, parts: collection.parts });
  const others = missing.slice(0, -1).join(", ");
  return messages.codesAndOfAre({ others, last, parts: collection.parts });
}

function joined({ parts, bodies }: CodeCollection): Uint8Array {
  const slices = Array.from({ length: parts }, (_, part) => bodies.get(part) ?? new Uint8Array());
  const bytes = new Uint8Array(slices.reduce((sum, slice) => sum + slice.length, 0));
  let at = 0;
  for (const slice of slices) {
    bytes.set(slice, at);
    at += slice.length;
  }
  return bytes;
}
