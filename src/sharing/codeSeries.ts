import { fail, type Outcome, succeed } from "../physics/outcome.ts";
import { crc32 } from "../records/bytes/checksum.ts";
import type { CheckRecord } from "../records/check/checkRecord.ts";
import * as messages from "../words/compiled/sharing.ts";
import { digitsLength } from "./decimalDigits.ts";
import { type Frame, frameOverhead, partsLimit } from "./frame.ts";
import { payloadText } from "./payload.ts";
import { linkTo, openPrefix, type Packed, packCheckForCode } from "./shareLink.ts";

/**
 * The largest QR code that is shown: version 14, 73 modules a side, 81 with the quiet zone of four
 * modules all round (ISO/IEC 18004). A check that needs more is split over numbered codes.
 *
 * Why 14: it is the largest whose modules are 4 whole px on a screen 360 px wide with margins of
 * 16 px. That is some 0.74 mm on a phone. A camera of 1280 × 720 that sees 65° across and is sharp
 * from 0.25 m on, as cameras at desks commonly are (common practice, no source), sees 4.0 px/mm
 * there: 3.0 px a module, at which the reader used here reads most frames, and at 2 px none
 * (tests/sharing/codeReading.test.ts).
 *
 * Error correction is level L: a screen has no torn corners, and for the same check the higher
 * levels need smaller modules, which costs more than they mend.
 */
export const largestCodeVersion = 14;

/** Data bits of a version 14 code at level L: 461 codewords (ISO/IEC 18004:2015, table 7). */
const dataBits = 461 * 8;
/** Versions 10 to 26: mode 4 bits, count of characters 16 bits (bytes), 12 bits (digits); table 3. */
const byteHeaderBits = 4 + 16;
const digitHeaderBits = 4 + 12;
/** "1d" before the digits of a payload. */
const signCharacters = 2;
/** More than this is no longer scanned by hand. */
const codesLimit = 20;

/** Digits that one code holds beside the address before them. */
export function digitsPerCode(app: string): number {
  const addressBytes = `${app}${openPrefix}`.length + signCharacters;
  const bits = dataBits - byteHeaderBits - 8 * addressBytes - digitHeaderBits;
  const lastDigits = bits % 10 >= 7 ? 2 : bits % 10 >= 4 ? 1 : 0;
  return Math.max(0, Math.floor(bits / 10) * 3 + lastDigits);
}

export interface NumberedCode {
  /** From 1. */
  readonly number: number;
  /** What comes before the digits, and the digits: a code holds each in the mode that suits it. */
  readonly address: string;
  readonly digits: string;
}

export interface CodeSeries {
  readonly codes: readonly NumberedCode[];
  readonly photosLeftOut: number;
}

/** The record without its photos and advice as a link in one code, or in as few numbered ones as hold it. */
export function codeSeries(record: CheckRecord, app: string): Outcome<CodeSeries> {
  return codesOfPacked(packCheckForCode(record), app);
}

/** What was packed in one code, or in as few numbered ones as hold it. */
export function codesOfPacked(packed: Outcome<Packed>, app: string): Outcome<CodeSeries> {
  if (!packed.ok) return packed;
  const { body, photosLeftOut } = packed.value;
  const room = digitsPerCode(app);
  let parts = 1;
  while (parts <= partsLimit && digitsLength(frameOverhead(parts) + longest(body, parts)) > room) {
    parts += 1;
  }
  if (parts > codesLimit) return tooMany;
  const mark = crc32(body);
  const codes = Array.from({ length: parts }, (_, part): NumberedCode => {
    const start = Math.floor((part * body.length) / parts);
    const end = Math.floor(((part + 1) * body.length) / parts);
    const frame: Frame = { photosLeftOut, parts, part, mark, body: body.subarray(start, end) };
    const payload = payloadText(frame, "digits");
    return {
      number: part + 1,
      address: linkTo(payload.slice(0, signCharacters), app),
      digits: payload.slice(signCharacters),
    };
  });
  return succeed({ codes, photosLeftOut });
}

function longest(body: Uint8Array, parts: number): number {
  return Math.ceil(body.length / parts);
}

const tooMany: Outcome<never> = fail("tooManyCodes", [messages.thisTakesMoreCodes]);
