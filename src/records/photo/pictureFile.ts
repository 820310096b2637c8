import { jpegSegments, withoutMetadata } from "./jpegSegments.ts";

type PictureType = "image/jpeg" | "image/png" | "image/webp";

/** What a picture's file says of it at its beginning, before anything of it is decoded. */
export interface PictureFacts {
  readonly type: PictureType;
  /** Pixels. */
  readonly width: number;
  readonly height: number;
}

function big32(bytes: Uint8Array, at: number): number {
  return (
    (bytes[at] ?? 0) * 0x1000000 +
    (((bytes[at + 1] ?? 0) << 16) | ((bytes[at + 2] ?? 0) << 8) | (bytes[at + 3] ?? 0))
  );
}

function little(bytes: Uint8Array, at: number, count: number): number {
  let value = 0;
  for (let index = count - 1; index >= 0; index -= 1)
    value = value * 256 + (bytes[at + index] ?? 0);
  return value;
}

function textAt(bytes: Uint8Array, at: number, count: number): string {
  return String.fromCharCode(...bytes.subarray(at, at + count));
}

/** Frame headers: SOF0 to SOF15 without DHT, JPG and DAC (ITU-T T.81, Table B.1 and B.2.2). */
function isFrame(marker: number): boolean {
  return marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker);
}

function jpegFacts(bytes: Uint8Array): PictureFacts | null {
  const frame = jpegSegments(bytes)?.find(({ marker }) => isFrame(marker));
  if (frame === undefined || frame.end - frame.start < 10) return null;
  const [height, width] = [frame.start + 5, frame.start + 7].map(
    (at) => ((bytes[at] ?? 0) << 8) | (bytes[at + 1] ?? 0),
  );
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

function joined(pieces: readonly Uint8Array[]): Uint8Array<ArrayBuffer> {
  const whole = new Uint8Array(pieces.reduce((sum, piece) => sum + piece.length, 0));
  let at = 0;
  for (const piece of pieces) {
    whole.set(piece, at);
    at += piece.length;
  }
  return whole;
}

/** What is needed to show a PNG (ISO/IEC 15948, 11.2 and 11.3); all else tells of its maker. */
const shownChunks = [
  "IHDR",
  "PLTE",
  "IDAT",
  "IEND",
  "tRNS",
  "gAMA",
  "cHRM",
  "sRGB",
  "iCCP",
  "sBIT",
];

/** Null where the chunks do not go on to IEND. */
function pngOnly(bytes: Uint8Array): Uint8Array<ArrayBuffer> | null {
  const pieces = [bytes.subarray(0, 8)];
  for (let at = 8; at + 12 <= bytes.length; ) {
    const end = at + 12 + big32(bytes, at);
    const type = textAt(bytes, at + 4, 4);
    if (end > bytes.length) return null;
    if (shownChunks.includes(type)) pieces.push(bytes.subarray(at, end));
    if (type === "IEND") return joined(pieces);
    at = end;
  }
  return null;
}

const webpAboutTheTaker = ["EXIF", "XMP "];
/** The flags of VP8X that say that those are there. */
const webpFlags = 0x08 | 0x04;

function webpOnly(bytes: Uint8Array): Uint8Array<ArrayBuffer> | null {
  const pieces: Uint8Array[] = [];
  for (let at = 12; at + 8 <= bytes.length; ) {
    const type = textAt(bytes, at, 4);
    const length = little(bytes, at + 4, 4);
    const end = at + 8 + length + (length % 2);
    if (at + 8 + length > bytes.length) return null;
    if (!webpAboutTheTaker.includes(type)) {
      const piece = bytes.slice(at, Math.min(end, bytes.length));
      if (type === "VP8X") piece[8] = (piece[8] ?? 0) & ~webpFlags;
      pieces.push(piece);
    }
    at = end;
  }
  if (pieces.length === 0) return null;
  const whole = joined([bytes.subarray(0, 12), ...pieces]);
  new DataView(whole.buffer).setUint32(4, whole.length - 8, true);
  return whole;
}

/** Where a JPEG ends, its end marker included; what cameras hang on behind it is no part of the picture. */
function jpegEnd(bytes: Uint8Array): number {
  const segments = jpegSegments(bytes);
  let at = segments?.at(-1)?.end ?? bytes.length;
  for (at = bytes.indexOf(0xff, at); at !== -1; at = bytes.indexOf(0xff, at)) {
    const marker = bytes[at + 1];
    if (marker === 0xd9) return at + 2;
    const isInScan = marker === 0x00 || marker === 0xff || (marker ?? 0) >> 3 === 0xd0 >> 3;
    const length = ((bytes[at + 2] ?? 0) << 8) | (bytes[at + 3] ?? 0);
    at += isInScan ? 1 : 2 + Math.max(2, length);
  }
  return bytes.length;
}

/** The same picture without what tells of its taker; null where it is not one of the three whole. */
export function pictureOnly(bytes: Uint8Array): Uint8Array<ArrayBuffer> | null {
  switch (pictureFacts(bytes)?.type) {
    case "image/jpeg":
      return withoutMetadata(bytes.subarray(0, jpegEnd(bytes)));
    case "image/png":
      return pngOnly(bytes);
    case "image/webp":
      return webpOnly(bytes);
    default:
      return null;
  }
}
