import type { IDBPObjectStore } from "idb";
import type { Photo } from "../records/check/checkRecord.ts";
import { type ListedCheck, type ListedPhoto, listedPhoto } from "../records/check/listedCheck.ts";
import { soundStored } from "../records/check/soundStored.ts";
import { newId, type StoredCheck } from "../records/check/storedCheck.ts";
import { cleanName } from "../records/text/soundText.ts";
import type { StopfitDatabase, StoreName, WriteTransaction } from "./database.ts";

/*
 * A check's row holds all but the pictures of its photos. They stand in a store of their own, so that a
 * keystroke does not write them again and a list does not read them. Rows of earlier versions hold theirs
 * themselves until they are next written.
 */

/** A photo in a row: its picture stands under the check's id and this. */
export interface PhotoInRow extends Omit<Photo, "data"> {
  readonly picture: string;
  readonly length: number;
}

export type Pictures = Pick<
  IDBPObjectStore<StopfitDatabase, StoreName[], "pictures", IDBTransactionMode>,
  "get"
>;

/** Where the picture of a photo that was read or written stands. */
const placeOf = new WeakMap<Photo, string>();

export const keyOf = (id: string, picture: string): string => `${id} ${picture}`;
const keysOf = (id: string): IDBKeyRange => IDBKeyRange.bound(`${id} `, `${id} \uffff`);

export function photosIn(row: unknown): readonly unknown[] {
  const photos = (row as { record?: { photos?: unknown } } | null | undefined)?.record?.photos;
  return Array.isArray(photos) ? photos : [];
}

export function withPhotos(row: unknown, photos: readonly unknown[] | undefined): unknown {
  const whole = row as { record: object };
  return { ...whole, record: { ...whole.record, photos } };
}

/** Whatever version wrote it: with its picture, or with the name of it. */
function isPhoto(photo: unknown): photo is ListedPhoto & { readonly picture?: string } {
  return isInRow(photo) || typeof (photo as Photo | null)?.data === "string";
}

export function isInRow(photo: unknown): photo is PhotoInRow {
  return typeof (photo as PhotoInRow | null)?.picture === "string";
}

/** Puts a check away whole: its row, the pictures that are not there yet, and no others. */
export async function putCheck(transaction: WriteTransaction, stored: StoredCheck): Promise<void> {
  const { id } = stored;
  const pictures = transaction.objectStore("pictures");
  const unused = new Set(await pictures.getAllKeys(keysOf(id)));
  const inRow: PhotoInRow[] = [];
  for (const photo of stored.record.photos ?? []) {
    const { data, ...rest } = photo;
    const picture = placeOf.get(photo) ?? newId();
    placeOf.set(photo, picture);
    const key = keyOf(id, picture);
    if (!unused.delete(key)) await pictures.put({ key, data });
    inRow.push({ ...rest, picture, length: data.length });
  }
  for (const key of unused) await pictures.delete(key);
  const row = stored.record.photos === undefined ? stored : withPhotos(stored, inRow);
  await transaction.objectStore("checks").put(row as StoredCheck);
}

/** A check for where no picture is to be written: those in the store already are named. */
export function rowOf(stored: StoredCheck): StoredCheck {
  const { photos } = stored.record;
  if (photos === undefined) return stored;
  const inRow = photos.map((photo) => {
    const picture = placeOf.get(photo);
    const { data, ...rest } = photo;
    return picture === undefined ? photo : { ...rest, picture, length: data.length };
  });
  return withPhotos(stored, inRow) as StoredCheck;
}

/** Takes a check away with its pictures. */
export async function deletePictures(transaction: WriteTransaction, id: string): Promise<void> {
  await transaction.objectStore("pictures").delete(keysOf(id));
}

/**
 * The check of a row, whole; null where it is none.
 *
 * @param known versions at hand, whose pictures need not be read again
 */
export async function openRow(
  row: unknown,
  pictures: Pictures,
  known: readonly (StoredCheck | null)[] = [],
): Promise<StoredCheck | null> {
  const inRow = photosIn(row);
  if (!inRow.some(isInRow)) return soundStored(row);
  const atHand = new Map<string | undefined, string>();
  for (const check of known) {
    for (const photo of check?.record.photos ?? []) atHand.set(placeOf.get(photo), photo.data);
  }
  const photos: unknown[] = [];
  for (const photo of inRow) {
    if (!isInRow(photo)) {
      photos.push(photo);
      continue;
    }
    const { picture, length: _, ...rest } = photo;
    const { id } = row as StoredCheck;
    const data = atHand.get(picture) ?? (await pictures.get(keyOf(id, picture)))?.data;
    if (data === undefined) continue;
    const whole: Photo = { ...rest, data };
    placeOf.set(whole, picture);
    photos.push(whole);
  }
  return soundStored(withPhotos(row, photos));
}

/** The check of a row for a list, without pictures; null where it is none. */
export function listedRow(row: unknown): ListedCheck | null {
  const inRow = photosIn(row);
  const opened = soundStored(inRow.length === 0 ? row : withPhotos(row, undefined));
  if (opened === null || inRow.length === 0) return opened;
  const photos = inRow.filter(isPhoto).map(({ picture: _, ...photo }) => listedPhoto(photo));
  return { ...opened, record: { ...opened.record, photos } };
}

/** A row of this phone's storage that is no check that can be shown. */
export interface RowSetAside {
  readonly key: IDBValidKey;
  /** What can be read of its name; empty: nothing. */
  readonly name: string;
}

/** The row set aside; null where it can be listed. */
export function rowSetAside(row: unknown, key: IDBValidKey): RowSetAside | null {
  if (listedOrNull(row) !== null) return null;
  const { name, record } = (row ?? {}) as { name?: unknown; record?: unknown };
  const { vehicle } = (record ?? {}) as { vehicle?: unknown };
  const { label } = (vehicle ?? {}) as { label?: unknown };
  const words = [name, label].find((text) => typeof text === "string" && text.trim() !== "");
  return { key, name: typeof words === "string" ? cleanName(words, 60) : "" };
}

/** As `listedRow`, whatever the row is. */
export function listedOrNull(row: unknown): ListedCheck | null {
  try {
    return listedRow(row);
  } catch {
    return null;
  }
}
