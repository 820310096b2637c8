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

/** How files begin that spreadsheets, documents and browsers keep for themselves. */
const foreignStarts = [
  "PK\u0003\u0004",
  "\u00d0\u00cf\u0011\u00e0",
  "%PDF",
  "{\\rtf",
  "<",
] as const;

/** Whether a file's beginning can be text of rows and columns at all. */
export function isText(start: Uint8Array, encoding: Encoding): boolean {
  const first = String.fromCharCode(...start.subarray(0, 64)).replace(
    /^(?:\u00ef\u00bb\u00bf)?\s*/,
    "",
  );
  if (foreignStarts.some((foreign) => first.startsWith(foreign))) return false;
  return encoding.startsWith("utf-16") || !start.includes(0);
}
