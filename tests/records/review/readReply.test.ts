import { describe, expect, it } from "vitest";
import { recordBounds } from "../../../src/records/check/recordFormat.ts";
import { looksLikeReply, readReplyText } from "../../../src/records/review/readReply.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";
import { reply as sampleReply } from "../../support/sampleReply.ts";

/** As before replies said which readings they answer. */
const { answers: _, ...reply } = sampleReply;

function refusal(change: object): string {
  const read = readReplyText(JSON.stringify({ ...reply, ...change }), "The link");
  return read.ok ? "" : `${read.fault.code}: ${inModelUnits(read.fault.sentence)}`;
}

describe("a reply", () => {
  it("is read as it was written, with what it answers where it says so", () => {
    for (const kind of ["accept", "askAgain", "otherPart"]) {
      for (const axle of ["front", "rear"]) {
        const own = { ...reply, kind, axle, answers: "digest" };
        expect(readReplyText(JSON.stringify(own))).toEqual({ ok: true, value: own });
      }
    }
    expect(refusal({})).toBe("");
  });

  it("of a newer version is told as such, and asks for an update", () => {
    expect(refusal({ version: 2 })).toBe(
      "newerVersion: The link was made by a newer version of Stopfit. Update Stopfit, then open it again.",
    );
    expect(refusal({ version: 1.5, kind: "else" })).toMatch(/^newerVersion/);
  });

  it.each([
    { version: 0 },
    { version: "2" },
    { version: null },
    { format: "stopfit-check" },
    { id: "" },
    { id: 5 },
    { id: "a".repeat(recordBounds.labelCharacters + 1) },
    { checkId: "" },
    { checkId: undefined },
    { answers: "a".repeat(recordBounds.labelCharacters + 1) },
    { createdAt: 5 },
    { from: "a".repeat(recordBounds.labelCharacters + 1) },
    { kind: "" },
    { kind: "undo" },
    { vehicle: null },
    { axle: "" },
    { readings: "left.gap" },
    { readings: ["left.gap<"] },
    { readings: [" left.gap"] },
    { readings: [""] },
    { readings: Array(101).fill("left.gap") },
    { text: 1 },
    { text: "a".repeat(recordBounds.notesCharacters + 1) },
  ])("with %o is no whole reply", (change) => {
    expect(refusal(change)).toBe(
      "notAReply: The link is not a whole reply. Ask the review desk to send it again.",
    );
  });

  it("at its bounds is read", () => {
    expect(refusal({ readings: Array(100).fill("left.gap") })).toBe("");
    expect(refusal({ text: "a".repeat(recordBounds.notesCharacters), from: "" })).toBe("");
    expect(refusal({ id: "a".repeat(recordBounds.labelCharacters) })).toBe("");
  });

  it("longer than its fields could ever be is not read at all", () => {
    const padded = (length: number) => JSON.stringify(reply).padEnd(length, " ");
    expect(readReplyText(padded(500_000)).ok).toBe(true);
    expect(readReplyText(padded(500_001)).ok).toBe(false);
  });

  it("that is no JSON, or none of a reply's, is told by what it came as", () => {
    for (const text of ["[]", "null", "5", '"a"']) {
      const read = readReplyText(text);
      expect(read.ok ? "" : inModelUnits(read.fault.sentence)).toBe(
        "The file is not a whole reply. Ask the review desk to send it again.",
      );
    }
    const cut = readReplyText("{", "The link");
    expect(cut.ok ? "" : inModelUnits(cut.fault.sentence)).toMatch(/^The link is cut off/);
  });

  it("dated ahead counts as of now", () => {
    const read = readReplyText(JSON.stringify({ ...reply, createdAt: "9999-01-01T00:00:00Z" }));
    expect(read.ok && Date.parse(read.value.createdAt) <= Date.now()).toBe(true);
  });

  it("is told from a check by its beginning", () => {
    expect(looksLikeReply(JSON.stringify(reply))).toBe(true);
    expect(looksLikeReply('\ufeff \n{ "format" : "stopfit-reply"')).toBe(true);
    expect(looksLikeReply('{"format":"stopfit-check","notes":"{"')).toBe(false);
    expect(looksLikeReply(`x${JSON.stringify(reply)}`)).toBe(false);
    expect(looksLikeReply('{"id":1,"format":"stopfit-reply"}')).toBe(false);
  });
});
