import { describe, expect, it } from "vitest";
import type { Outcome } from "../../src/physics/outcome.ts";
import { crc32 } from "../../src/records/bytes/checksum.ts";
import { demoPack } from "../../src/records/pack/demoPack.ts";
import { base64Of } from "../../src/records/photo/soundPhotos.ts";
import { inModelUnits } from "../../src/saying/modelUnits.ts";
import { pack } from "../../src/sharing/compression.ts";
import type { Frame } from "../../src/sharing/frame.ts";
import { payloadText } from "../../src/sharing/payload.ts";
import {
  checkOfFrame,
  checkOfPayload,
  checkOnly,
  sharedCheck,
  sharedOfFrame,
  sharedOfPayload,
  sharedPack,
  sharedReply,
} from "../../src/sharing/sharedCheck.ts";
import { packCheck, wholeFrame } from "../../src/sharing/shareLink.ts";
import { demoRecord } from "../support/demoRecords.ts";
import { plainJpeg } from "../support/jpegs.ts";
import { reply } from "../support/sampleReply.ts";

const demo = demoRecord("arm-fits");

/** A link or a code that holds the very text. */
const holding = (text: string): Frame => wholeFrame({ photosLeftOut: 0, body: pack(text) });
const told = (outcome: Outcome<unknown>) =>
  outcome.ok ? "" : `${outcome.fault.code}: ${inModelUnits(outcome.fault.sentence)}`;

describe("a check from outside", () => {
  const photo = (data: string) => ({
    type: "image/jpeg" as const,
    data,
    caption: "",
  });
  const picture = photo(base64Of(plainJpeg()));

  it("keeps photos that are pictures, and counts those that are none", () => {
    expect(sharedCheck({ ...demo, photos: [picture] }, 2)).toEqual({
      record: { ...demo, photos: [picture] },
      photosLeftOut: 2,
    });
    expect(sharedCheck({ ...demo, photos: [photo("AAAA"), picture, photo("")] })).toEqual({
      record: { ...demo, photos: [picture] },
      photosLeftOut: 0,
      photosRefused: 2,
    });
  });

  it("says nothing of photos where it came with none", () => {
    expect(Object.keys(sharedCheck(demo))).toEqual(["record", "photosLeftOut"]);
  });
});

describe("a frame", () => {
  it("holds a check, in short or in full, a reply or a parts library", () => {
    const packed = packCheck(demo);
    if (!packed.ok) throw new Error("not packed");
    const check = { kind: "check", check: { record: demo, photosLeftOut: 3 } };
    expect(sharedOfFrame({ ...wholeFrame(packed.value), photosLeftOut: 3 })).toEqual({
      ok: true,
      value: check,
    });
    expect(sharedOfFrame({ ...holding(JSON.stringify(demo)), photosLeftOut: 3 })).toEqual({
      ok: true,
      value: check,
    });
    expect(sharedOfFrame(holding(JSON.stringify(reply)))).toEqual({
      ok: true,
      value: { kind: "reply", reply },
    });
    expect(sharedOfFrame(holding(JSON.stringify(demoPack)))).toEqual({
      ok: true,
      value: { kind: "pack", pack: demoPack },
    });
  });

  it("that is one of several says which, and names what it came as", () => {
    const frame = { ...holding("{}"), parts: 4, part: 2 };
    const words = (what: string) =>
      `oneCodeOfSeveral: ${what} holds only part 3 of 4 of a check. Scan the other codes too.`;
    expect(told(sharedOfFrame(frame))).toBe(words("The link"));
    expect(told(sharedOfFrame(frame, "The code"))).toBe(words("The code"));
    expect(told(checkOfFrame(frame))).toBe(words("The link"));
  });

  it("that can't be unpacked is told as such", () => {
    const body = Uint8Array.of(255, 255, 255);
    expect(told(sharedOfFrame({ ...holding("{}"), body, mark: crc32(body) }))).toBe(
      "packedUnreadable: What was sent can't be unpacked: it is damaged, or not a check. Ask for it to be sent again.",
    );
  });

  it("with a text that is no check says what is wrong with it", () => {
    expect(told(sharedOfFrame(holding("{}")))).toBe(
      "otherFormat: The link is not a fitment check: it does not say that it is one.",
    );
    expect(told(sharedOfFrame(holding("no JSON"), "The code"))).toMatch(/^\w+: The code /);
  });

  it("with a reply or a library that is damaged says so of that, by what it came as", () => {
    const damaged = { ...reply, kind: "undo" };
    const notWhole =
      "notAReply: The link is not a whole reply. Ask the review desk to send it again.";
    expect(told(sharedOfFrame(holding(JSON.stringify(damaged))))).toBe(notWhole);
    expect(told(sharedReply(JSON.stringify(damaged), "The link"))).toBe(notWhole);
    const library = JSON.stringify({ ...demoPack, stops: "none" });
    expect(told(sharedOfFrame(holding(library), "The code"))).toMatch(/^\w+: .+/);
    expect(sharedPack(library, "The code")).toEqual({
      ok: false,
      fault: expect.objectContaining({ code: expect.any(String) }),
    });
  });
});

describe("where only a check has a place", () => {
  it("a check goes on, and a fault", () => {
    const check = { record: demo, photosLeftOut: 0 };
    expect(checkOnly({ ok: true, value: { kind: "check", check } }, "The file")).toEqual({
      ok: true,
      value: check,
    });
    expect(told(checkOfPayload("hello"))).toBe(
      "payloadForeign: The link holds no check from Stopfit. Look whether it is the right one.",
    );
    expect(told(sharedOfPayload("hello"))).toBe(
      "payloadForeign: The link holds no check from Stopfit. Look whether it is the right one.",
    );
  });

  it("a reply and a library are told where they belong", () => {
    expect(told(checkOnly({ ok: true, value: { kind: "pack", pack: demoPack } }, "The file"))).toBe(
      "packNotCheck: The file is a parts library, no check. Open it under “Parts library”.",
    );
    const words =
      "replyNotCheck: The link is a reply from a review desk. Open it on the phone that sent the check.";
    const frame = holding(JSON.stringify(reply));
    expect(told(checkOfFrame(frame))).toBe(words);
    expect(told(checkOfPayload(payloadText(frame, "letters")))).toBe(words);
    expect(told(checkOfPayload(payloadText(frame, "digits"), "The code"))).toBe(
      words.replace("The link", "The code"),
    );
  });
});
