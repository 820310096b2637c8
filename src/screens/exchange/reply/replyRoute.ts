import { addressPart } from "../../../records/text/soundText.ts";

/** Where the desk's reply to a check on this phone is read. */
export function replyHref(storedId: string): string {
  return `#/reply/${addressPart(storedId)}`;
}
