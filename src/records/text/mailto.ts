import { addressPart } from "./soundText.ts";

/** Programs for mail take addresses up to about here (common practice, no source). */
const mailCharacters = 8000;

export function isMailAddress(text: string): boolean {
  return /^[^\s@<>"?&]+@[^\s@<>"?&]+\.[^\s@<>"?&]+$/.test(text);
}

/** What opens a mail that is written so far; null where the address is none, or all of it is too long. */
export function mailto(to: string, subject: string, text = ""): string | null {
  if (!isMailAddress(to)) return null;
  const body = text === "" ? "" : `&body=${addressPart(text.replace(/\r?\n/g, "\r\n"))}`;
  const address = `mailto:${addressPart(to)}?subject=${addressPart(subject)}${body}`;
  return address.length <= mailCharacters ? address : null;
}
