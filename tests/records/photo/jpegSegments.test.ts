import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  holdsMetadata,
  jpegSegments,
  withoutMetadata,
} from "../../../src/records/photo/jpegSegments.ts";
import { jpegWithPlace, plainJpeg } from "../../support/jpegs.ts";

const text = (bytes: Uint8Array) => Buffer.from(bytes).toString("latin1");

describe("what a JPEG holds beside its picture", () => {
  it("is found: position, camera, comment", () => {
    expect(holdsMetadata(jpegWithPlace())).toBe(true);
    expect(holdsMetadata(plainJpeg())).toBe(false);
  });

  it("is gone afterwards, and the picture is byte for byte what it was", () => {
    const before = jpegWithPlace();
    expect(text(before)).toMatch(/Exif/);
    expect(text(before)).toMatch(/Halden Lane/);
    const after = withoutMetadata(before);
    if (!after) throw new Error("not a JPEG");
    expect(holdsMetadata(after)).toBe(false);
    expect(text(after)).not.toMatch(/Exif|Halden Lane|GPS/);
    expect(after).toEqual(plainJpeg());
  });

  it("leaves a picture without any as it is", () => {
    expect(withoutMetadata(plainJpeg())).toEqual(plainJpeg());
  });

  it("is unknown of what is no JPEG, cut short or broken, and nothing is thrown", () => {
    expect(jpegSegments(new Uint8Array())).toBeNull();
    expect(holdsMetadata(new TextEncoder().encode("<svg/>"))).toBeNull();
    const whole = jpegWithPlace();
    for (let length = 0; length < 200; length += 7) {
      expect(jpegSegments(whole.subarray(0, length))).toBeNull();
    }
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 400 }), fc.boolean(), (bytes, asJpeg) => {
        const all = asJpeg ? new Uint8Array([0xff, 0xd8, ...bytes]) : bytes;
        const after = withoutMetadata(all);
        expect(after === null || holdsMetadata(after) === false).toBe(true);
      }),
    );
  });
});
