import { big16, big32, joined, little, textAt } from "../bytes/bytes.ts";
import { crc32 } from "../bytes/checksum.ts";
import type { pictureTypes } from "../check/recordFormat.ts";
import { orientationOf, orientationTiff } from "./exifOrientation.ts";
import { isFrame, jpegSegments, withoutMetadata } from "./jpegSegments.ts";

type PictureType = (typeof pictureTypes)[number];

/** What a picture's file says of it at its beginning, before anything of it is decoded. */
export interface PictureFacts {
  readonly type: PictureType;
  /** Pixels. */
  readonly width: number;
  readonly height: number;
}

function jpegFacts(bytes: Uint8Array): PictureFacts | null {
  const frame = jpegSegments(bytes)?.find(isFrame);
  if (frame === undefined || frame.end - frame.start < 10) return null;
  const height = big16(bytes, frame.start + 5);
  const width = big16(bytes, frame.start + 7);
  return width && height ? { type: "image/jpeg", width, height } : null;
}

const pngSignature = "\u0089PNG\r\n\u001a\n";

/** The size stands in IHDR, which comes first (ISO/IEC 15948, 11.2.2). */
function pngFacts(bytes: Uint8Array): PictureFacts | null {
  if (bytes.length < 33 || textAt(bytes, 12, 4) !== "IHDR") return null;
  const [width, height] = [big32(bytes, 16), big32(bytes, 20)];
  return width > 0 && height > 0 ? { type: "image/png", width, height } : null;
}

/** The size of a lossy, lossless or extended WebP (RFC 9649, 2.5 to 2.7). */
function webpFacts(bytes: Uint8Array): PictureFacts | null {
  const type = "image/webp";
  switch (textAt(bytes, 12, 4)) {
    case "VP8 ": {
      const width = little(bytes, 26, 2) & 0x3fff;
      const height = little(bytes, 28, 2) & 0x3fff;
      return width > 0 && height > 0 ? { type, width, height } : null;
    }
    case "VP8L": {
      const bits = little(bytes, 21, 4);
      return { type, width: (bits % 0x4000) + 1, height: (Math.floor(bits / 0x4000) % 0x4000) + 1 };
    }
    case "VP8X":
      return { type, width: little(bytes, 24, 3) + 1, height: little(bytes, 27, 3) + 1 };
    default:
      return null;
  }
}

/** Type and size of a JPEG, PNG or WebP; null where the bytes begin as none of them. */
export function pictureFacts(bytes: Uint8Array): PictureFacts | null {
  if (bytes[0] === 0xff && bytes[1] === 0xd8) return jpegFacts(bytes);
  if (textAt(bytes, 0, 8) === pngSignature) return pngFacts(bytes);
  const isWebp = textAt(bytes, 0, 4) === "RIFF" && textAt(bytes, 8, 4) === "WEBP";
  return isWebp && bytes.length >= 30 ? webpFacts(bytes) : null;
}

/**
 * The greatest size that a HEIF or AVIF says of an image in it: its "ispe" boxes (ISO/IEC 23008-12, 6.5.3),
 * which stand near its beginning. Null where the bytes are no such file.
 */
export function boxedSize(bytes: Uint8Array): Pick<PictureFacts, "width" | "height"> | null {
  if (textAt(bytes, 4, 4) !== "ftyp") return null;
  let size: Pick<PictureFacts, "width" | "height"> | null = null;
  for (let at = bytes.indexOf(0x69); at !== -1; at = bytes.indexOf(0x69, at + 1)) {
    if (textAt(bytes, at, 4) !== "ispe" || at + 16 > bytes.length) continue;
    const [width, height] = [big32(bytes, at + 8), big32(bytes, at + 12)];
    if (size === null || width * height > size.width * size.height) size = { width, height };
  }
  return size;
}

/** What is needed to show a PNG (ISO/IEC 15948, 11.2 and 11.3); all else tells of its maker. */
const shownChunks = ["PLTE", "IDAT", "tRNS", "gAMA", "cHRM", "sRGB", "sBIT"];

/** Type, data and their CRC-32 (ISO/IEC 15948, 5.3). */
function pngChunk(type: string, data: Uint8Array): Uint8Array<ArrayBuffer> {
  const chunk = new Uint8Array(12 + data.length);
  const view = new DataView(chunk.buffer);
  view.setUint32(0, data.length);
  chunk.set(new TextEncoder().encode(type), 4);
  chunk.set(data, 8);
  view.setUint32(8 + data.length, crc32(chunk.subarray(4, 8 + data.length)));
  return chunk;
}

