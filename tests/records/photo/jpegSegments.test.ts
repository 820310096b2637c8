import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { jpegSegments, withoutMetadata } from "../../../src/records/photo/jpegSegments.ts";
import {
  exifSegment,
  holdsMetadata,
  jpegWithPlace,
  orientationSegment,
  plainJpeg,
  segment,
  withPlace,
} from "../../support/jpegs.ts";

const text = (bytes: Uint8Array | null) => Buffer.from(bytes ?? []).toString("latin1");
const hidden = (words: string, marker: number) => segment(marker, [...Buffer.from(words)]);

const plain = plainJpeg();
/** Bytes before the scan's header, the scan with its data, and the end. */
const scanAt = text(plain).indexOf("\u00ff\u00da");
const [start, jfif, tables] = [
  plain.subarray(0, 2),
  plain.subarray(2, 20),
  plain.subarray(20, scanAt),
];
const scan = plain.subarray(scanAt, -2);
const end = plain.subarray(-2);
const jpeg = (...pieces: readonly (Uint8Array | readonly number[])[]) =>
  Uint8Array.from(pieces.flatMap((piece) => [...piece]));

describe("what a JPEG holds beside its picture", () => {
  it("is gone afterwards, and the picture is byte for byte what it was", () => {
    const before = jpegWithPlace();
    expect(holdsMetadata(before)).toBe(true);
    expect(text(before)).toMatch(/Exif/);
    expect(text(before)).toMatch(/Halden Lane/);
    const after = withoutMetadata(before);
    expect(text(after)).not.toMatch(/Exif|Halden Lane|GPS/);
    expect(after).toEqual(plain);
  });

  it("is gone wherever it stands: in any segment, between two scans, behind the end", () => {
    const everywhere = [0xe1, 0xe2, 0xe7, 0xec, 0xed, 0xef, 0xf0, 0xfd, 0xfe, 0x02, 0xbf].flatMap(
      (marker) => hidden("51 30 N", marker),
    );
    const before = jpeg(
      start,
      everywhere,
      jfif,
      everywhere,
      tables,
      scan,
      everywhere,
      scan,
      end,
      everywhere,
    );
    expect(withoutMetadata(before)).toEqual(jpeg(start, jfif, tables, scan, scan, end));
  });

  it("leaves which way up the camera was held, and nothing else of it", () => {
    for (const way of [2, 3, 4, 5, 6, 7, 8]) {
      const after = withoutMetadata(withPlace(plain, way));
      expect(after).toEqual(jpeg(start, jfif, orientationSegment(way), tables, scan, end));
      expect(holdsMetadata(after ?? plain)).toBe(false);
      // Once more changes nothing.
      expect(withoutMetadata(after ?? plain)).toEqual(after);
    }
  });

  it("leaves no way up that is none, whatever the block says", () => {
    const little = Buffer.from(
      "45786966000049492a000800000001001201030001000000080000000000000000",
      "hex",
    );
    const turned = jpeg(start, jfif, orientationSegment(8), tables, scan, end);
    expect(
      withoutMetadata(jpeg(start, segment(0xe1, [...little]), jfif, tables, scan, end)),
    ).toEqual(turned);
    for (const way of [0, 1, 9, 65_535]) {
      expect(withoutMetadata(withPlace(plain, way))).toEqual(plain);
    }
    const whole = exifSegment(6);
    fc.assert(
      fc.property(
        fc.integer({ min: 10, max: 60 }),
        fc.integer({ min: 0, max: 255 }),
        (at, byte) => {
          const broken = whole.with(at, byte);
          const after = withoutMetadata(jpeg(start, broken, jfif, tables, scan, end));
          expect([0, 36]).toContain((after?.length ?? 0) - plain.length);
        },
      ),
    );
    expect(withoutMetadata(jpeg(start, whole.slice(0, 4), tables, scan, end))).toBeNull();
  });

  it("keeps how colours are read, and of JFIF not the small picture", () => {
    const colours = segment(0xee, [...Buffer.from("Adobe"), 0, 100, 0, 0, 0, 0, 1]);
    const more = segment(0xee, [
      ...Buffer.from("Adobe"),
      0,
      100,
      0,
      0,
      0,
      0,
      1,
      ...Buffer.from("me"),
    ]);
    const small = segment(0xe0, [...jfif.subarray(4, 16), 2, 1, 9, 9, 9, 9, 9, 9]);
    expect(withoutMetadata(jpeg(start, small, colours, tables, scan, end))).toEqual(
      jpeg(start, jfif, colours, tables, scan, end),
    );
    expect(withoutMetadata(jpeg(start, more, tables, scan, end))).toEqual(
      jpeg(start, tables, scan, end),
    );
    const other = segment(0xe0, [
      ...Buffer.from("JFXX\0"),
      0x10,
      ...Buffer.from("a small picture"),
    ]);
    expect(withoutMetadata(jpeg(start, other, tables, scan, end))).toEqual(
      jpeg(start, tables, scan, end),
    );
  });

  it("leaves a picture without any as it is", () => {
    expect(withoutMetadata(plain)).toEqual(plain);
    expect(holdsMetadata(plain)).toBe(false);
  });
});

