import { fail, type Outcome, succeed } from "../physics/outcome.ts";
import * as messages from "../words/compiled/sharing.ts";
import type { Words } from "../words/message.ts";
import { base64urlLength, fromBase64url, toBase64url } from "./base64url.ts";
import { digitsLength, fromDigits, toDigits } from "./decimalDigits.ts";
import { altered, type Frame, frameBytes, frameLength, readFrame } from "./frame.ts";

/** The version of the packed form and its dictionary: the first character of every payload. */
const linkVersion = 2;

/** letters: shortest as text, for links. digits: smallest in a QR code. */
export type Spelling = "letters" | "digits";

interface Speller {
  readonly sign: string;
  readonly length: (bytes: number) => number;
  readonly write: (bytes: Uint8Array) => string;
  readonly read: (text: string) => Uint8Array | null;
  readonly run: RegExp;
}

const spellers: { readonly [Name in Spelling]: Speller } = {
  letters: {
    sign: "b",
    length: base64urlLength,
    write: toBase64url,
    read: fromBase64url,
    run: /^[A-Za-z0-9_-]*/,
  },
  digits: {
    sign: "d",
    length: digitsLength,
    write: toDigits,
    read: fromDigits,
    run: /^\d*/,
  },
};

/**
 * Ends every payload in letters, because programs that make links clickable leave out a last
 * "-" or "_". Nothing depends on its arrival.
 */
const endSign = "e";

export function payloadText(frame: Frame, spelling: Spelling): string {
  const { sign, write } = spellers[spelling];
  const end = spelling === "letters" ? endSign : "";
  return `${frame.version ?? linkVersion}${sign}${write(frameBytes(frame))}${end}`;
}

/** Characters of the payload of a frame with so many bytes. */
export function payloadLength(frameByteCount: number, spelling: Spelling): number {
  const end = spelling === "letters" ? endSign.length : 0;
  return 2 + spellers[spelling].length(frameByteCount) + end;
}

/** Far above the longest payload there can be; what is longer is not looked at. */
const payloadCharactersLimit = 200_000;

/** How many characters the payload that begins so has in all; null where that is not told yet. */
export function payloadLengthOf(begun: string): number | null {
  const speller = Object.values(spellers).find((each) => each.sign === begun[1]);
  if (speller === undefined) return null;
  const bytes = speller.read(begun.slice(2, 2 + speller.length(7)));
  const length = bytes === null ? null : frameLength(bytes);
  const characters = length === null ? 0 : 2 + speller.length(length);
  return characters === 0 || characters > payloadCharactersLimit ? null : characters;
}

/**
 * The frame that a payload spells. A payload that is cut short, altered, of a newer version or no
 * payload at all is a sentence. What follows the last character of an intact one is passed over.
 */
export function readPayload(text: string, what: Words = messages.link): Outcome<Frame> {
  const trimmed = text.trim();
  if (trimmed.length > payloadCharactersLimit) {
    return fail("payloadTooLong", [messages.isLongerThanAny({ what })]);
  }
  const [, version, sign] = /^(\d)([a-z])/.exec(trimmed) ?? [];
  if (trimmed === "") return notWhole(what);
  if (version === undefined) return notACheck(what);
  if (Number(version) > linkVersion) return newer(what);
  const speller = Object.values(spellers).find((each) => each.sign === sign);
  if (Number(version) < 1 || speller === undefined) return notACheck(what);

  const spelled = speller.run.exec(trimmed.slice(2))?.[0] ?? "";
  const begun = speller.read(spelled.slice(0, speller.length(7)));
  const length = begun === null ? null : frameLength(begun);
  if (length === null) return begun === null ? altered(what) : notWhole(what);
  const wanted = speller.length(length);
  if (wanted > payloadCharactersLimit) return altered(what);
  if (spelled.length < wanted) {
    return fail("payloadCut", [messages.isCutShortOf({ what, spelled: spelled.length, wanted })]);
  }
  const bytes = speller.read(spelled.slice(0, wanted));
  if (bytes === null) return altered(what);
  const frame = readFrame(bytes, what);
  return frame.ok && version === "1" ? succeed({ ...frame.value, version: 1 }) : frame;
}

function notWhole(what: Words): Outcome<never> {
  return fail("payloadCut", [messages.isCutShortNearly({ what })]);
}

function newer(what: Words): Outcome<never> {
  return fail("payloadNewer", [messages.wasMadeByNewer({ what })]);
}

function notACheck(what: Words): Outcome<never> {
  return fail("payloadForeign", [messages.holdsNoCheckFrom({ what })]);
}
