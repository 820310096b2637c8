import { describe, expect, it } from "vitest";
import { crc32 } from "../../src/records/bytes/checksum.ts";
import { inModelUnits } from "../../src/saying/modelUnits.ts";
import type { Frame } from "../../src/sharing/frame.ts";
import {
  payloadLength,
  payloadLengthOf,
  payloadText,
  readPayload,
} from "../../src/sharing/payload.ts";

const body = Uint8Array.from({ length: 40 }, (_, at) => at * 6);
const frame: Frame = { photosLeftOut: 1, parts: 1, part: 0, mark: crc32(body), body };
const letters = payloadText(frame, "letters");
const digits = payloadText(frame, "digits");

function refusal(text: string, what = "It"): string {
  const read = readPayload(text, what);
  return read.ok ? "" : `${read.fault.code}: ${inModelUnits(read.fault.sentence)}`;
}

const foreign = "payloadForeign: It holds no check from Stopfit. Look whether it is the right one.";
const altered =
  "payloadAltered: It is damaged: a part of it was changed on the way. Ask for it to be sent again, or for the check as a file.";
const missing =
  "payloadCut: It is cut short: nearly all of it is missing. Ask for it to be sent again, or for the check as a file.";

describe("a payload", () => {
  it("reads back as its frame in either spelling, with spaces around and whatever follows it", () => {
    for (const text of [letters, digits]) {
      for (const given of [text, `  ${text}\n`, `${text} and words`, `${text}.`]) {
        expect(readPayload(given)).toEqual({ ok: true, value: frame });
      }
    }
    expect(readPayload(letters.slice(0, -1))).toEqual({ ok: true, value: frame });
    expect(readPayload(`${digits}77`)).toEqual({ ok: true, value: frame });
    expect(payloadLength(50, "letters")).toBe(2 + 67 + 1);
    expect(payloadLength(50, "digits")).toBe(2 + 7 * 17 + 3);
  });

  it("of the first version says so, for it was packed with other words", () => {
    expect(readPayload(`1${letters.slice(1)}`)).toEqual({
      ok: true,
      value: { ...frame, version: 1 },
    });
    expect(readPayload(letters)).toEqual({ ok: true, value: frame });
  });

  it("of a newer version, of none and of another kind is told", () => {
    expect(refusal(`3${letters.slice(1)}`)).toBe(
      "payloadNewer: It was made by a newer version of Stopfit than this one. Update Stopfit, then open it again.",
    );
    for (const none of [
      `0${letters.slice(1)}`,
      `2x${letters.slice(2)}`,
      "hello",
      `x${letters}`,
      "2",
      "2B",
    ]) {
      expect([none.slice(0, 4), refusal(none)]).toEqual([none.slice(0, 4), foreign]);
    }
    expect(refusal("")).toBe(missing);
    expect(refusal("  ")).toBe(missing);
    const nameless = readPayload("hello");
    expect(nameless.ok ? "" : inModelUnits(nameless.fault.sentence)).toMatch(
      /^The link holds no check/,
    );
  });

  it("that was cut or changed is told, with how much of it arrived", () => {
    const wanted = letters.length - 3;
    for (const [text, all] of [
      [letters.slice(0, -1), wanted],
      [digits, digits.length - 2],
    ] as const) {
      const cut = text.slice(0, -1);
      expect(refusal(cut)).toBe(
        `payloadCut: It is cut short: ${all - 1} of ${all} characters arrived. Ask for it to be sent again, or for the check as a file.`,
      );
    }
    expect(refusal("2b")).toBe(missing);
    expect(refusal("2bAAAA")).toBe(missing);
    expect(refusal("2d")).toBe(missing);
    expect(refusal("2d99999999999999999")).toBe(altered);
    const at = 30;
    const other = letters[at] === "A" ? "B" : "A";
    expect(refusal(`${letters.slice(0, at)}${other}${letters.slice(at + 1)}`)).toBe(altered);
    // The second group of digits holds more than its bytes can.
    expect(refusal(`${digits.slice(0, 2 + 17)}${"9".repeat(17)}${digits.slice(2 + 34)}`)).toBe(
      altered,
    );
  });

  it("longer than any there can be is not read, to the letter", () => {
    const words =
      "payloadTooLong: It is longer than any link with a check. Ask for the check as a file.";
    expect(refusal(`${letters} `.padEnd(200_001, "x"))).toBe(words);
    expect(refusal(`${letters} `.padEnd(200_000, "x"))).toBe("");
    // One that says of itself that it is longer.
    expect(refusal("2bAQEA____")).toBe(altered);
  });
});

describe("how many letters a payload has", () => {
  it("is told by its beginning, whatever follows", () => {
    for (const [text, end] of [
      [letters, 1],
      [digits, 0],
    ] as const) {
      const whole = text.length - end;
      for (const length of [20, 25, text.length]) {
        expect(payloadLengthOf(text.slice(0, length))).toBe(whole);
      }
    }
    expect(payloadLengthOf(`${letters}  more words`)).toBe(letters.length - 1);
  });

  it("is not told by too little, by no payload, and by one that is too long", () => {
    for (const none of [
      "",
      "2",
      "2b",
      letters.slice(0, 6),
      digits.slice(0, 9),
      "2x".padEnd(30, "A"),
      "2b&&&&&&&&&&&&",
    ]) {
      expect([none, payloadLengthOf(none)]).toEqual([none, null]);
    }
    // 150,000 bytes make 200,000 letters and two before them.
    const lengthOf = (bytes: number) =>
      Buffer.from([0, 1, 0, bytes >> 16, (bytes >> 8) & 255, bytes & 255, 0]).toString("base64url");
    expect(payloadLengthOf(`2b${lengthOf(149_988)}`)).toBe(2 + Math.ceil((149_998 * 4) / 3));
    expect(payloadLengthOf(`2b${lengthOf(150_000)}`)).toBeNull();
  });
});
