import { fail, type Outcome, succeed } from "../../../physics/outcome.ts";
import type { Photo } from "../../../records/check/checkRecord.ts";
import { recordBounds } from "../../../records/check/recordFormat.ts";
import { withoutMetadata } from "../../../records/photo/jpegSegments.ts";
import { pictureFault } from "../../../records/photo/pictureFault.ts";
import { base64Of } from "../../../records/photo/soundPhotos.ts";
import * as messages from "../../../words/compiled/screens/check/photo.ts";

/** Enough to see the points of a measurement, small enough for many checks, px. */
const longestSide = 1280;
const qualities = [0.72, 0.6, 0.45] as const;
/** Base64 characters that one photo may take: what a phone writes away without a pause. */
const wantedCharacters = 300_000;

const unreadable = (): Outcome<never> => fail("photoUnreadable", [messages.thisPictureCantBe]);

/** The size with the longest side at most `longest`, whole pixels; never larger than it was. */
function reducedSize(
  width: number,
  height: number,
  longest = longestSide,
): { width: number; height: number } {
  const scale = Math.min(1, longest / Math.max(width, height));
  return {
    width: Math.max(1, Math.round(width * scale)),
    height: Math.max(1, Math.round(height * scale)),
  };
}

function encoded(canvas: HTMLCanvasElement, quality: number): Promise<Blob | null> {
  return new Promise((done) => canvas.toBlob(done, "image/jpeg", quality));
}

async function opened(file: Blob): Promise<HTMLImageElement | null> {
  const address = URL.createObjectURL(file);
  const image = new Image();
  try {
    image.src = address;
    // Decoded the way round that the camera was held.
    await image.decode();
    return image.naturalWidth > 0 && image.naturalHeight > 0 ? image : null;
  } catch {
    return null;
  } finally {
    URL.revokeObjectURL(address);
  }
}

/**
 * A photo for the record: upright, at most 1280 px long, as a JPEG drawn anew, so that nothing which
 * the camera wrote beside the picture (place, time, owner) goes along.
 */
export async function reducedPhoto(file: Blob, reading: string): Promise<Outcome<Photo>> {
  const fault = await pictureFault(file);
  if (fault !== null) return { ok: false, fault };
  const image = await opened(file);
  if (!image) return unreadable();
  const { width, height } = reducedSize(image.naturalWidth, image.naturalHeight);
  const canvas = document.createElement("canvas");
  canvas.width = width;
  canvas.height = height;
  const context = canvas.getContext("2d");
  if (!context) return unreadable();
  // What a PNG leaves clear is white, not black.
  context.fillStyle = "#ffffff";
  context.fillRect(0, 0, width, height);
  context.drawImage(image, 0, 0, width, height);
  for (const quality of qualities) {
    const blob = await encoded(canvas, quality);
    const bytes = blob && withoutMetadata(new Uint8Array(await blob.arrayBuffer()));
    if (!bytes) return unreadable();
    const data = base64Of(bytes);
    const isLast = quality === qualities.at(-1);
    if (data.length <= (isLast ? recordBounds.photoCharacters : wantedCharacters)) {
      return succeed({ type: "image/jpeg", data, reading });
    }
  }
  return fail("photoTooLarge", [messages.thisPhotoIsToo]);
}
