import type { Pixels } from "../../src/sharing/codeReading.ts";
import { drawCode } from "../../src/sharing/qrDrawing.ts";

/** The modules of a code, row after row: true is dark. */
export function modulesOf(text: string, digits: string): boolean[][] {
  const drawn = drawCode(text, digits);
  if (!drawn.ok) throw new Error("not drawn");
  const { size, isDark } = drawn.value;
  return Array.from({ length: size }, (_, y) =>
    Array.from({ length: size }, (_, x) => isDark(x, y)),
  );
}

/** A picture of the screen itself: 6 px a module, nothing blurred. */
export function screenPicture(modules: readonly (readonly boolean[])[]): Pixels {
  const side = (modules.length + 8) * 6;
  const data = new Uint8ClampedArray(side * side * 4).fill(255);
  for (let y = 0; y < side; y += 1) {
    for (let x = 0; x < side; x += 1) {
      if (modules[Math.floor(y / 6) - 4]?.[Math.floor(x / 6) - 4] !== true) continue;
      data.fill(0, (y * side + x) * 4, (y * side + x) * 4 + 3);
    }
  }
  return { width: side, height: side, data };
}

/** Pictures beside each other, on gray, at least so wide. */
export function beside(pictures: readonly Pixels[], atLeast = 0): Pixels {
  const width = Math.max(
    atLeast,
    pictures.reduce((sum, picture) => sum + picture.width, 0),
  );
  const height = Math.max(...pictures.map((picture) => picture.height));
  const data = new Uint8ClampedArray(width * height * 4).fill(210);
  let left = 0;
  for (const picture of pictures) {
    for (let y = 0; y < picture.height; y += 1) {
      const row = picture.data.subarray(y * picture.width * 4, (y + 1) * picture.width * 4);
      data.set(row, (y * width + left) * 4);
    }
    left += picture.width;
  }
  return { width, height, data };
}
