import { crc32 as zlibCrc32 } from "node:zlib";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { crc32 } from "../../../src/records/bytes/checksum.ts";

describe("crc32", () => {
  it("agrees with zlib", () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 300 }), (bytes) => {
        expect(crc32(bytes)).toBe(zlibCrc32(bytes));
      }),
    );
  });
});
