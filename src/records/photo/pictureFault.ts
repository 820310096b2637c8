import type { Fault } from "../../physics/outcome.ts";
import * as messages from "../../words/compiled/records/photo.ts";
import { boxedSize, pictureFacts } from "./pictureFile.ts";
import { isTooManyPixels } from "./soundPhotos.ts";

function fault(code: string, sentence: Fault["sentence"]): Fault {
  return { code, sentence };
}

const unreadable = fault("photoUnreadable", [messages.thisPictureCantBe]);

/** More than an ordinary camera gives; decoding what is larger would hold the phone up. */
const mostPixels = 50_000_000;
const mostBytes = 40_000_000;
/** A HEIF's sizes stand before its pictures. */
const beginning = 200_000;

/** Looks at the beginning of the file: nothing is decoded that is no picture, or one far too large. */
export async function pictureFault(file: Blob): Promise<Fault | null> {
  if (file.size > mostBytes) {
    return fault("photoTooLarge", [
      messages.thisFileIsToo({ file: Math.round(file.size / 1e6), mostBytes: mostBytes / 1e6 }),
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
    messages.thisPictureHasPixels({ width: size.width, height: size.height }),
  ]);
}
