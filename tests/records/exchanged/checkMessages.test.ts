import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { CheckRecord } from "../../../src/records/check/checkRecord.ts";
import { checkParts, readSentPart } from "../../../src/records/exchanged/checkMessages.ts";
import { contentHash } from "../../../src/records/exchanged/contentHash.ts";
import { withoutPersonal, withPersonal } from "../../../src/records/exchanged/personalParts.ts";
import { readingsDigest } from "../../../src/records/review/readingsDigest.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";
import { generateRecords } from "../../support/generateRecords.ts";
import { tinyPhoto } from "../../support/pictures.ts";

const [plain] = generateRecords(1);
if (!plain) throw new Error("no record");

const photo = { ...tinyPhoto, caption: "Ann's truck" };

/** A record with something of somebody in every place where there may be. */
const full: CheckRecord = {
  ...plain,
  author: { role: "customer", name: "Ann Reed", contact: "ann@reed.example" },
  notes: "Call Ann after five.",
  job: { id: "j1", label: "Visit", customer: "Ann Reed" },
  fitted: {
    partNumber: "P1",
    spacerMm: 0,
    at: "2026-05-02T09:30:00Z",
    by: "Ann Reed",
    photos: [photo],
  },
  corners: plain.corners.map((corner) => ({
    ...corner,
    ...(corner.gap && { gap: { ...corner.gap, by: "Ann Reed" } }),
  })),
  photos: [photo],
};

async function readingsOf(record: CheckRecord) {
  const { readings } = await checkParts(record);
  const read = readSentPart(readings.body);
  if (!read.ok || read.value.kind !== "readings") throw new Error("not read");
  return read.value;
}

describe("a check in pieces", () => {
  it("the readings hold nobody's name, contact, note or photo, and are judged the same", async () => {
    const { readings, personal, photos } = await checkParts(full);
    expect(readings.body).not.toMatch(/Ann|reed|five/);
    expect(readings.body).not.toContain(photo.data);
    expect(personal?.body).toMatch(/ann@reed\.example.*Ann Reed.*Call Ann/s);
    expect(photos).toHaveLength(1);
    const { record } = await readingsOf(full);
    expect(readingsDigest(record)).not.toBe("");
    expect(record.author).toEqual({ role: "customer" });
  });

  it("together they are the check again, but for photos of the fitted part", async () => {
    const { personal, photos } = await checkParts(full);
    const { record } = await readingsOf(full);
    const texts = readSentPart(personal?.body ?? "");
    if (!texts.ok || texts.value.kind !== "personal") throw new Error("not read");
    const { fitted, photos: _, ...rest } = full;
    const { photos: _fitted, ...fittedOnly } = fitted ?? {};
    expect(withPersonal(record, texts.value.texts)).toEqual({ ...rest, fitted: fittedOnly });
    const picture = readSentPart(photos[0]?.body ?? "");
    expect(picture).toMatchObject({ ok: true, value: { kind: "photo", photo } });
  });

  it("one content gives one set of hashes, however its fields are ordered; another gives others", async () => {
    const turned = Object.fromEntries(Object.entries(full).reverse()) as unknown as CheckRecord;
    expect(await checkParts(turned)).toEqual(await checkParts(full));
    const renamed = { ...full, author: { ...full.author, name: "Bea" } };
    const [one, other] = [await checkParts(full), await checkParts(renamed)];
    expect(other.personal?.hash).not.toBe(one.personal?.hash);
    expect(other.readings.hash).not.toBe(one.readings.hash);
    expect(other.photos).toEqual(one.photos);
  });

  it("the hash is SHA-256 (FIPS 180-4, example of one block: abc)", async () => {
    expect(await contentHash("abc")).toBe(
      "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad",
    );
  });

  it("generated checks come through as they were", async () => {
    for (const record of generateRecords(40)) {
      const { record: bare, texts } = withoutPersonal(record);
      const { photos: _, ...without } = record;
      expect(withPersonal(bare as CheckRecord, texts)).toEqual(without);
      expect((await readingsOf(record)).record).toEqual(JSON.parse(JSON.stringify(bare)));
    }
  });
});

describe("what comes in is not trusted", () => {
  it("a text for a place that is nobody's is passed over", () => {
    const texts = {
      "/stop/name": "other",
      "/__proto__/by": "x",
      "/corners/9/gap/by": "x",
      "/author/name": "Ann",
    };
    const changed = withPersonal(plain, texts);
    expect(changed).toEqual({ ...plain, author: { ...plain.author, name: "Ann" } });
    expect(Object.hasOwn(Object.prototype, "by")).toBe(false);
  });

  it("anything else than a piece of a check is refused in a sentence, and nothing throws", () => {
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string(),
          fc.json(),
          fc
            .object()
            .map((o) =>
              JSON.stringify({ format: "stopfit-sent", version: 1, kind: "readings", ...o }),
            ),
        ),
        (text) => {
          const read = readSentPart(text);
          expect(read.ok).toBe(false);
          if (!read.ok) expect(inModelUnits(read.fault.sentence).length).toBeGreaterThan(10);
        },
      ),
      { numRuns: 300 },
    );
  });

  it("a check by its own rules, a newer version and a photo that is no picture", async () => {
    const { readings } = await checkParts(plain);
    const spoilt = readings.body.replace(/"values":\[[^\]]*\]/, '"values":[]');
    expect(readSentPart(spoilt).ok).toBe(false);
    const newer = readings.body.replace(/"version":1\}$/, '"version":9}');
    expect(readSentPart(newer)).toMatchObject({ ok: false, fault: { code: "newerVersion" } });
    const { photos } = await checkParts({
      ...plain,
      photos: [{ type: "image/jpeg", data: "AAAA" }],
    });
    expect(readSentPart(photos[0]?.body ?? "")).toMatchObject({
      ok: false,
      fault: { code: "sentNoPicture" },
    });
  });
});