/** Null where the chunks do not go on to IEND. */
function pngOnly(bytes: Uint8Array): Uint8Array<ArrayBuffer> | null {
  const header = bytes.subarray(0, 33);
  const pieces: Uint8Array[] = [];
  let orientation = 1;
  for (let at = header.length; at + 12 <= bytes.length; ) {
    const end = at + 12 + big32(bytes, at);
    const type = textAt(bytes, at + 4, 4);
    if (end > bytes.length) return null;
    if (type === "eXIf") orientation = orientationOf(bytes.subarray(at + 8, end - 4));
    if (type === "IEND") {
      const exif = orientation === 1 ? [] : [pngChunk("eXIf", orientationTiff(orientation))];
      return joined([header, ...exif, ...pieces, bytes.subarray(at, end)]);
    }
    if (shownChunks.includes(type)) pieces.push(bytes.subarray(at, end));
    at = end;
  }
  return null;
}

interface WebpChunk {
  readonly type: string;
  readonly data: Uint8Array;
}

/** Null where one is cut short. */
function webpChunks(bytes: Uint8Array): readonly WebpChunk[] | null {
  const chunks: WebpChunk[] = [];
  for (let at = 12; at + 8 <= bytes.length; ) {
    const length = little(bytes, at + 4, 4);
    const end = at + 8 + length;
    if (end > bytes.length) return null;
    chunks.push({ type: textAt(bytes, at, 4), data: bytes.subarray(at + 8, end) });
    at = end + (length % 2);
  }
  return chunks;
}

function webpChunk(type: string, data: Uint8Array): Uint8Array {
  const chunk = new Uint8Array(8 + data.length + (data.length % 2));
  chunk.set(new TextEncoder().encode(type));
  new DataView(chunk.buffer).setUint32(4, data.length, true);
  chunk.set(data, 8);
  return chunk;
}

const hasAlpha = 0x10;
const hasExif = 0x08;

/** The picture of a WebP that does not move (RFC 9649, 2.5 to 2.7), of the size that it says; or null. */
function webpOnly(bytes: Uint8Array): Uint8Array<ArrayBuffer> | null {
  const chunks = webpChunks(bytes) ?? [];
  const picture = chunks.find(({ type }) => type === "VP8 " || type === "VP8L");
  if (picture === undefined) return null;
  const plain = joined([bytes.subarray(0, 12), webpChunk(picture.type, picture.data)]);
  const [facts, inside] = [webpFacts(bytes), webpFacts(plain)];
  if (facts?.width !== inside?.width || facts?.height !== inside?.height) return null;
  const exif = chunks.find(({ type }) => type === "EXIF")?.data;
  const bare = exif && textAt(exif, 0, 4) === "Exif" ? exif.subarray(6) : exif;
  const orientation = bare === undefined ? 1 : orientationOf(bare);
  const extended = chunks.find(({ type }) => type === "VP8X")?.data.slice(0, 10);
  const alpha = chunks.find(({ type }) => type === "ALPH");
  if (extended) {
    const turned = orientation === 1 ? 0 : hasExif;
    extended.set([((extended[0] ?? 0) & hasAlpha) | turned, 0, 0, 0]);
  }
  const pieces = [
    ...(extended ? [webpChunk("VP8X", extended)] : []),
    ...(extended && alpha ? [webpChunk("ALPH", alpha.data)] : []),
    webpChunk(picture.type, picture.data),
    ...(extended && orientation !== 1 ? [webpChunk("EXIF", orientationTiff(orientation))] : []),
  ];
  const whole = joined([bytes.subarray(0, 12), ...pieces]);
  new DataView(whole.buffer).setUint32(4, whole.length - 8, true);
  return whole;
}

/**
 * The same picture, the same way up, without what tells of its taker; null where it is not one of the
 * three whole.
 */
export function pictureOnly(bytes: Uint8Array): Uint8Array<ArrayBuffer> | null {
  switch (pictureFacts(bytes)?.type) {
    case "image/jpeg":
      return withoutMetadata(bytes);
    case "image/png":
      return pngOnly(bytes);
    case "image/webp":
      return webpOnly(bytes);
    default:
      return null;
  }
}
