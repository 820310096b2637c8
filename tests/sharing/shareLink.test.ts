import { randomBytes } from "node:crypto";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Outcome } from "../../src/physics/outcome.ts";
import type { CheckRecord } from "../../src/records/check/checkRecord.ts";
import { demoPack } from "../../src/records/pack/demoPack.ts";
import { inModelUnits } from "../../src/saying/modelUnits.ts";
import { pack, unpackedBytesLimit } from "../../src/sharing/compression.ts";
import { frameBytes, packedBytesLimit } from "../../src/sharing/frame.ts";
import { payloadLength, payloadText, readPayload } from "../../src/sharing/payload.ts";
import { checkOfPayload, sharedOfPayload } from "../../src/sharing/sharedCheck.ts";
import {
  appAddress,
  findPayloads,
  linkOfPacked,
  type Packed,
  packCheck,
  packLibrary,
  replyLink,
  shareLink,
  wholeFrame,
} from "../../src/sharing/shareLink.ts";
import { toShortText } from "../../src/sharing/shortText.ts";
import { anyRecord } from "../records/arbitraries.ts";
import { demoNames, demoRecord } from "../support/demoRecords.ts";
import { reply } from "../support/sampleReply.ts";

const app = "https://stopfit.example/app/";

const demoRecords: CheckRecord[] = demoNames.map(demoRecord);

const withoutPhotos = ({ photos: _, ...rest }: CheckRecord) => rest;

function linkOf(record: CheckRecord): string {
  const link = shareLink(record, app);
  if (!link.ok) throw new Error(inModelUnits(link.fault.sentence));
  return link.value.address;
}

function payloadOf(record: CheckRecord): string {
  return linkOf(record).split("#/open/")[1] ?? "";
}

/** Sent by version 1 for the demo check arm-needs-taller: it must open for ever. */
const sentPayload = [
  "1bAAEAAAEgrZddbsIwDICv0gMEq44dJ7nA3nYIxjapElKljj3wwN1nBw0JmlBQechD_9TYsr8vfgaE8i073OWvOy",
  "D0LRDSBYQLELzG3T_R3reTqqbjzec4Tt3vYdgPh6Prpu3wo72k8TaxGLQ5WmeJl-LQ8hq8LqoTEVGX5ecWichzIB",
  "YaLreefs3mnlktxtAoxPJgdRWyPFmCiptZDeL9RtN3KFdjswRXY7NUrI8tviC2vjTXTGhv6qlxOm7OA0v3sR9Lpy",
  "15jK1sqhLzZPPSRWMeUkouRxWU6Qyiuglz7iHrZQIRcoScIJrZdKfBsfiiOQam5ESYy-kTI5CqLAefIBX5gUdySB",
  "LOx9PyY8wcPMh619mwOR_J9ObjruOW6zSyuuv60-kPi_izOAe",
].join("");

