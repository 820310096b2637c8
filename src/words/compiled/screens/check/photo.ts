// @ts-nocheck
/* Written by `npm run words` from the catalogue; change it there. */
import { select } from "@messageformat/runtime";
export const photoOf = (d: { name: string | number }): string => "Photo of the " + d.name;
export const photoOf2 = (d: { place: string | number; name: string | number }): string => "Photo " + d.place + " of the " + d.name;
export const remove = (d: { name: string | number }): string => "Remove: photo of the " + d.name;
export const photoRemoved: string = "Photo removed.";
export const undo: string = "Undo";
export const takePhoto: string = "Take photo";
export const choosePhoto: string = "Choose photo";
export const thisCheckHasPhotos = (d: { photos: string | number; hasPhotos: boolean }): string => "This check has " + d.photos + " photos, the most it can hold. Remove one " + select(d.hasPhotos, { true: "above", other: "at another reading" }) + " to take this one.";
export const thisPictureCantBe: string = "This picture can't be opened here. Take a photo, or choose a JPEG or PNG.";
export const thisPhotoIsToo: string = "This photo is too large. Step back a little and take another.";
export const remove2 = (d: { place: string | number; name: string | number }): string => "Remove: photo " + d.place + " of the " + d.name;
