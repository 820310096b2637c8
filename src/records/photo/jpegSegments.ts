import { big16, joined, textAt } from "../bytes/bytes.ts";
import { orientationOf, orientationTiff } from "./exifOrientation.ts";

/** One marker segment of a JPEG: the marker's second byte, and where it is. */
export interface JpegSegment {
  readonly marker: number;
  /** From its 0xFF to its last byte, end excluded; a scan's with its picture data. */
  readonly start: number;
  readonly end: number;
}

const startOfScan = 0xda;
const endOfImage = 0xd9;
const startBytes = Uint8Array.of(0xff, 0xd8);
const endBytes = Uint8Array.of(0xff, endOfImage);

/** A camera's progressive JPEG has some ten; each costs as much to show as the whole picture. */
const mostScans = 100;

/** Frame headers: SOF0 to SOF15 without DHT, JPG and DAC (ITU-T T.81, Table B.1 and B.2.2). */
export function isFrame({ marker }: JpegSegment): boolean {
  return marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker);
}

/** Where a scan's picture data ends: at the next marker that is no stuffed zero, filling or restart. */
function scanEnd(bytes: Uint8Array, from: number): number {
  for (let at = bytes.indexOf(0xff, from); at !== -1; at = bytes.indexOf(0xff, at + 1)) {
    const next = bytes[at + 1];
    if (next === undefined) return at;
    if (next !== 0x00 && next !== 0xff && next >> 3 !== 0xd0 >> 3) return at;
  }
  return bytes.length;
}

/**
 * The marker segments of a JPEG, up to its end or as far as it goes; null where the bytes hold no whole
 * header and scan, more than one picture, or more scans than any camera writes.
 *
 * @source ITU-T T.81 (1992), Annex B.1.1 (markers, segments, entropy-coded data) and Table B.1
 */
export function jpegSegments(bytes: Uint8Array): readonly JpegSegment[] | null {
  if (bytes[0] !== 0xff || bytes[1] !== 0xd8) return null;
  const segments: JpegSegment[] = [];
  let scans = 0;
  let frames = 0;
  let at = 2;
  while (at + 4 <= bytes.length && bytes[at + 1] !== endOfImage) {
    const marker = bytes[at + 1] ?? 0;
    // What comes after a scan may be cut short: so much of the picture is there.
    if (bytes[at] !== 0xff) break;
    if (marker === 0xff) {
      at += 1;
      continue;
    }
    const length = big16(bytes, at + 2);
    const headerEnd = at + 2 + length;
    if (length < 2 || headerEnd > bytes.length) break;
    const isScan = marker === startOfScan;
    const end = isScan ? scanEnd(bytes, headerEnd) : headerEnd;
    const segment = { marker, start: at, end };
    if (isScan) scans += 1;
    if (isFrame(segment)) frames += 1;
    if (scans > mostScans || frames > 1) return null;
    segments.push(segment);
    at = end;
  }
  return scans > 0 && frames === 1 ? segments : null;
}

/** What is needed to show the picture: frame, tables, restart interval, number of lines, scans. */
function isPicture(segment: JpegSegment): boolean {
  const { marker } = segment;
  return (
    isFrame(segment) || marker === 0xc4 || marker === 0xcc || (marker >= 0xda && marker <= 0xdd)
  );
}

/** JFIF's own header without the small picture that it may carry (ITU-T T.871, 10.1). */
function jfifOnly(segment: Uint8Array): Uint8Array | null {
  if (segment[1] !== 0xe0 || textAt(segment, 4, 5) !== "JFIF\0" || segment.length < 18) return null;
  const only = segment.slice(0, 18);
  only.set([0, 16], 2);
  only.set([0, 0], 16);
  return only;
}

/** How the colours are to be read (ITU-T T.872, 6.5.3): twelve bytes that say nothing else. */
function isColours(segment: Uint8Array): boolean {
  return segment[1] === 0xee && segment.length === 16 && textAt(segment, 4, 5) === "Adobe";
}

function isExif(segment: Uint8Array): boolean {
  return segment[1] === 0xe1 && textAt(segment, 4, 6) === "Exif\0\0";
}

function exifOnly(segment: Uint8Array | undefined): Uint8Array | null {
  const orientation = segment === undefined ? 1 : orientationOf(segment.subarray(10));
  if (orientation === 1) return null;
  const header = Uint8Array.of(0xff, 0xe1, 0, 34, 0x45, 0x78, 0x69, 0x66, 0, 0);
  return joined([header, orientationTiff(orientation)]);
}

/**
 * The same picture, the same way up, without anything else that cameras write into it or behind it; null
 * where it is not a JPEG.
 */
export function withoutMetadata(bytes: Uint8Array): Uint8Array<ArrayBuffer> | null {
  const segments = jpegSegments(bytes);
  if (!segments) return null;
  const all = segments.map((segment) => ({
    segment,
    piece: bytes.subarray(segment.start, segment.end),
  }));
  const kept = all.filter(({ segment, piece }) => isPicture(segment) || isColours(piece));
  const [jfif = null] = all.flatMap(({ piece }) => jfifOnly(piece) ?? []);
  const exif = exifOnly(all.find(({ piece }) => isExif(piece))?.piece);
  return joined([
    startBytes,
    ...[jfif, exif].filter((piece) => piece !== null),
    ...kept.map(({ piece }) => piece),
    endBytes,
  ]);
}
