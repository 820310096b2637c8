/** A grey JPEG of 8 × 8 pixels: start, JFIF, tables, frame, scan, end (ITU-T T.81, Annex B). */
export function plainJpeg(): Uint8Array<ArrayBuffer> {
  return new Uint8Array([...start, ...jfif, ...rest]);
}

const start = [0xff, 0xd8];
const jfif = [0xff, 0xe0, 0, 16, 0x4a, 0x46, 0x49, 0x46, 0, 1, 1, 0, 0, 1, 0, 1, 0, 0];
const quantisation = [0xff, 0xdb, 0, 67, 0, ...Array<number>(64).fill(16)];
const frame = [0xff, 0xc0, 0, 11, 8, 0, 8, 0, 8, 1, 1, 0x11, 0];
// One code of length 1 in each Huffman table: a difference of 0, and end of block.
const huffman = (destination: number) => [
  0xff,
  0xc4,
  0,
  20,
  destination,
  1,
  ...Array<number>(15).fill(0),
  0,
];
const scan = [0xff, 0xda, 0, 8, 1, 1, 0, 0, 63, 0, 0x3f, 0xff, 0xd9];
const rest = [...quantisation, ...frame, ...huffman(0x00), ...huffman(0x10), ...scan];

export function segment(marker: number, payload: readonly number[]): number[] {
  const length = payload.length + 2;
  return [0xff, marker, length >> 8, length & 0xff, ...payload];
}

const letters = (text: string) => [...text].map((letter) => letter.charCodeAt(0));
const number16 = (value: number) => [value >> 8, value & 0xff];
const number32 = (value: number) => [...number16(value >>> 16), ...number16(value & 0xffff)];

/**
 * An Exif segment that says which way up the camera was held, and where it was: 51° 30' N, 0° 7' W.
 * Exif 2.3 (JEITA CP-3451C): 4.5.4 (APP1), 4.6.4 (orientation, GPS pointer), 4.6.6 (position).
 */
export function exifSegment(orientation: number): number[] {
  const entry = (tag: number, type: number, count: number, value: readonly number[]) => [
    ...number16(tag),
    ...number16(type),
    ...number32(count),
    ...value,
  ];
  const gpsAt = 8 + 2 + 2 * 12 + 4;
  const valuesAt = gpsAt + 2 + 4 * 12 + 4;
  const first = [
    ...number16(2),
    ...entry(0x0112, 3, 1, [...number16(orientation), 0, 0]),
    ...entry(0x8825, 4, 1, number32(gpsAt)),
    ...number32(0),
  ];
  const position = [
    ...number16(4),
    ...entry(1, 2, 2, [...letters("N"), 0, 0, 0]),
    ...entry(2, 5, 3, number32(valuesAt)),
    ...entry(3, 2, 2, [...letters("W"), 0, 0, 0]),
    ...entry(4, 5, 3, number32(valuesAt + 24)),
    ...number32(0),
  ];
  const degrees = (whole: number, minutes: number) =>
    [whole, 1, minutes, 1, 0, 1].flatMap((value) => number32(value));
  return segment(0xe1, [
    ...letters("Exif"),
    0,
    0,
    ...letters("MM"),
    0,
    42,
    ...number32(8),
    ...first,
    ...position,
    ...degrees(51, 30),
    ...degrees(0, 7),
  ]);
}

/** A JPEG as a phone writes it, with position and a comment, put into the bytes of another. */
export function withPlace(jpeg: Uint8Array, orientation = 1): Uint8Array<ArrayBuffer> {
  const comment = segment(0xfe, letters("Halden Lane Garage"));
  const afterStart = jpeg.subarray(2);
  return new Uint8Array([...start, ...exifSegment(orientation), ...comment, ...afterStart]);
}

export function jpegWithPlace(): Uint8Array<ArrayBuffer> {
  return withPlace(plainJpeg());
}

/** Exif that says nothing but which way up: a TIFF of one directory with one entry, the orientation. */
export function orientationSegment(orientation: number): number[] {
  const directory = [...number16(1), ...number16(0x0112), ...number16(3), ...number32(1)];
  return segment(0xe1, [
    ...letters("Exif"),
    0,
    0,
    ...letters("MM"),
    0,
    42,
    ...number32(8),
    ...directory,
    ...number16(orientation),
    0,
    0,
    ...number32(0),
  ]);
}

/** Does a JPEG hold, in any of its marker segments, more than what shows the picture the right way up? */
export function holdsMetadata(jpeg: Uint8Array): boolean {
  const bytes = Buffer.from(jpeg);
  const plain = [1, 2, 3, 4, 5, 6, 7, 8].map((way) => Buffer.from(orientationSegment(way)));
  for (let at = 2; at + 4 <= bytes.length; at += 1) {
    const marker = bytes[at + 1] ?? 0;
    if (bytes[at] !== 0xff || !((marker >= 0xe1 && marker <= 0xed) || marker === 0xfe)) continue;
    const end = at + 2 + bytes.readUInt16BE(at + 2);
    if (end > bytes.length) continue;
    if (!plain.some((each) => each.equals(bytes.subarray(at, end)))) return true;
  }
  return false;
}
