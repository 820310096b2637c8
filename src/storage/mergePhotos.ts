import type { PartialCheckRecord, Photo } from "../records/check/checkRecord.ts";
import { withField } from "../records/entry/entryPath.ts";

type Photos = readonly Photo[] | undefined;

function has(photos: Photos, wanted: Photo): boolean {
  return (photos ?? []).some(
    ({ data, reading }) => data === wanted.data && reading === wanted.reading,
  );
}

/** The photos of both versions, without those that either has taken out since `base`. */
export function withMergedPhotos(
  merged: PartialCheckRecord,
  base: Photos,
  mine: Photos,
  theirs: Photos,
): PartialCheckRecord {
  const stay = (mine ?? []).filter((photo) => !has(base, photo) || has(theirs, photo));
  const come = (theirs ?? []).filter((photo) => !has(base, photo) && !has(mine, photo));
  const photos = [...stay, ...come];
  return withField(merged, "photos", photos.length === 0 ? undefined : photos);
}
