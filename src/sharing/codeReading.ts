import decodeQR, { decodeQRBatch } from "qr/decode.js";

/** Pixels as a canvas gives them: RGBA, row after row. */
export interface Pixels {
  readonly width: number;
  readonly height: number;
  readonly data: Uint8ClampedArray;
}

/** The text of the QR code in one frame of a camera; empty where none can be read in it. */
export function readFrameOfCamera(pixels: Pixels): string[] {
  try {
    return [decodeQR(pixels)];
  } catch {
    return [];
  }
}

/** The texts of all QR codes in a still picture, at any effort it takes. */
export async function readStillPicture(pixels: Pixels): Promise<string[]> {
  const found = await decodeQRBatch([pixels], {
    effort: Number.POSITIVE_INFINITY,
    timeLimit: 1500,
    maxSize: { width: pixels.width, height: pixels.height },
  });
  return found.flat().filter((each) => typeof each === "string");
}
