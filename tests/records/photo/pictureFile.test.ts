import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { boxedSize, pictureFacts, pictureOnly } from "../../../src/records/photo/pictureFile.ts";
import { base64Of, withSoundPhotos } from "../../../src/records/photo/soundPhotos.ts";
import { generateRecords } from "../../support/generateRecords.ts";
import { exifSegment, orientationSegment, plainJpeg } from "../../support/jpegs.ts";
import {
  extendedWebp,
  losslessHeader,
  losslessWebp,
  plainPng,
  pngChunk,
  tinyPhoto,
  webpChunk,
  webpOf,
} from "../../support/pictures.ts";

const text = (bytes: Uint8Array | null) => Buffer.from(bytes ?? []).toString("latin1");

describe("type and size of a picture", () => {
  it("are read from its beginning, of JPEG, PNG and WebP", () => {
    expect(pictureFacts(plainJpeg())).toEqual({ type: "image/jpeg", width: 8, height: 8 });
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 0x4000 }), fc.integer({ min: 1, max: 70 }), (w, h) => {
        const png = { type: "image/png", width: w, height: h };
        expect(pictureFacts(plainPng(w, h))).toEqual(png);
        const webp = { type: "image/webp", width: w, height: h };
        expect(pictureFacts(losslessWebp(w, h))).toEqual(webp);
        expect(pictureFacts(extendedWebp(w, h))).toEqual(webp);
      }),
      { numRuns: 60 },
    );
  });

  it("of anything else are none, and nothing is thrown", () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 80 }), fc.integer({ min: 0, max: 40 }), (any, cut) => {
        for (const begun of [plainJpeg(), plainPng(9, 9), extendedWebp(9, 9)]) {
          const bytes = Uint8Array.from([...begun.subarray(0, cut), ...any]);
          const facts = pictureFacts(bytes);
          expect(facts === null || (facts.width > 0 && facts.height > 0)).toBe(true);
          pictureOnly(bytes);
        }
        expect(pictureOnly(any.subarray(0, 3))).toBeNull();
      }),
    );
  });
});

describe("the size of a boxed picture", () => {
  const box = (width: number, height: number) => {
    const size = Buffer.alloc(20);
    size.writeUInt32BE(20);
    size.write("ispe", 4, "latin1");
    size.writeUInt32BE(width, 12);
    size.writeUInt32BE(height, 16);
    return size;
  };
  const file = Buffer.from("\0\0\0\u0018ftypheic\0\0\0\0mif1heic iis ", "latin1");

  it("is the greatest that it says of an image in it", () => {
    expect(boxedSize(Buffer.concat([file, box(512, 512), box(4032, 3024)]))).toEqual({
      width: 4032,
      height: 3024,
    });
    expect(boxedSize(file)).toBeNull();
    expect(boxedSize(plainPng(4, 4))).toBeNull();
    expect(boxedSize(Buffer.concat([file, box(9, 9).subarray(0, 12)]))).toBeNull();
  });
});

