import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { base64urlLength, fromBase64url, toBase64url } from "../../src/sharing/base64url.ts";
import { digitsLength, fromDigits, toDigits } from "../../src/sharing/decimalDigits.ts";

const bytes = fc.uint8Array({ maxLength: 200 });

describe("base64url", () => {
  it("agrees with Node's, without padding", () => {
    fc.assert(
      fc.property(bytes, (some) => {
        expect(toBase64url(some)).toBe(Buffer.from(some).toString("base64url"));
      }),
    );
  });

  it("gives the bytes again, and knows its length", () => {
    fc.assert(
      fc.property(bytes, (some) => {
        const text = toBase64url(some);
        expect(text).toHaveLength(base64urlLength(some.length));
        expect(fromBase64url(text)).toEqual(some);
      }),
    );
  });

  it.each(["+", "/", "=", "a b", "é", "%20"])("refuses %j", (text) => {
    expect(fromBase64url(`AAAA${text}`)).toBeNull();
  });
});

describe("decimal digits", () => {
  it("gives the bytes again, and knows its length", () => {
    fc.assert(
      fc.property(bytes, (some) => {
        const text = toDigits(some);
        expect(text).toMatch(/^\d*$/);
        expect(text).toHaveLength(digitsLength(some.length));
        expect(fromDigits(text)).toEqual(some);
      }),
    );
  });

  it("takes the least digits that hold every value of a group", () => {
    for (let length = 1; length <= 7; length += 1) {
      const largest = (256n ** BigInt(length) - 1n).toString();
      expect(toDigits(new Uint8Array(length).fill(255))).toBe(largest);
    }
  });

  it("refuses a group whose digits are more than its bytes can be", () => {
    expect(fromDigits("256")).toBeNull();
    expect(fromDigits("255")).toEqual(new Uint8Array([255]));
    expect(fromDigits("99999999999999999")).toBeNull();
  });

  it("refuses what is not a digit", () => {
    expect(fromDigits("12a")).toBeNull();
    expect(fromDigits("١٢٣")).toBeNull();
  });
});
