import type { Photo } from "../../../records/check/checkRecord.ts";
import { recordBounds } from "../../../records/check/recordFormat.ts";
import { changeRecord, type StoredCheck } from "../../../records/check/storedCheck.ts";
import { withField } from "../../../records/entry/entryPath.ts";

/** One photo, and its place among all of the record. */
export interface PlacedPhoto {
  readonly photo: Photo;
  readonly index: number;
}

export function photosOf(stored: StoredCheck, reading: string): readonly PlacedPhoto[] {
  return (stored.record.photos ?? [])
    .map((photo, index) => ({ photo, index }))
    .filter(({ photo }) => photo.reading === reading);
}

export function hasRoomForPhoto(stored: StoredCheck): boolean {
  return (stored.record.photos?.length ?? 0) < recordBounds.photos;
}

/** With one more photo; without room for it the check stays as it is. */
export function withPhoto(stored: StoredCheck, photo: Photo): StoredCheck {
  if (!hasRoomForPhoto(stored)) return stored;
  return changeRecord(stored, (record) => ({
    ...record,
    photos: [...(record.photos ?? []), photo],
  }));
}

/** Without this very photo; the others stay as they are. */
export function withoutPhoto(stored: StoredCheck, photo: Photo): StoredCheck {
  return changeRecord(stored, (record) => {
    const photos = record.photos ?? [];
    const at = photos.findIndex(
      ({ data, reading }) => data === photo.data && reading === photo.reading,
    );
    if (at < 0) return record;
    const left = photos.filter((_, index) => index !== at);
    return withField(record, "photos", left.length === 0 ? undefined : left);
  });
}
