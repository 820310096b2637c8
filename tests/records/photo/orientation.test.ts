import { describe, expect, it } from "vitest";
import { orientationOf, orientationTiff } from "../../../src/records/photo/exifOrientation.ts";
import { jpegSegments, withoutMetadata } from "../../../src/records/photo/jpegSegments.ts";
import { pictureOnly } from "../../../src/records/photo/pictureFile.ts";
import { plainJpeg, segment } from "../../support/jpegs.ts";
import { plainPng, pngChunk } from "../../support/pictures.ts";

/** A TIFF of one directory with these entries of tag, type and value (TIFF 6.0, section 2). */
function tiff(
  entries: readonly (readonly [number, number, number])[],
  { little = false, count = entries.length, first = 8 } = {},
): Uint8Array {
  const view = new DataView(new ArrayBuffer(first + 2 + 12 * entries.length));
  view.setUint16(0, little ? 0x4949 : 0x4d4d);
  view.setUint16(2, 42, little);
  view.setUint32(4, first, little);
  view.setUint16(first, count, little);
  for (const [index, [tag, type, value]] of entries.entries()) {
    const at = first + 2 + 12 * index;
    view.setUint16(at, tag, little);
    view.setUint16(at + 2, type, little);
    view.setUint32(at + 4, 1, little);
    view.setUint16(at + 8, value, little);
  }
  return new Uint8Array(view.buffer);
}

describe("which way up the camera was held", () => {
  it("is read in either order of bytes, wherever the directory and the entry stand", () => {
    for (const little of [false, true]) {
      for (const way of [1, 2, 3, 4, 5, 6, 7, 8]) {
        expect(orientationOf(tiff([[0x0112, 3, way]], { little }))).toBe(way);
        const later = tiff(
          [
            [0x0100, 3, 5],
            [0x0101, 3, 4],
            [0x0112, 3, way],
          ],
          { little, first: 20 },
        );
        expect(orientationOf(later)).toBe(way);
      }
    }
    expect(orientationOf(orientationTiff(6))).toBe(6);
  });

  it("is as it lies where the block does not say, or not as it should", () => {
    const other = tiff([[0x0112, 3, 6]]);
    other.set([0x4d, 0x49]);
    for (const none of [
      new Uint8Array(),
      other,
      tiff([]),
      tiff([[0x0111, 3, 6]]),
      tiff([[0x0112, 4, 6]]),
      tiff([[0x0112, 3, 0]]),
      tiff([[0x0112, 3, 9]]),
      // Fewer entries than it says, and none where it says that there is one.
      tiff([[0x0111, 3, 6]], { count: 9 }),
      tiff([], { count: 1 }),
      tiff([[0x0112, 3, 6]], { count: 0 }),
      tiff([[0x0112, 3, 6]]).subarray(0, 21),
    ]) {
      expect(orientationOf(none)).toBe(1);
    }
    expect(orientationOf(tiff([[0x0112, 3, 6]]).subarray(0, 22))).toBe(6);
  });

  it("stays with a PNG, and nothing else of its Exif does", () => {
    const exif = pngChunk(
      "eXIf",
      Buffer.from(
        tiff([
          [0x010f, 2, 7],
          [0x0112, 3, 6],
        ]),
      ),
    );
    const only = pictureOnly(plainPng(5, 5, [exif]));
    const turned = plainPng(5, 5, [pngChunk("eXIf", Buffer.from(orientationTiff(6)))]);
    expect(Buffer.from(only ?? [])).toEqual(turned);
    const plain = pictureOnly(plainPng(5, 5, [pngChunk("eXIf", Buffer.from(tiff([])))]));
    expect(Buffer.from(plain ?? [])).toEqual(plainPng(5, 5));
  });
});

describe("a PNG alone", () => {
  it("keeps what shows it: palette, transparency, gamma, colors, bits", () => {
    const more = ["PLTE", "tRNS", "gAMA", "cHRM", "sRGB", "sBIT"].map((type) =>
      pngChunk(type, Buffer.from([1, 2, 3])),
    );
    const png = plainPng(5, 5, more);
    expect(Buffer.from(pictureOnly(png) ?? [])).toEqual(png);
  });
});

