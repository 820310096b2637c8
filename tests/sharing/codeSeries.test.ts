import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { crc32 } from "../../src/records/bytes/checksum.ts";
import type { CheckRecord } from "../../src/records/check/checkRecord.ts";
import { inModelUnits } from "../../src/saying/modelUnits.ts";
import { said } from "../../src/saying/texts.ts";
import {
  addCode,
  type CodeCollection,
  missingCodes,
  missingWords,
  readCode,
} from "../../src/sharing/codeCollection.ts";
import {
  codeSeries,
  codesOfPacked,
  digitsPerCode,
  largestCodeVersion,
} from "../../src/sharing/codeSeries.ts";
import { digitsLength } from "../../src/sharing/decimalDigits.ts";
import { type Frame, frameOverhead } from "../../src/sharing/frame.ts";
import { drawCode } from "../../src/sharing/qrDrawing.ts";
import { checkOfFrame } from "../../src/sharing/sharedCheck.ts";
import { anyRecord } from "../records/arbitraries.ts";

const app = "https://stopfit.example/app/";

/** Long enough for several codes. */
const longRecord = fc
  .tuple(anyRecord, fc.string({ minLength: 600, maxLength: 1500 }))
  .map(([record, notes]): CheckRecord => ({ ...record, notes }));

function seriesOf(record: CheckRecord) {
  const series = codeSeries(record, app);
  if (!series.ok) throw new Error(inModelUnits(series.fault.sentence));
  return series.value;
}

function textsOf(record: CheckRecord): string[] {
  return seriesOf(record).codes.map(({ address, digits }) => `${address}${digits}`);
}

function scan(texts: readonly string[], before: CodeCollection | null = null) {
  let collection = before;
  let whole = null;
  let repeats = 0;
  const faults: string[] = [];
  for (const text of texts) {
    const frame = readCode(text);
    const scanned = frame.ok ? addCode(collection, frame.value) : frame;
    if (!scanned.ok) {
      faults.push(inModelUnits(scanned.fault.sentence));
      continue;
    }
    collection = scanned.value.collection;
    repeats += scanned.value.repeated ? 1 : 0;
    whole ??= scanned.value.whole;
  }
  return { collection, whole, repeats, faults };
}

/** What goes in a code: all that a person put into it but the photos, and nothing that the app advised. */
function asInCode({ photos, advised: _, ...rest }: CheckRecord): CheckRecord {
  return photos?.length === 0 ? { ...rest, photos } : rest;
}

