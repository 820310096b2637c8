import { fail, type Outcome, succeed } from "../physics/outcome.ts";
import * as messages from "../words/compiled/sharing.ts";

function canShare(data: ShareData): boolean {
  if (typeof navigator.share !== "function") return false;
  try {
    // Who shares and can't be asked takes words, no files.
    return navigator.canShare?.(data) ?? data.files === undefined;
  } catch {
    return false;
  }
}

/** Can this device hand such a file to its share sheet? */
export function canShareFile(file: File): boolean {
  return canShare({ files: [file] });
}

export function canShareLink(address: string): boolean {
  return canShare({ url: address });
}

export function canShareText(text: string): boolean {
  return canShare({ text });
}

/** "closed": the person left the share sheet without sending. */
export type Shared = "handed over" | "closed";

/** Must be called in the very turn of the tap. */
export async function share(data: ShareData): Promise<Outcome<Shared>> {
  try {
    await navigator.share(data);
    return succeed("handed over");
  } catch (error) {
    if (error instanceof Error && error.name === "AbortError") return succeed("closed");
    return fail("shareRefused", [messages.shareSheetDidNot]);
  }
}

export async function copyText(text: string): Promise<Outcome<null>> {
  try {
    await navigator.clipboard.writeText(text);
    return succeed(null);
  } catch {
    return fail("copyRefused", [messages.browserDoesNotLet]);
  }
}
