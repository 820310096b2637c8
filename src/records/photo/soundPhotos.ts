import type { CheckRecord, Photo } from "../check/checkRecord.ts";
import { type PictureFacts, pictureFacts, pictureOnly } from "./pictureFile.ts";

/** Far above what the app itself makes (1280 px), low enough for any phone to show. */
const mostPixels = 24_000_000;
const mostSide = 12_000;

/** Is it more than a phone can show without a stand-still? */
export function isTooManyPixels(
  { width, height }: Pick<PictureFacts, "width" | "height">,
  most = mostPixels,
): boolean {
  return width * height > most || Math.max(width, height) > mostSide;
}

export function bytesOfBase64(text: string): Uint8Array | null {
  try {
    return Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));
  } catch {
    return null;
  }
}

export function base64Of(bytes: Uint8Array): string {
  let text = "";
  const piece = 0x8000;
  for (let at = 0; at < bytes.length; at += piece) {
    text += String.fromCharCode(...bytes.subarray(at, at + piece));
  }
  return btoa(text);
}

/** As many as a phone can hold at once, decoded. */
const mostPixelsTogether = 120_000_000;

interface Sound {
  readonly photo: Photo;
  readonly pixels: number;
}

/** Of the type that its bytes are, without what its camera wrote; null: no picture. */
function sound(photo: Photo): Sound | null {
  const bytes = bytesOfBase64(photo.data);
  const facts = bytes && pictureFacts(bytes);
  if (bytes === null || facts === null || isTooManyPixels(facts)) return null;
  const only = pictureOnly(bytes);
  if (only === null) return null;
  const data = base64Of(only);
  const unchanged = facts.type === photo.type && data === photo.data;
  return {
    photo: unchanged ? photo : { ...photo, type: facts.type, data },
    pixels: facts.width * facts.height,
  };
}

/** A photo that came in alone; null: no picture. */
export function soundPhoto(photo: Photo): Photo | null {
  return sound(photo)?.photo ?? null;
}

/** Photos that came in: those that are pictures, as many as can be shown together. */
export function soundPhotos(photos: readonly Photo[]): readonly Photo[] {
  let pixels = 0;
  return photos.flatMap((photo) => {
    const one = sound(photo);
    if (one === null || pixels + one.pixels > mostPixelsTogether) return [];
    pixels += one.pixels;
    return [one.photo];
  });
}

export interface WithSoundPhotos {
  readonly record: CheckRecord;
  /** Photos that were no pictures that can be shown, and so were left out. */
  readonly refused: number;
}

/** The record with those of its photos that are pictures, each without what its camera wrote beside it. */
export function withSoundPhotos(record: CheckRecord): WithSoundPhotos {
  const { photos, ...rest } = record;
  if (photos === undefined) return { record, refused: 0 };
  const shown = soundPhotos(photos);
  const unchanged =
    shown.length === photos.length && shown.every((each, at) => each === photos[at]);
  if (unchanged) return { record, refused: 0 };
  return {
    record: shown.length === 0 ? rest : { ...record, photos: shown },
    refused: photos.length - shown.length,
  };
}