describe("a series of codes", () => {
  it("gives the very same record, but photos and advice, in any order, with repeats", () => {
    fc.assert(
      fc.property(
        fc.oneof(anyRecord, longRecord),
        fc.infiniteStream(fc.nat()),
        (record, numbers) => {
          const texts = textsOf(record);
          const order = texts
            .flatMap((text) => [text, text])
            .map((text) => ({ text, key: numbers.next().value ?? 0 }))
            .sort((a, b) => a.key - b.key)
            .map(({ text }) => text);
          const { whole, faults, repeats } = scan(order);
          expect(faults).toEqual([]);
          expect(repeats).toBe(texts.length);
          const shared = whole === null ? null : checkOfFrame(whole);
          expect(shared).toEqual({
            ok: true,
            value: {
              record: asInCode(record),
              photosLeftOut: record.photos?.length ?? 0,
            },
          });
        },
      ),
    );
  });

  it("fits each code into the largest version, and is no more codes than needed", () => {
    fc.assert(
      fc.property(fc.oneof(anyRecord, longRecord), (record) => {
        const { codes } = seriesOf(record);
        const room = digitsPerCode(app);
        for (const { address, digits } of codes) {
          expect(digits.length).toBeLessThanOrEqual(room);
          const drawn = drawCode(address, digits);
          expect(drawn.ok && drawn.value.size).toBeLessThanOrEqual(17 + 4 * largestCodeVersion);
        }
        const all = codes.reduce((sum, { digits }) => sum + digits.length, 0);
        if (codes.length > 1) expect(all).toBeGreaterThan(room * (codes.length - 1) * 0.9);
      }),
      { numRuns: 60 },
    );
  });

  it("uses the room of a version 14 code at level L to the last digit", () => {
    // What is left of ten bits differs with the length of the address.
    for (const more of ["", "a", "aa", "aaa", "aaaa"]) {
      const place = `${app}${more}`;
      const room = digitsPerCode(place);
      const full = drawCode(`${place}#/open/1d`, "7".repeat(room));
      expect(full).toMatchObject({ ok: true, value: { size: 73 } });
      expect(drawCode(`${place}#/open/1d`, "7".repeat(room + 1)).ok).toBe(false);
    }
    expect(digitsPerCode("a".repeat(500))).toBe(0);
  });

  const tooMany =
    "tooManyCodes: This takes more codes than anyone would scan: notes, test data or parts are many. Send it as a file or a link.";
  const codesOf = (bytes: number, place = app) => {
    const body = new Uint8Array(bytes).fill(7);
    const series = codesOfPacked({ ok: true, value: { photosLeftOut: 0, body } }, place);
    if (!series.ok) return `${series.fault.code}: ${inModelUnits(series.fault.sentence)}`;
    return series.value.codes.map(({ number }) => number);
  };
  /** Bytes of the largest part that a code of so many holds. */
  const mostBytes = (parts: number, place = app) => {
    let bytes = 1;
    while (digitsLength(frameOverhead(parts) + bytes + 1) <= digitsPerCode(place)) bytes += 1;
    return bytes;
  };

  it("is one code to the last byte, and two from the next on", () => {
    for (let more = 0; more < 30; more += 1) {
      const place = `${app}${"a".repeat(more)}`;
      expect(codesOf(mostBytes(1, place), place)).toEqual([1]);
      expect(codesOf(mostBytes(1, place) + 1, place)).toEqual([1, 2]);
    }
  });

  it("is twenty codes at most, counted from 1", () => {
    const twenty = Array.from({ length: 20 }, (_, at) => at + 1);
    expect(codesOf(20 * mostBytes(20))).toEqual(twenty);
    expect(codesOf(20 * mostBytes(20) + 1)).toBe(tooMany);
  });

  it("can't be where the app's own address fills a code", () => {
    expect(codesOf(10, "a".repeat(500))).toBe(tooMany);
  });

  it("is refused with what kept the check from being packed", () => {
    const fault = { code: "tooLargeForLink", sentence: ["Too large."] };
    expect(codesOfPacked({ ok: false, fault }, app)).toEqual({ ok: false, fault });
  });

  it("names the codes that are missing", () => {
    fc.assert(
      fc.property(longRecord, fc.nat(), (record, which) => {
        const texts = textsOf(record);
        fc.pre(texts.length > 1);
        const left = which % texts.length;
        const { collection, whole } = scan(texts.filter((_, index) => index !== left));
        expect(whole).toBeNull();
        if (collection === null) throw new Error("nothing collected");
        expect(missingCodes(collection)).toEqual([left + 1]);
        expect(said(missingWords(collection))).toBe(
          `code ${left + 1} of ${texts.length} is missing`,
        );
      }),
      { numRuns: 40 },
    );
  });

  it("lists several missing codes in words", () => {
    const collection = { parts: 4, mark: 1, photosLeftOut: 0, bodies: new Map() };
    expect(said(missingWords(collection))).toBe("codes 1, 2, 3 and 4 of 4 are missing");
  });

  it("refuses a code of another check and keeps what was scanned", () => {
    fc.assert(
      fc.property(longRecord, longRecord, (one, other) => {
        const ones = textsOf(one);
        const others = textsOf(other);
        fc.pre(ones.length > 1 && JSON.stringify(one) !== JSON.stringify(other));
        const mixed = [ones[0] ?? "", others[0] ?? "", ...ones.slice(1)];
        const { whole, faults } = scan(mixed);
        expect(faults).toHaveLength(1);
        expect(faults[0]).toContain("belongs to another check");
        expect(faults[0]).toContain(`of ${ones.length}`);
        expect(whole === null ? null : checkOfFrame(whole)).toMatchObject({
          ok: true,
          value: { record: { id: one.id } },
        });
      }),
      { numRuns: 40 },
    );
  });

  it("does not open one code of several as if it were the check", () => {
    const [record] = fc.sample(longRecord, { numRuns: 1, seed: 7 });
    if (record === undefined) throw new Error("no record");
    const frame = readCode(textsOf(record)[0] ?? "");
    expect(frame.ok && checkOfFrame(frame.value, "The code")).toMatchObject({
      ok: false,
      fault: { code: "oneCodeOfSeveral" },
    });
  });

  it.each(["", "https://example.com/", "WIFI:S:a;;", "tel:123"])(
    "says that %j is no check",
    (t) => {
      expect(readCode(t)).toMatchObject({ ok: false, fault: { code: "codeForeign" } });
    },
  );

  it("ends in an outcome whatever is scanned", () => {
    fc.assert(
      fc.property(
        fc.string().map((text) => `https://a.example/#/open/1d${text}`),
        (text) => {
          const frame = readCode(text);
          expect(frame.ok).toBe(false);
        },
      ),
    );
  });
});

describe("codes of one set", () => {
  it("whose parts are each whole but not of one check are refused, by the sum of the set", () => {
    const body = new Uint8Array([1, 2, 3, 4]);
    const mark = crc32(body);
    const part = (index: number, bytes: number[]): Frame => ({
      photosLeftOut: 0,
      parts: 2,
      part: index,
      mark,
      body: new Uint8Array(bytes),
    });
    const begun = addCode(null, part(0, [1, 2]));
    if (!begun.ok) throw new Error(begun.fault.code);
    const right = addCode(begun.value.collection, part(1, [3, 4]));
    expect(right.ok && right.value.whole?.body).toEqual(body);
    const wrong = addCode(begun.value.collection, part(1, [3, 5]));
    expect(!wrong.ok && wrong.fault.code).toBe("codesDisagree");
  });
});
