import { deflateRawSync, inflateRawSync } from "node:zlib";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { crc32 } from "../../src/records/bytes/checksum.ts";
import { inModelUnits } from "../../src/saying/modelUnits.ts";
import { pack, unpack, unpackedBytesLimit } from "../../src/sharing/compression.ts";
import { packedBytesLimit } from "../../src/sharing/frame.ts";
import { recordDictionaries } from "../../src/sharing/recordDictionary.ts";

const dictionary = Buffer.from(recordDictionaries[2]);

describe("the dictionary", () => {
  it("is the one of its version: with another, links sent before would not open", () => {
    const sums = [recordDictionaries[1], recordDictionaries[2]].map((each) => [
      each.length,
      crc32(each),
    ]);
    expect(sums).toEqual([
      [2640, 2944920697],
      [4305, 3973182011],
    ]);
  });

  it("of version 1 still packs and unpacks any text", () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 200 }), (text) => {
        const whole = text.toWellFormed();
        expect(unpack(pack(whole, 1), unpackedBytesLimit, 1)).toEqual({ ok: true, value: whole });
      }),
    );
  });
});

describe("pack and unpack", () => {
  it("give any text again", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary", maxLength: 500 }), (text) => {
        const whole = text.isWellFormed() ? text : text.toWellFormed();
        expect(unpack(pack(whole))).toEqual({ ok: true, value: whole });
      }),
    );
  });

  it("write what zlib reads with the same dictionary", () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 500 }), (text) => {
        expect(inflateRawSync(pack(text), { dictionary }).toString()).toBe(text);
      }),
    );
  });

  it("read what zlib writes with the same dictionary", () => {
    fc.assert(
      fc.property(fc.string({ minLength: 1, maxLength: 500 }), (text) => {
        const packed = new Uint8Array(deflateRawSync(text, { dictionary }));
        expect(unpack(packed)).toEqual({ ok: true, value: text });
      }),
    );
  });

  it("refuse a bomb in a sentence that states the limit", () => {
    const bomb = new Uint8Array(deflateRawSync(Buffer.alloc(30_000_000), { level: 9 }));
    expect(bomb.length).toBeLessThan(packedBytesLimit);
    const outcome = unpack(bomb);
    expect(outcome.ok).toBe(false);
    if (!outcome.ok) {
      expect(outcome.fault.code).toBe("packedTooLarge");
      expect(inModelUnits(outcome.fault.sentence)).toContain("1 MB");
    }
  });

  it("refuse stored blocks past the limit, and take exactly the limit", () => {
    const stored = (length: number) =>
      new Uint8Array(deflateRawSync(Buffer.alloc(length, 65), { level: 0 }));
    expect(unpack(stored(unpackedBytesLimit))).toMatchObject({ ok: true });
    expect(unpack(stored(unpackedBytesLimit + 1))).toMatchObject({
      ok: false,
      fault: { code: "packedTooLarge" },
    });
    expect(unpack(stored(unpackedBytesLimit + 100_000))).toMatchObject({
      ok: false,
      fault: { code: "packedTooLarge" },
    });
  });

  const told = (bytes: Uint8Array, limit?: number) => {
    const outcome = unpack(bytes, limit);
    return outcome.ok ? "" : `${outcome.fault.code}: ${inModelUnits(outcome.fault.sentence)}`;
  };

  it("say in full what can't be unpacked, and what is too large", () => {
    const unreadable =
      "packedUnreadable: What was sent can't be unpacked: it is damaged, or not a check. Ask for it to be sent again.";
    expect(told(new Uint8Array())).toBe(unreadable);
    expect(told(Uint8Array.of(255, 255))).toBe(unreadable);
    const words = (most: string) =>
      `packedTooLarge: What was sent unpacks to more than ${most}, which no check in a link or code does. It is not opened. Ask for the check as a file.`;
    expect(told(pack("x".repeat(11)), 10)).toBe(words("10 bytes"));
    expect(told(pack("x".repeat(10)), 10)).toBe("");
    expect(told(pack("x".repeat(3_200_000)), 3_145_728)).toBe(words("3 MB"));
    expect(told(pack("x".repeat(1_048_577)))).toBe(words("1 MB"));
  });

  it("keep a byte order mark, which is a letter like any other here", () => {
    expect(unpack(pack("\ufeffa"))).toEqual({ ok: true, value: "\ufeffa" });
  });

  it("refuse text that is not UTF-8", () => {
    const packed = new Uint8Array(deflateRawSync(Buffer.from([0x7b, 0xff, 0x7d])));
    expect(unpack(packed)).toMatchObject({ ok: false, fault: { code: "packedUnreadable" } });
  });

  it("end in an outcome for any bytes at all", () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 400 }), (bytes) => {
        const outcome = unpack(bytes, 10_000);
        if (outcome.ok) expect(outcome.value.length).toBeLessThanOrEqual(10_000);
        else expect(inModelUnits(outcome.fault.sentence)).not.toBe("");
      }),
      { numRuns: 3000 },
    );
  });

  it("end in an outcome for packed text with bytes changed or cut", () => {
    fc.assert(
      fc.property(
        fc.string({ minLength: 20, maxLength: 300 }),
        fc.array(fc.tuple(fc.nat(), fc.nat(255)), { maxLength: 5 }),
        fc.nat(),
        (text, changes, cut) => {
          const packed = pack(text);
          for (const [at, value] of changes) packed[at % packed.length] = value;
          const outcome = unpack(packed.subarray(0, cut % (packed.length + 1)), 10_000);
          expect(typeof outcome.ok).toBe("boolean");
        },
      ),
      { numRuns: 3000 },
    );
  });
});
