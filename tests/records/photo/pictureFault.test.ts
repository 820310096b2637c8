import { describe, expect, it } from "vitest";
import { pictureFault } from "../../../src/records/photo/pictureFault.ts";
import { pictureFacts } from "../../../src/records/photo/pictureFile.ts";
import {
  isTooManyPixels,
  soundPhoto,
  soundPhotos,
  withSoundPhotos,
} from "../../../src/records/photo/soundPhotos.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";
import { demoRecord } from "../../support/demoRecords.ts";
import { jpegWithPlace, plainJpeg } from "../../support/jpegs.ts";
import { plainPng, tinyPhoto } from "../../support/pictures.ts";

async function told(bytes: Uint8Array, size = bytes.length): Promise<string | null> {
  const file = new Blob([bytes as BlobPart]);
  if (size !== bytes.length) Object.defineProperty(file, "size", { value: size });
  const fault = await pictureFault(file);
  return fault && `${fault.code}: ${inModelUnits(fault.sentence)}`;
}

const unreadable =
  "photoUnreadable: This picture can't be opened here. Take a photo, or choose a JPEG or PNG.";

/** As a HEIF begins, its size so far behind its beginning. */
function boxed(width: number, height: number, behind = 0): Uint8Array {
  const size = Buffer.alloc(20);
  size.writeUInt32BE(20);
  size.write("ispe", 4, "latin1");
  size.writeUInt32BE(width, 12);
  size.writeUInt32BE(height, 16);
  const begin = Buffer.from("\0\0\0\u0018ftypheic\0\0\0\0mif1heic", "latin1");
  return Buffer.concat([begin, Buffer.alloc(behind), size]);
}

describe("a picture that was chosen", () => {
  it("is looked at before it is decoded: of a kind that can be, and not too large", async () => {
    for (const sound of [
      plainJpeg(),
      plainPng(8000, 6000),
      boxed(4032, 3024),
      boxed(9, 9, 199_000),
    ]) {
      expect(await told(sound)).toBeNull();
    }
    for (const none of [new Uint8Array(), Buffer.from("hello"), boxed(9, 9, 200_000)]) {
      expect(await told(none)).toBe(unreadable);
    }
    for (const [width, height] of [
      [10_000, 5001],
      [12_001, 1],
    ] as const) {
      const words = `photoTooLarge: This picture has ${width} × ${height} pixels, far more than can be opened here. Take one with the camera's usual setting.`;
      expect(await told(plainPng(width, height))).toBe(words);
      expect(await told(boxed(width, height))).toBe(words);
    }
  });

  it("of more than forty million bytes is not even read", async () => {
    expect(await told(plainJpeg(), 40_000_000)).toBeNull();
    expect(await told(plainJpeg(), 41_000_000)).toBe(
      "photoTooLarge: This file is too large for a photo: 41 MB, and the most is 40 MB.",
    );
    expect(await told(plainJpeg(), 40_000_001)).toMatch(/^photoTooLarge/);
  });

  it("that has gone since it was chosen can't be opened", async () => {
    const gone = new Blob(["x"]);
    Object.defineProperty(gone, "arrayBuffer", {
      value: () => Promise.reject(new DOMException("gone", "NotReadableError")),
    });
    const fault = await pictureFault(gone);
    expect(fault && `${fault.code}: ${inModelUnits(fault.sentence)}`).toBe(unreadable);
  });
});