describe("the segments of a JPEG", () => {
  it("are its header's and its scans', a scan with all of its data", () => {
    // A stuffed zero, a restart and filling end no scan (T.81, B.1.1.2, B.1.1.5).
    const long = jpeg(scan, [0xff, 0x00, 0xff, 0xd3, 7, 0xff, 0xff, 0xff, 0x00]);
    const whole = jpeg(start, jfif, tables, long, end);
    const segments = jpegSegments(whole) ?? [];
    expect(segments.map(({ marker }) => marker)).toEqual([0xe0, 0xdb, 0xc0, 0xc4, 0xc4, 0xda]);
    expect(segments.at(-1)).toMatchObject({ start: scanAt, end: scanAt + long.length });
    expect(segments[0]).toEqual({ marker: 0xe0, start: 2, end: 20 });
    // Filling between two segments belongs to neither.
    expect(jpegSegments(jpeg(start, [0xff, 0xff], jfif, tables, scan, end))?.[0]?.start).toBe(4);
  });

  it("of a picture that is cut short go as far as it does", () => {
    const cut = plain.subarray(0, -3);
    expect(withoutMetadata(cut)).toEqual(jpeg(cut, end));
    expect(withoutMetadata(jpeg(start, jfif, tables, scan, [0xff]))).toEqual(plain);
    expect(
      withoutMetadata(jpeg(start, jfif, tables, scan, hidden("cut", 0xe1).slice(0, 5))),
    ).toEqual(plain);
  });

  it("are none of what is no JPEG, cut short before its scan or broken, and nothing is thrown", () => {
    expect(jpegSegments(new Uint8Array())).toBeNull();
    expect(jpegSegments(new TextEncoder().encode("<svg/>"))).toBeNull();
    const whole = jpegWithPlace();
    for (let length = 0; length < 200; length += 7) {
      expect(jpegSegments(whole.subarray(0, length))).toBeNull();
    }
    expect(jpegSegments(jpeg(start, [0xff, 0xe0, 0, 1], tables, scan, end))).toBeNull();
    expect(jpegSegments(jpeg(start, [1], tables, scan, end))).toBeNull();
    expect(jpegSegments(jpeg(start, jfif, scan, end))).toBeNull();
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 400 }), fc.boolean(), (bytes, asJpeg) => {
        const all = asJpeg ? new Uint8Array([0xff, 0xd8, ...bytes]) : bytes;
        const after = withoutMetadata(all);
        expect(after === null || !holdsMetadata(after)).toBe(true);
      }),
    );
  });

  it("are none of one with two frames, or more scans than a camera writes", () => {
    expect(jpegSegments(jpeg(start, tables, tables, scan, end))).toBeNull();
    const scans = (count: number) => Array.from({ length: count }, () => scan);
    expect(jpegSegments(jpeg(start, tables, ...scans(100), end))).toHaveLength(104);
    expect(jpegSegments(jpeg(start, tables, ...scans(101), end))).toBeNull();
  });
});
