import { describe, expect, it } from "vitest";
import type { Outcome } from "../../src/physics/outcome.ts";
import { crc32 } from "../../src/records/bytes/checksum.ts";
import { inModelUnits } from "../../src/saying/modelUnits.ts";
import { said } from "../../src/saying/texts.ts";
import {
  addCode,
  type CodeCollection,
  missingCodes,
  missingWords,
  readCode,
  type Scanned,
} from "../../src/sharing/codeCollection.ts";
import type { Frame } from "../../src/sharing/frame.ts";
import { payloadText } from "../../src/sharing/payload.ts";

const body = Uint8Array.of(1, 2, 3, 4, 5, 6);
const mark = crc32(body);
const part = (number: number, more: Partial<Frame> = {}): Frame => ({
  photosLeftOut: 1,
  parts: 3,
  part: number,
  mark,
  body: body.subarray(2 * number, 2 * number + 2),
  ...more,
});

const told = (outcome: Outcome<unknown>) =>
  outcome.ok ? "" : `${outcome.fault.code}: ${inModelUnits(outcome.fault.sentence)}`;

function scanned(outcome: Outcome<Scanned>): Scanned {
  if (!outcome.ok) throw new Error(told(outcome));
  return outcome.value;
}

function collected(...frames: readonly Frame[]): CodeCollection {
  let collection: CodeCollection | null = null;
  for (const frame of frames) collection = scanned(addCode(collection, frame)).collection;
  if (collection === null) throw new Error("none");
  return collection;
}

describe("codes that are scanned", () => {
  it("are whole once all are there, in whatever order, and those seen again change nothing", () => {
    const two = collected(part(2), part(0));
    expect(missingCodes(two)).toEqual([2]);
    const again = scanned(addCode(two, part(0)));
    expect(again).toMatchObject({ repeated: true, whole: null });
    const last = scanned(addCode(two, part(1)));
    expect(last.repeated).toBe(false);
    expect(last.whole).toEqual({ photosLeftOut: 1, parts: 1, part: 0, mark, body });
    expect("version" in (last.whole ?? {})).toBe(false);
    expect(said(missingWords(last.collection))).toBe("no code is missing");
  });

  it("of the first version of links stay of that version", () => {
    const of = (number: number) => part(number, { version: 1 });
    const last = scanned(addCode(collected(of(0), of(1)), of(2)));
    expect(last.whole?.version).toBe(1);
  });

  it("of another check are refused, by their number of parts or the mark of their set", () => {
    const begun = collected(part(0));
    const words =
      "codeOfAnotherCheck: This code belongs to another check. Of the check you started, codes 2 and 3 of 3 are missing. Scan those, or start over with this one.";
    expect(told(addCode(begun, part(1, { parts: 4 })))).toBe(words);
    expect(told(addCode(begun, part(1, { mark: mark ^ 1 })))).toBe(words);
    expect(said(missingWords(collected(part(0), part(1))))).toBe("code 3 of 3 is missing");
  });

  it("that do not make what the set's sum says are refused", () => {
    const other = part(2, { body: Uint8Array.of(9, 9) });
    expect(told(addCode(collected(part(0), part(1)), other))).toBe(
      "codesDisagree: The codes do not fit together: at least one is of another check. Start over and scan them all again.",
    );
  });

  it("are read from a link in their text; any other text holds none", () => {
    const text = `https://app.example/#/open/${payloadText(part(1), "digits")}`;
    expect(readCode(text)).toEqual({ ok: true, value: part(1) });
    expect(told(readCode("https://elsewhere.example/"))).toBe(
      "codeForeign: This code holds no check from Stopfit. Look for the one on the other screen.",
    );
    expect(told(readCode(text.slice(0, -4)))).toMatch(/^payloadCut: The code is cut short/);
  });
});
