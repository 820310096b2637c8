import type { PartialCheckRecord, Photo } from "./checkRecord.ts";
import type { StoredCheck } from "./storedCheck.ts";

/** A photo as a list has it: without its picture, of which only the length is known. */
export interface ListedPhoto extends Omit<Photo, "data"> {
  readonly data?: string;
  /** Base64 characters of the picture. */
  readonly length?: number;
}

interface ListedRecord extends Omit<PartialCheckRecord, "photos"> {
  readonly photos?: readonly ListedPhoto[];
}

/**
 * A check as a list has it. Every stored check is one; one without its pictures is no stored check, so
 * that it cannot be put back in the place of the whole.
 */
export interface ListedCheck extends Omit<StoredCheck, "record"> {
  readonly record: ListedRecord;
}

export function listedPhoto({ data, length, ...photo }: ListedPhoto): ListedPhoto {
  return { ...photo, length: data?.length ?? length ?? 0 };
}

/** The check without the pictures of its photos. */
export function listedCheck(check: ListedCheck): ListedCheck {
  const { photos, ...record } = check.record;
  if (photos === undefined) return check;
  return { ...check, record: { ...record, photos: photos.map(listedPhoto) } };
}