describe("photos that came in", () => {
  const png = (width: number, height: number) => ({
    type: "image/png" as const,
    data: plainPng(width, height).toString("base64"),
  });

  it("have 24 million pixels at most, 12,000 a side, to the last", () => {
    expect(isTooManyPixels({ width: 6000, height: 4000 })).toBe(false);
    expect(isTooManyPixels({ width: 6001, height: 4000 })).toBe(true);
    expect(isTooManyPixels({ width: 12_000, height: 1 })).toBe(false);
    expect(isTooManyPixels({ width: 1, height: 12_001 })).toBe(true);
    expect(isTooManyPixels({ width: 7000, height: 7000 }, 49_000_000)).toBe(false);
    expect(isTooManyPixels({ width: 7000, height: 7000 }, 48_999_999)).toBe(true);
  });

  it("are as many as can be shown together, 120 million pixels", () => {
    const large = png(6000, 4000);
    expect(soundPhotos([large, large, large, large, large])).toHaveLength(5);
    expect(soundPhotos([large, large, large, large, large, tinyPhoto])).toHaveLength(5);
    expect(soundPhotos([tinyPhoto, large, large, large, large, large])).toHaveLength(5);
  });

  it("stay as they are where there is nothing to take out, and are of the type of their bytes", () => {
    const caption = { ...tinyPhoto, caption: "Pad" };
    expect(soundPhoto(caption)).toBe(caption);
    const jpeg = { ...tinyPhoto, data: Buffer.from(plainJpeg()).toString("base64") };
    expect(soundPhoto(jpeg)).toEqual({ ...jpeg, type: "image/jpeg" });
    const placed = Buffer.from(jpegWithPlace()).toString("base64");
    expect(soundPhoto({ type: "image/jpeg", data: placed })).toEqual({
      type: "image/jpeg",
      data: Buffer.from(plainJpeg()).toString("base64"),
    });
    for (const data of [
      "",
      "no base64 ü",
      "AAAA",
      plainPng(9, 9).subarray(0, 40).toString("base64"),
    ]) {
      expect(soundPhoto({ type: "image/png", data })).toBeNull();
    }
    expect(soundPhoto(png(12_001, 1))).toBeNull();
  });

  it("of a record are told from those that were left out", () => {
    const record = demoRecord("arm-fits");
    const bad = { type: "image/png" as const, data: "AAAA" };
    expect(withSoundPhotos(record)).toEqual({ record, refused: 0 });
    const whole = { ...record, photos: [tinyPhoto, tinyPhoto] };
    expect(withSoundPhotos(whole).record).toBe(whole);
    expect(withSoundPhotos({ ...record, photos: [tinyPhoto, bad] })).toEqual({
      record: { ...record, photos: [tinyPhoto] },
      refused: 1,
    });
    const none = withSoundPhotos({ ...record, photos: [bad, bad] });
    expect([none.refused, "photos" in none.record]).toEqual([2, false]);
    const mixed = { ...tinyPhoto, type: "image/jpeg" as const };
    expect(withSoundPhotos({ ...record, photos: [tinyPhoto, mixed] }).record.photos).toEqual([
      tinyPhoto,
      tinyPhoto,
    ]);
  });
});

describe("type and size", () => {
  it("of a lossy WebP stand behind its start code (RFC 9649, 2.5; RFC 6386, 9.1)", () => {
    const lossy = (width: number, height: number) => {
      const bytes = Buffer.alloc(40);
      bytes.write("RIFF", 0, "latin1");
      bytes.writeUInt32LE(32, 4);
      bytes.write("WEBPVP8 ", 8, "latin1");
      bytes.writeUInt32LE(20, 16);
      bytes.set([0x9d, 0x01, 0x2a], 23);
      // The two highest bits say how it is scaled.
      bytes.writeUInt16LE(width | 0x4000, 26);
      bytes.writeUInt16LE(height | 0x8000, 28);
      return bytes;
    };
    expect(pictureFacts(lossy(640, 480))).toEqual({ type: "image/webp", width: 640, height: 480 });
    expect(pictureFacts(lossy(1, 1))).toEqual({ type: "image/webp", width: 1, height: 1 });
    expect(pictureFacts(lossy(0, 480))).toBeNull();
    expect(pictureFacts(lossy(640, 0))).toBeNull();
    expect(pictureFacts(lossy(640, 480).subarray(0, 30))).not.toBeNull();
    expect(pictureFacts(lossy(640, 480).subarray(0, 29))).toBeNull();
    for (const at of [0, 8, 12]) {
      const other = lossy(640, 480);
      other[at] = 0x58;
      expect(pictureFacts(other)).toBeNull();
    }
  });

  it("of a PNG are none where a side is nothing, or its header is another or cut", () => {
    const png = (change: (bytes: Buffer) => void) => {
      const bytes = plainPng(5, 4);
      change(bytes);
      return pictureFacts(bytes);
    };
    expect(png(() => undefined)).toEqual({ type: "image/png", width: 5, height: 4 });
    expect(png((bytes) => bytes.writeUInt32BE(0, 16))).toBeNull();
    expect(png((bytes) => bytes.writeUInt32BE(0, 20))).toBeNull();
    expect(png((bytes) => bytes.write("IHDX", 12, "latin1"))).toBeNull();
    expect(pictureFacts(plainPng(5, 4).subarray(0, 33))).not.toBeNull();
    expect(pictureFacts(plainPng(5, 4).subarray(0, 32))).toBeNull();
  });

  it("of a JPEG are none where a side is nothing, or it begins as another", () => {
    const jpeg = (change: (bytes: Uint8Array, frame: number) => void) => {
      const bytes = plainJpeg();
      change(
        bytes,
        bytes.findIndex((byte, at) => byte === 0xff && bytes[at + 1] === 0xc0),
      );
      return pictureFacts(bytes);
    };
    expect(jpeg(() => undefined)).toEqual({ type: "image/jpeg", width: 8, height: 8 });
    expect(jpeg((bytes, frame) => bytes.set([0, 0], frame + 5))).toBeNull();
    expect(jpeg((bytes, frame) => bytes.set([0, 0], frame + 7))).toBeNull();
    expect(jpeg((bytes) => bytes.set([0xfe], 0))).toBeNull();
    expect(jpeg((bytes) => bytes.set([0xd9], 1))).toBeNull();
  });
});
