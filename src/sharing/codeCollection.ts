import { fail, type Outcome, succeed } from "../physics/outcome.ts";
import { crc32 } from "../records/bytes/checksum.ts";
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
    return fail("codeForeign", [
      "This code holds no check from Stopfit. Look for the one on the other screen.",
    ]);
  }
  return readPayload(payload, "The code");
}

/**
 * The collection with one more code. A code scanned before changes nothing; a code of another check
 * is refused and the collection stays as it is.
 */
export function addCode(before: CodeCollection | null, frame: Frame): Outcome<Scanned> {
  if (before !== null && (frame.parts !== before.parts || frame.mark !== before.mark)) {
    return fail("codeOfAnotherCheck", [
      `This code belongs to another check. Of the check you started, ${missingWords(before)}. Scan those, or start over with this one.`,
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
    return fail("codesDisagree", [
      "The codes do not fit together: at least one is of another check. Start over and scan them all again.",
    ]);
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
export function missingWords(collection: CodeCollection): string {
  const missing = missingCodes(collection);
  const last = missing.at(-1);
  if (last === undefined) return "no code is missing";
  if (missing.length === 1) return `code ${last} of ${collection.parts} is missing`;
  const others = missing.slice(0, -1).join(", ");
  return `codes ${others} and ${last} of ${collection.parts} are missing`;
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
