/** How the letters of a text file are told apart. */
export type Encoding = "utf-8" | "utf-16le" | "utf-16be" | "windows-1252";

/**
 * By the byte order mark that spreadsheets write; without one by the zeros of UTF-16 text; UTF-8 where
 * the first piece is such, else the common one of older programs. `whole`: the piece is the whole file.
 */
export function encodingOf(start: Uint8Array, whole: boolean): Encoding {
  if (start[0] === 0xff && start[1] === 0xfe) return "utf-16le";
  if (start[0] === 0xfe && start[1] === 0xff) return "utf-16be";
  const look = start.subarray(0, 400);
  const zeros = (parity: number) =>
    look.filter((byte, place) => byte === 0 && place % 2 === parity).length;
  if (zeros(1) > look.length / 4) return "utf-16le";
  if (zeros(0) > look.length / 4) return "utf-16be";
  try {
    new TextDecoder("utf-8", { fatal: true }).decode(start, { stream: !whole });
    return "utf-8";
  } catch {
    return "windows-1252";
  }
}
