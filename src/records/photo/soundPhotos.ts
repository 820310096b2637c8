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

/** A photo that came in: of the type that its bytes are, without what its camera wrote; null: no picture. */
export function soundPhoto(photo: Photo): Photo | null {
  const bytes = bytesOfBase64(photo.data);
  const facts = bytes && pictureFacts(bytes);
  if (bytes === null || facts === null || isTooManyPixels(facts)) return null;
  const only = pictureOnly(bytes);
  if (only === null) return null;
  if (facts.type === photo.type && only.length === bytes.length) return photo;
  return { ...photo, type: facts.type, data: base64Of(only) };
}

/** Those that are pictures. */
export function soundPhotos(photos: readonly Photo[]): readonly Photo[] {
  return photos.map(soundPhoto).filter((photo) => photo !== null);
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
  const sound = soundPhotos(photos);
  const unchanged =
    sound.length === photos.length && sound.every((each, at) => each === photos[at]);
  if (unchanged) return { record, refused: 0 };
  return {
    record: sound.length === 0 ? rest : { ...record, photos: sound },
    refused: photos.length - sound.length,
  };
}
