import type { Fault } from "../../physics/outcome.ts";
import { boxedSize, pictureFacts } from "./pictureFile.ts";
import { isTooManyPixels } from "./soundPhotos.ts";

function fault(code: string, sentence: Fault["sentence"]): Fault {
  return { code, sentence };
}

const unreadable = fault("photoUnreadable", [
  "This picture can't be opened here. Take a photo, or choose a JPEG or PNG.",
]);

/** More than an ordinary camera gives; decoding what is larger would hold the phone up. */
const mostPixels = 50_000_000;
const mostBytes = 40_000_000;
/** A HEIF's sizes stand before its pictures. */
const beginning = 200_000;

/** Looks at the beginning of the file: nothing is decoded that is no picture, or one far too large. */
export async function pictureFault(file: Blob): Promise<Fault | null> {
  if (file.size > mostBytes) {
    return fault("photoTooLarge", [
      `This file is too large for a photo: ${Math.round(file.size / 1e6)} MB, and the most is ${mostBytes / 1e6} MB.`,
    ]);
  }
  let bytes: Uint8Array;
  try {
    bytes = new Uint8Array(await file.arrayBuffer());
  } catch {
    return unreadable;
  }
  const size = pictureFacts(bytes) ?? boxedSize(bytes.subarray(0, beginning));
  if (size === null) return unreadable;
  if (!isTooManyPixels(size, mostPixels)) return null;
  return fault("photoTooLarge", [
    `This picture has ${size.width} × ${size.height} pixels, far more than can be opened here. Take one with the camera's usual setting.`,
  ]);
}
