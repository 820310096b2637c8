import { crc32 as zlibCrc32 } from "node:zlib";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { crc32 } from "../../src/sharing/checksum.ts";

describe("crc32", () => {
  it("gives the check value of the catalogue of CRCs for 123456789 (from memory: cbf43926)", () => {
    expect(crc32(new TextEncoder().encode("123456789"))).toBe(0xcbf43926);
  });

  it("agrees with zlib", () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 300 }), (bytes) => {
        expect(crc32(bytes)).toBe(zlibCrc32(bytes));
      }),
    );
  });
});