describe("the segments of a JPEG", () => {
  const bytes = plainJpeg();
  const markers = (jpeg: Uint8Array) => jpegSegments(jpeg)?.map(({ marker }) => marker) ?? null;

  it("go on over fillings, to its end or as far as it goes", () => {
    const all = [0xe0, 0xdb, 0xc0, 0xc4, 0xc4, 0xda];
    expect(markers(bytes)).toEqual(all);
    expect(markers(Uint8Array.from([0xff, 0xd8, 0xff, 0xff, ...bytes.subarray(2)]))).toEqual(all);
    expect(markers(bytes.subarray(0, bytes.length - 2))).toEqual(all);
    expect(markers(Uint8Array.from([...bytes, 1, 2, 3, 4, 5, 6]))).toEqual(all);
  });

  it("are none where it is none, has no scan or no frame, two frames, or a hundred and one scans", () => {
    expect(markers(Uint8Array.from([0xfe, ...bytes.subarray(1)]))).toBeNull();
    expect(markers(Uint8Array.from([0xff, 0xd9, ...bytes.subarray(2)]))).toBeNull();
    const frame = segment(0xc0, [8, 0, 8, 0, 8, 1, 1, 0x11, 0]);
    const scan = segment(0xda, [1, 1, 0, 0, 63, 0]);
    const jpeg = (...parts: readonly number[][]) =>
      Uint8Array.from([0xff, 0xd8, ...parts.flat(), 0xff, 0xd9]);
    expect(markers(jpeg(frame, scan))).toEqual([0xc0, 0xda]);
    expect(markers(jpeg(frame))).toBeNull();
    expect(markers(jpeg(scan))).toBeNull();
    expect(markers(jpeg(frame, frame, scan))).toBeNull();
    expect(markers(jpeg(frame, segment(0xc2, [0]), scan))).toBeNull();
    expect(markers(jpeg(frame, segment(0xcf, [0]), scan))).toBeNull();
    for (const none of [0xc4, 0xc8, 0xcc]) {
      expect(markers(jpeg(frame, segment(none, [0]), scan))).toEqual([0xc0, none, 0xda]);
    }
    const scans = (count: number) => Array.from({ length: count }, () => scan);
    expect(markers(jpeg(frame, ...scans(100)))).toHaveLength(101);
    expect(markers(jpeg(frame, ...scans(101)))).toBeNull();
    // A length that is none, or reaches past the end, ends it there.
    expect(markers(jpeg(frame, [0xff, 0xe0, 0, 1], scan))).toBeNull();
    expect(markers(jpeg(frame, scan, [0xff, 0xe0, 9, 9]))).toEqual([0xc0, 0xda]);
    expect(markers(jpeg(frame, [0xff, 0xe5, 0, 2], scan))).toEqual([0xc0, 0xe5, 0xda]);
  });

  it("of which only what shows the picture stays: tables, frame, scans, restarts, how colors are read", () => {
    const adobe = segment(0xee, [...Buffer.from("Adobe"), 0, 100, 0, 0, 0, 0, 1]);
    const kept = [adobe, segment(0xdd, [0, 4]), segment(0xcc, [0])];
    const gone = [
      segment(0xee, [...Buffer.from("Adobe"), 0, 100, 0, 0, 0, 0, 1, 9]),
      segment(0xee, [...Buffer.from("Adoby"), 0, 100, 0, 0, 0, 0, 1]),
      segment(0xed, [...Buffer.from("Adobe"), 0, 100, 0, 0, 0, 0, 1]),
      segment(0xde, [1]),
      segment(0xe0, [...Buffer.from("JFXX\0"), 1, 1, 0, 0, 1, 0, 1, 0, 0]),
      segment(0xe1, [...Buffer.from("http:\0"), 1]),
      segment(0xfe, [1, 2]),
    ];
    const put = (parts: readonly number[][]) =>
      Uint8Array.from([...bytes.subarray(0, 20), ...parts.flat(), ...bytes.subarray(20)]);
    expect(withoutMetadata(put([...kept, ...gone]))).toEqual(put(kept));
    expect(withoutMetadata(bytes)).toEqual(bytes);
    // The small picture that a header may carry goes.
    const carrying = segment(0xe0, [...Buffer.from("JFIF\0"), 1, 1, 0, 0, 1, 0, 1, 1, 1, 7, 7, 7]);
    const small = Uint8Array.from([0xff, 0xd8, ...carrying, ...bytes.subarray(20)]);
    expect(withoutMetadata(small)).toEqual(bytes);
  });
});
