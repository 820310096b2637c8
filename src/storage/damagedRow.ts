import { isSoundId } from "../records/check/soundStored.ts";
import { newId, type StoredCheck } from "../records/check/storedCheck.ts";
import {
  deletePictures,
  isInRow,
  keyOf,
  openRow,
  type PhotoInRow,
  type Pictures,
  photosIn,
  putCheck,
  withPhotos,
} from "./checkRow.ts";
import type { WriteTransaction } from "./database.ts";

/** The row as a text to be saved, with its pictures as far as they are there. */
export async function rowText(row: unknown, pictures: Pictures): Promise<string> {
  const photos: unknown[] = [];
  for (const photo of photosIn(row)) {
    const data = isInRow(photo)
      ? (await pictures.get(keyOf((row as StoredCheck).id, photo.picture)))?.data
      : undefined;
    photos.push(data === undefined ? photo : { ...(photo as PhotoInRow), data });
  }
  const whole = photos.length === 0 ? row : withPhotos(row, photos);
  // What holds itself ends there; what only stands in two places stands in both.
  const above: unknown[] = [];
  return JSON.stringify(
    whole,
    function (this: unknown, _, value: unknown) {
      if (typeof value === "bigint") return `${value}`;
      if (typeof value !== "object" || value === null) return value;
      while (above.length > 0 && above.at(-1) !== this) above.pop();
      if (above.includes(value)) return undefined;
      above.push(value);
      return value;
    },
    2,
  );
}

/**
 * Puts right what no address, list or clock can take: a row whose id is none gets one, dates far ahead
 * become today's.
 */
export async function healRow(transaction: WriteTransaction, key: IDBValidKey): Promise<void> {
  const checks = transaction.objectStore("checks");
  const range = IDBKeyRange.only(key);
  const row: unknown = await checks.get(range);
  const stored = await openRow(row, transaction.objectStore("pictures"));
  if (stored === null) return;
  if (isSoundId(key)) return putCheck(transaction, stored);
  const id = newId();
  await putCheck(transaction, { ...stored, id, record: { ...stored.record, id } });
  await checks.delete(range);
  if (typeof key === "string") await deletePictures(transaction, key);
}
