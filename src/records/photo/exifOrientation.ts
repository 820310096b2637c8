import { big16, big32, little, textAt } from "../bytes/bytes.ts";

/*
 * Which way up a camera was held: the one thing of its Exif that is needed to show the picture. An Exif
 * block is a TIFF file whose first directory holds it (Exif 2.3, JEITA CP-3451C, 4.6.4 A, "Orientation";
 * TIFF 6.0, section 2).
 */

const orientationTag = 0x0112;
const ofShorts = 3;
const entryBytes = 12;

/** 1 (as it lies in the file) to 8, turned and mirrored; 1 also where the block does not say. */
export function orientationOf(tiff: Uint8Array): number {
  const order = textAt(tiff, 0, 2);
  if (order !== "II" && order !== "MM") return 1;
  const isLittle = order === "II";
  const short = (at: number) => (isLittle ? little(tiff, at, 2) : big16(tiff, at));
  const first = isLittle ? little(tiff, 4, 4) : big32(tiff, 4);
  const entries = first + 2 <= tiff.length ? short(first) : 0;
  for (let entry = 0; entry < entries; entry += 1) {
    const at = first + 2 + entry * entryBytes;
    if (at + entryBytes > tiff.length) return 1;
    if (short(at) !== orientationTag) continue;
    const value = short(at + 8);
    return short(at + 2) === ofShorts && value >= 1 && value <= 8 ? value : 1;
  }
  return 1;
}

/** An Exif block that holds the orientation and nothing else. */
export function orientationTiff(orientation: number): Uint8Array<ArrayBuffer> {
  const tiff = new Uint8Array(26);
  const view = new DataView(tiff.buffer);
  view.setUint16(0, 0x4d4d);
  view.setUint16(2, 42);
  view.setUint32(4, 8);
  view.setUint16(8, 1);
  view.setUint16(10, orientationTag);
  view.setUint16(12, ofShorts);
  view.setUint32(14, 1);
  view.setUint16(18, orientation);
  return tiff;
}
