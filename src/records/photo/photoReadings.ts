import type { PartialCheckRecord } from "../check/checkRecord.ts";
import { withField } from "../entry/entryPath.ts";

/** The record with each photo at the reading that `rename` gives, or without it where that is null. */
export function withPhotosAt(
  record: PartialCheckRecord,
  rename: (reading: string) => string | null,
): PartialCheckRecord {
  if (!record.photos) return record;
  const photos = record.photos.flatMap((photo) => {
    const reading = photo.reading === undefined ? undefined : rename(photo.reading);
    if (reading === null) return [];
    return [reading === photo.reading || reading === undefined ? photo : { ...photo, reading }];
  });
  return withField(record, "photos", photos.length === 0 ? undefined : photos);
}