describe("a link", () => {
  it("that was sent opens for ever", () => {
    expect(checkOfPayload(sentPayload)).toEqual({
      ok: true,
      value: { record: demoRecord("arm-needs-taller"), photosLeftOut: 0 },
    });
  });

  it("gives the very same record, text for text, but for its photos", () => {
    fc.assert(
      fc.property(anyRecord, (record) => {
        const [payload = ""] = findPayloads(linkOf(record));
        const shared = checkOfPayload(payload);
        expect(shared).toEqual({
          ok: true,
          value: {
            record: record.photos?.length === 0 ? record : withoutPhotos(record),
            photosLeftOut: record.photos?.length ?? 0,
          },
        });
        if (shared.ok && !record.photos?.length) {
          expect(JSON.stringify(shared.value.record)).toBe(JSON.stringify(record));
        }
      }),
    );
  });

  it("gives demo checks again and stays short enough for any program", () => {
    expect(demoRecords.length).toBeGreaterThanOrEqual(5);
    for (const record of demoRecords) {
      const link = shareLink(record, app);
      expect(link).toMatchObject({ ok: true, value: { long: false, photosLeftOut: 0 } });
      expect(checkOfPayload(payloadOf(record))).toMatchObject({ ok: true, value: { record } });
      // The longest carries the doubt that its stop's test left open.
      expect(linkOf(record).length).toBeLessThan(750);
    }
  });

  it("keeps everything behind the #, which no browser sends to a server (RFC 3986, 3.5)", () => {
    for (const record of demoRecords) {
      const url = new URL(linkOf(record));
      expect(`${url.origin}${url.pathname}${url.search}`).toBe(app);
      expect(url.hash).toMatch(/^#\/open\/2b[A-Za-z0-9_-]+e$/);
    }
  });

  it("keeps a script and an odd key as text, and half a letter as its replacement", () => {
    const [demo] = demoRecords;
    const odd = {
      ...demo,
      vehicle: { ...demo?.vehicle, label: "<script>alert(1)</script> \ud800 \u2028 “é” 🛻" },
      "x-constructor": { toString: "no function" },
    } as CheckRecord;
    const label = "<script>alert(1)</script> \ufffd \n “é” 🛻";
    expect(checkOfPayload(payloadOf(odd))).toEqual({
      ok: true,
      value: { record: { ...odd, vehicle: { ...odd.vehicle, label } }, photosLeftOut: 0 },
    });
  });

  const told = (outcome: Outcome<unknown>) =>
    outcome.ok ? "" : `${outcome.fault.code}: ${inModelUnits(outcome.fault.sentence)}`;
  const tooLarge =
    "tooLargeForLink: This check is too large for a link or a code: its notes or test data are very long. Send it as a file.";

  it("is refused for a check that no link can hold, with another way named", () => {
    const notes = randomBytes(100_000).toString("hex");
    expect(told(shareLink({ ...demoRecord("arm-fits"), notes }, app))).toBe(tooLarge);
  });

  it("holds a check as long as may be once unpacked, and no byte more", () => {
    const noted = (notes: string) => ({ ...demoRecord("arm-fits"), notes });
    const room = unpackedBytesLimit - Buffer.byteLength(toShortText(noted("")));
    expect(told(shareLink(noted("a".repeat(room)), app))).toBe("");
    expect(told(shareLink(noted("a".repeat(room + 1)), app))).toBe(tooLarge);
    // A letter of two bytes.
    expect(told(shareLink(noted(`${"a".repeat(room - 1)}é`), app))).toBe(tooLarge);
  });

  /** A text of letters by chance for which what is packed takes the very bytes that a link may hold. */
  function longestText(packedLength: (text: string) => number): string {
    const letters = randomBytes(40_000).toString("base64url");
    // One more letter may be packed into two more bytes: then it is tried from the next letter on.
    for (let from = 0; from < 200; from++) {
      let [fits, tooLong] = [from, letters.length];
      while (tooLong - fits > 1) {
        const middle = Math.floor((fits + tooLong) / 2);
        if (packedLength(letters.slice(from, middle)) <= packedBytesLimit) fits = middle;
        else tooLong = middle;
      }
      const text = letters.slice(from, fits);
      if (packedLength(text) === packedBytesLimit) return text;
    }
    throw new Error("No text is packed into just so many bytes.");
  }

  it("holds as many packed bytes as may be, of a library and of a reply", () => {
    const library = (name: string) => ({ ...demoPack, name });
    const name = longestText((text) => pack(JSON.stringify(library(text))).length);
    expect(told(packLibrary(library(name)))).toBe("");
    expect(told(packLibrary(library(`${name}${name.slice(0, 40)}`)))).toBe(
      "tooLargeForLink: This library is too large for a link or a code. Hand it over as a file.",
    );
    const text = longestText((some) => pack(JSON.stringify({ ...reply, text: some })).length);
    expect(replyLink({ ...reply, text }, app)).toMatch(/#\/open\/2b/);
    expect(replyLink({ ...reply, text: `${text}${text.slice(0, 40)}` }, app)).toBeNull();
  });

  it("opens a reply on the phone that made its check", () => {
    const address = replyLink(reply, app) ?? "";
    expect(address.startsWith(`${app}#/open/2b`)).toBe(true);
    const [payload = ""] = findPayloads(address);
    expect(sharedOfPayload(payload)).toEqual({ ok: true, value: { kind: "reply", reply } });
  });

  it("says that it is long from the first character on that some programs cut", () => {
    const packed: Outcome<Packed> = packCheck(demoRecord("arm-fits"));
    const linkAt = (address: string) => {
      const link = linkOfPacked(packed, address);
      if (!link.ok) throw new Error(link.fault.code);
      return link.value;
    };
    const more = 2000 - linkAt(app).address.length;
    const longest = linkAt(`${app}${"a".repeat(more)}`);
    expect([longest.address.length, longest.long]).toEqual([2000, false]);
    expect(linkAt(`${app}${"a".repeat(more + 1)}`).long).toBe(true);
  });

  it("leaves out what is open now from its address", () => {
    expect(appAddress(new URL("https://stopfit.example/app/?a=1#/check/1/answer"))).toBe(app);
  });
});

describe("a payload", () => {
  const frames = anyRecord.map((record) => {
    const packed = packCheck(record);
    if (!packed.ok) throw new Error(packed.fault.code);
    return wholeFrame(packed.value);
  });
  const spelling = fc.constantFrom("letters" as const, "digits" as const);

  it("spells its frame in letters and in digits, and its length is known before", () => {
    fc.assert(
      fc.property(frames, spelling, (frame, how) => {
        const text = payloadText(frame, how);
        expect(text).toHaveLength(payloadLength(frameBytes(frame).length, how));
        expect(readPayload(text)).toEqual({ ok: true, value: frame });
      }),
    );
  });

  it("is recognised as cut wherever it is cut, and says so", () => {
    fc.assert(
      fc.property(frames, fc.double({ min: 0, max: 1, noNaN: true }), (frame, share) => {
        const text = payloadText(frame, "letters");
        const outcome = readPayload(text.slice(0, Math.floor(share * (text.length - 2))));
        expect(outcome.ok).toBe(false);
        if (!outcome.ok && outcome.fault.code !== "payloadForeign") {
          expect(outcome.fault.code).toBe("payloadCut");
          expect(inModelUnits(outcome.fault.sentence)).toContain("cut short");
        }
      }),
    );
  });

  it("does without the letter that ends it, and with what stands behind it", () => {
    fc.assert(
      fc.property(
        frames,
        spelling,
        fc.constantFrom("", ".", ")", ">", " and more", "\n"),
        (frame, how, tail) => {
          const text = payloadText(frame, how).replace(/e$/, "");
          expect(readPayload(`${text}${tail}`)).toEqual({ ok: true, value: frame });
        },
      ),
    );
  });

  it("is refused when any one character of it was changed", () => {
    fc.assert(
      fc.property(frames, fc.nat(), fc.constantFrom(..."Aa0Z_-9"), (frame, where, letter) => {
        const text = payloadText(frame, "letters");
        const at = 2 + (where % (text.length - 4));
        fc.pre(text[at] !== letter);
        const outcome = readPayload(`${text.slice(0, at)}${letter}${text.slice(at + 1)}`);
        expect(outcome.ok).toBe(false);
      }),
    );
  });

  it("ends in an outcome whatever it is", () => {
    const junk = fc.oneof(
      fc.string({ maxLength: 300 }),
      fc.base64String({ maxLength: 300 }).map((text) => `1b${text}`),
      fc.array(fc.nat(9), { maxLength: 300 }).map((digits) => `1d${digits.join("")}`),
      fc.uint8Array({ maxLength: 300 }).map((bytes) => {
        const body = bytes.length > 0 ? bytes : new Uint8Array([1]);
        return payloadText({ photosLeftOut: 0, parts: 1, part: 0, mark: 0, body }, "letters");
      }),
      fc.json().map((text) => {
        const packed = packCheck(JSON.parse(`{"a":${text}}`));
        return packed.ok ? payloadText(wholeFrame(packed.value), "letters") : "";
      }),
    );
    fc.assert(
      fc.property(junk, (text) => {
        const outcome = checkOfPayload(text);
        expect(outcome.ok).toBe(false);
        if (!outcome.ok) expect(inModelUnits(outcome.fault.sentence)).not.toBe("");
      }),
      { numRuns: 2000 },
    );
  });

  it.each([
    ["nothing", "", "payloadCut"],
    ["a lone version", "1", "payloadForeign"],
    ["the beginning alone", "1b", "payloadCut"],
    ["one of a newer version", "3bAAAA", "payloadNewer"],
    ["one of version 0", "0bAAAA", "payloadForeign"],
    ["one in another spelling", "1zAAAA", "payloadForeign"],
    ["another text", "hello", "payloadForeign"],
    ["one too long to be looked at", `1b${"A".repeat(300_000)}`, "payloadTooLong"],
  ])("that is %s has its own fault", (_, text, code) => {
    expect(readPayload(text)).toMatchObject({ ok: false, fault: { code } });
  });
});
