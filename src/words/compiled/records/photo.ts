// @ts-nocheck
/* Written by `npm run words` from the catalogue; change it there. */
export const thisPictureCantBe: string = "This picture can't be opened here. Take a photo, or choose a JPEG or PNG.";
export const thisFileIsToo = (d: { file: string | number; mostBytes: string | number }): string => "This file is too large for a photo: " + d.file + " MB, and the most is " + d.mostBytes + " MB.";
export const thisPictureHasPixels = (d: { width: string | number; height: string | number }): string => "This picture has " + d.width + " × " + d.height + " pixels, far more than can be opened here. Take one with the camera's usual setting.";