describe("a picture alone", () => {
  it("of a PNG has none of its texts, times and Exif, nor what hangs behind it", () => {
    const more = ["tEXt", "iTXt", "zTXt", "eXIf", "tIME", "prVt", "iCCP", "acTL", "IHDR"].map(
      (type) => pngChunk(type, Buffer.from("Owner\0M. Lind, 51 30 N")),
    );
    const png = Buffer.concat([plainPng(5, 5, more), Buffer.from("M. Lind again")]);
    const only = pictureOnly(png);
    expect(text(only)).toBe(text(plainPng(5, 5)));
    expect(pictureOnly(plainPng(5, 5).subarray(0, 50))).toBeNull();
  });

  it("of a WebP has no Exif and no XMP, and no longer says so", () => {
    const only = pictureOnly(extendedWebp(6, 4));
    expect(text(only)).not.toMatch(/EXIF|XMP|51 30 N|owner/);
    expect(only?.[20]).toBe(0x10);
    expect(Buffer.from(only ?? []).readUInt32LE(4)).toBe((only?.length ?? 0) - 8);
    expect(pictureFacts(only ?? new Uint8Array())).toEqual({
      type: "image/webp",
      width: 6,
      height: 4,
    });
  });

  it("of a WebP is the still one of the size that it says, whatever stands beside it", () => {
    const canvas = (width: number, height: number, flags = 0xff) => {
      const data = Buffer.alloc(10, 0xff);
      data[0] = flags;
      data.writeUIntLE(width - 1, 4, 3);
      data.writeUIntLE(height - 1, 7, 3);
      return webpChunk("VP8X", data);
    };
    const picture = webpChunk("VP8L", losslessHeader(6, 4));
    const alpha = webpChunk("ALPH", Buffer.from("abc"));
    const beside = ["ICCP", "XMP ", "ANIM", "ANMF", "GPS "].map((type) =>
      webpChunk(type, Buffer.from("51 30 N")),
    );
    const extended = Buffer.from(canvas(6, 4, 0x10));
    extended.fill(0, 9, 12);
    expect(text(pictureOnly(webpOf(canvas(6, 4), ...beside, alpha, picture, ...beside)))).toBe(
      text(webpOf(extended, alpha, picture)),
    );
    expect(pictureOnly(webpOf(canvas(7, 4), picture))).toBeNull();
    expect(pictureOnly(webpOf(canvas(6, 5), picture))).toBeNull();
    expect(pictureOnly(webpOf(canvas(6, 4), ...beside))).toBeNull();
    expect(pictureOnly(losslessWebp(6, 4).subarray(0, -2))).toBeNull();
  });

  it("of a PNG and a WebP stays the way up that its Exif says, and nothing else of that", () => {
    const block = (way: number) => Buffer.from(exifSegment(way).slice(10));
    const plain = (way: number) => Buffer.from(orientationSegment(way).slice(10));
    const webp = (way: number, exif: Buffer) => {
      const data = Buffer.alloc(10);
      data[0] = way === 1 ? 0 : 0x08;
      data.writeUIntLE(5, 4, 3);
      data.writeUIntLE(3, 7, 3);
      return webpOf(
        webpChunk("VP8X", data),
        webpChunk("VP8L", losslessHeader(6, 4)),
        ...(way === 1 ? [] : [webpChunk("EXIF", exif)]),
      );
    };
    for (const way of [1, 2, 3, 4, 5, 6, 7, 8]) {
      const png = pictureOnly(plainPng(5, 5, [pngChunk("eXIf", block(way))]));
      const expected = plainPng(5, 5, way === 1 ? [] : [pngChunk("eXIf", plain(way))]);
      expect(text(png)).toBe(text(expected));
      expect(text(pictureOnly(expected))).toBe(text(expected));
      for (const exif of [block(way), Buffer.concat([Buffer.from("Exif\0\0"), block(way)])]) {
        expect(text(pictureOnly(webp(way, exif)))).toBe(text(webp(way, plain(way))));
      }
    }
  });

  it("of a JPEG has no Exif, and ends where the picture does", () => {
    const plain = plainJpeg();
    const withMore = Uint8Array.from([
      ...plain.subarray(0, 2),
      ...exifSegment(1),
      ...plain.subarray(2),
      ...Buffer.from("a film of the yard"),
    ]);
    expect(text(pictureOnly(withMore))).toBe(text(plain));
  });
});

describe("photos of a record that came in", () => {
  const [record] = generateRecords(1, 5);
  if (record === undefined) throw new Error("no record");

  it("are those that are pictures a phone can show, by what their bytes are", () => {
    const huge = { ...tinyPhoto, data: base64Of(plainPng(20_000, 20_000)) };
    const wide = { ...tinyPhoto, data: base64Of(plainPng(13_000, 1)) };
    const words = { ...tinyPhoto, data: Buffer.from("<svg onload=alert(1)>").toString("base64") };
    const named = { ...tinyPhoto, type: "image/webp" as const };
    const { record: sound, refused } = withSoundPhotos({
      ...record,
      photos: [tinyPhoto, huge, wide, words, named, { ...tinyPhoto, data: "A" }],
    });
    expect(sound.photos).toEqual([tinyPhoto, tinyPhoto]);
    expect(refused).toBe(4);
    expect(withSoundPhotos({ ...record, photos: [words] }).record).not.toHaveProperty("photos");
  });

  it("are no more than can be shown together", () => {
    const large = { ...tinyPhoto, data: base64Of(plainPng(5000, 4000)) };
    const seven = [large, large, large, large, large, large, large, tinyPhoto];
    const { record: sound, refused } = withSoundPhotos({ ...record, photos: seven });
    expect(sound.photos).toHaveLength(6);
    expect(refused).toBe(2);
    const { record: rest } = withSoundPhotos({ ...record, photos: [tinyPhoto, ...seven] });
    expect(rest.photos).toHaveLength(7);
  });

  it("stay the very same where there is nothing to take out of them", () => {
    const photos = [tinyPhoto];
    const whole = { ...record, photos };
    expect(withSoundPhotos(whole).record).toBe(whole);
    expect(withSoundPhotos(whole).record.photos?.[0]).toBe(tinyPhoto);
    expect(withSoundPhotos(record)).toEqual({ record, refused: 0 });
  });
});
