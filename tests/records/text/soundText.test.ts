import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readJsonText } from "../../../src/records/text/jsonText.ts";
import { isFarAhead, notAhead, notFarAhead } from "../../../src/records/text/moment.ts";
import {
  addressPart,
  cleanName,
  cleanText,
  cleanTexts,
  readAddressPart,
  wellFormed,
} from "../../../src/records/text/soundText.ts";

/** Any code units, halves of letters among them. */
const anyText = fc
  .array(fc.integer({ min: 0, max: 0xffff }), { maxLength: 30 })
  .map((units) => String.fromCharCode(...units));

describe("any text", () => {
  it("is made well-formed as the language itself would", () => {
    fc.assert(
      fc.property(anyText, (text) => {
        expect(wellFormed(text)).toBe(text.toWellFormed());
      }),
    );
  });

  it("is a part of an address, and what is well-formed comes back from it", () => {
    fc.assert(
      fc.property(anyText, (text) => {
        expect(readAddressPart(addressPart(text))).toBe(text.toWellFormed());
      }),
    );
    expect(readAddressPart("%")).toBeNull();
    expect(readAddressPart("%ff")).toBeNull();
  });

  it("once clean stays so, and has no control and no mark of direction", () => {
    fc.assert(
      fc.property(anyText, (text) => {
        const clean = cleanText(text);
        expect(cleanText(clean)).toBe(clean);
        expect(clean.isWellFormed()).toBe(true);
        for (const letter of clean) {
          const code = letter.codePointAt(0) ?? 0;
          const control = code < 32 || (code >= 127 && code < 160);
          expect(control && letter !== "\n" && letter !== "\t").toBe(false);
          expect(code >= 0x202a && code <= 0x202e).toBe(false);
          expect(code >= 0x2066 && code <= 0x206f).toBe(false);
          expect(code === 0x200b || code === 0x2060 || code === 0x3164).toBe(false);
        }
        expect(cleanName(text)).not.toMatch(/[\n\t]|^\s|\s$/);
      }),
    );
  });
});

describe("names", () => {
  it.each([
    ["a mark that turns what follows", "Marlow \u202eFITS\u202c", "Marlow FITS"],
    ["isolates", "\u2066Tern\u2069", "Tern"],
    ["controls and line ends", " Tern\u0000\u001b[2J\r\nrear\u2028axle ", "Tern[2J rear axle"],
    ["half a letter", "Brant \ud83d", "Brant \ufffd"],
    ["letters that show nothing", "\u200bTe\u00adrn\u2060\u3164\u{e0041}\u061c", "Tern"],
    ["nothing but those", "\u200b\u3164 \u115f", ""],
    ["marks piled up on a letter", `T${"\u0301".repeat(60)}ern`, `T${"\u0301".repeat(8)}ern`],
    ["a variant of a letter, and joined ones", "❤\ufe0f क\u094d\u200dष", "❤\ufe0f क\u094d\u200dष"],
    ["letters of any script, joined emoji among them", "מַרְלוֹ 👩🏽‍🔧 ٣", "מַרְלוֹ 👩🏽‍🔧 ٣"],
  ])("with %s", (_, given, clean) => {
    expect(cleanName(given)).toBe(clean);
  });

  it("are cut between letters, never within one", () => {
    expect(cleanName("🔧".repeat(50), 20)).toBe(`${"🔧".repeat(20)}…`);
  });
});

describe("a value that was parsed", () => {
  it("has clean texts at every depth, its numbers and fields as they were", () => {
    const text = JSON.stringify({ a: ["x\u0000", { b: "\u202ey", c: 1, d: null }], e: "z" });
    const read = readJsonText(text, "The file");
    expect(read.ok && read.value).toEqual({ a: ["x", { b: "y", c: 1, d: null }], e: "z" });
    expect(readJsonText('{"id":"\\ud800"}', "The file")).toEqual({
      ok: true,
      value: { id: "\ufffd" },
    });
  });

  it("ends also where it holds itself, as in a database", () => {
    const circle: { name: string; self?: unknown } = { name: "a\u0007" };
    circle.self = circle;
    expect(cleanTexts(circle).name).toBe("a");
  });
});

describe("moments", () => {
  const now = new Date("2026-05-02T12:00:00Z");
  it("ahead of now are now, also those that are none", () => {
    expect(notAhead("2026-05-02T11:59:59Z", now)).toBe("2026-05-02T11:59:59Z");
    for (const moment of ["2026-05-02T12:00:01Z", "9999-12-31T00:00:00Z", "", "a day"]) {
      expect(notAhead(moment, now)).toBe("2026-05-02T12:00:00.000Z");
    }
  });

  it("of a clock that was a little wrong stay where a year from now may have been typed", () => {
    expect(isFarAhead("2027-01-01T00:00:00Z", now)).toBe(false);
    expect(notFarAhead("2027-01-01T00:00:00Z", now)).toBe("2027-01-01T00:00:00Z");
    for (const moment of ["2099-01-01T00:00:00Z", "+010000-01-01T00:00:00.000Z"]) {
      expect(isFarAhead(moment, now)).toBe(true);
      expect(notFarAhead(moment, now)).toBe("2026-05-02T12:00:00.000Z");
    }
    expect(isFarAhead("a day", now)).toBe(false);
    expect(notFarAhead("a day", now)).toBe("2026-05-02T12:00:00.000Z");
  });
});
