import { crc32, deflateSync } from "node:zlib";

/** A chunk of a PNG: length, type, data, CRC of type and data (ISO/IEC 15948, 5.3). */
export function pngChunk(type: string, data: Uint8Array): Buffer {
  const named = Buffer.concat([Buffer.from(type, "latin1"), data]);
  const length = Buffer.alloc(4);
  length.writeUInt32BE(data.length);
  const sum = Buffer.alloc(4);
  sum.writeUInt32BE(crc32(named));
  return Buffer.concat([length, named, sum]);
}

/** A PNG of one bit a pixel, black where `isLight` does not say otherwise, with `more` chunks before its pixels. */
export function plainPng(
  width: number,
  height: number,
  more: readonly Buffer[] = [],
  isLight?: (x: number, y: number) => boolean,
): Buffer {
  const header = Buffer.alloc(13);
  header.writeUInt32BE(width, 0);
  header.writeUInt32BE(height, 4);
  header.set([1, 0, 0, 0, 0], 8);
  const rowBytes = 1 + Math.ceil(width / 8);
  const rows = Buffer.alloc(height * rowBytes);
  for (let y = 0; isLight && y < height; y += 1) {
    for (let x = 0; x < width; x += 1) {
      const at = y * rowBytes + 1 + (x >> 3);
      if (isLight(x, y)) rows[at] = (rows[at] ?? 0) | (0x80 >> (x & 7));
    }
  }
  return Buffer.concat([
    Buffer.from("\u0089PNG\r\n\u001a\n", "latin1"),
    pngChunk("IHDR", header),
    ...more,
    pngChunk("IDAT", deflateSync(rows, { level: 9 })),
    pngChunk("IEND", Buffer.alloc(0)),
  ]);
}

export function webpChunk(type: string, data: Uint8Array): Buffer {
  const length = Buffer.alloc(4);
  length.writeUInt32LE(data.length);
  const pad = Buffer.alloc(data.length % 2);
  return Buffer.concat([Buffer.from(type, "latin1"), length, data, pad]);
}

/** A WebP of these chunks (RFC 9649, 2.4). */
export function webpOf(...chunks: readonly Uint8Array[]): Buffer {
  const body = Buffer.concat([Buffer.from("WEBP", "latin1"), ...chunks]);
  const head = Buffer.alloc(8);
  head.write("RIFF", "latin1");
  head.writeUInt32LE(body.length, 4);
  return Buffer.concat([head, body]);
}

/** An extended WebP that says it has Exif and XMP, its picture data cut down to a lossless header. */
export function extendedWebp(width: number, height: number): Buffer {
  const extended = Buffer.alloc(10);
  extended[0] = 0x08 | 0x04 | 0x10;
  extended.writeUIntLE(width - 1, 4, 3);
  extended.writeUIntLE(height - 1, 7, 3);
  return webpOf(
    webpChunk("VP8X", extended),
    webpChunk("VP8L", losslessHeader(width, height)),
    webpChunk("EXIF", Buffer.from("51 30 N")),
    webpChunk("XMP ", Buffer.from("<owner/>")),
  );
}

export function losslessHeader(width: number, height: number): Buffer {
  const header = Buffer.alloc(5);
  header[0] = 0x2f;
  header.writeUInt32LE((width - 1) | ((height - 1) << 14), 1);
  return header;
}

export function losslessWebp(width: number, height: number): Buffer {
  return webpOf(webpChunk("VP8L", Buffer.concat([losslessHeader(width, height), Buffer.alloc(8)])));
}

/** A picture of 2 × 2 pixels as a record holds it. */
export const tinyPhoto = {
  type: "image/png" as const,
  data: plainPng(2, 2).toString("base64"),
};
