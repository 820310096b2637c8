import { fail, type Outcome, succeed } from "../physics/outcome.ts";

/** Can this device hand such a file to its share sheet? */
export function canShareFile(file: File): boolean {
  if (typeof navigator.canShare !== "function" || typeof navigator.share !== "function") {
    return false;
  }
  try {
    return navigator.canShare({ files: [file] });
  } catch {
    return false;
  }
}

export function canShareLink(address: string): boolean {
  if (typeof navigator.share !== "function") return false;
  try {
    return navigator.canShare?.({ url: address }) ?? true;
  } catch {
    return false;
  }
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
    return fail("shareRefused", [
      "The share sheet did not open. Save the file and attach it to a message instead.",
    ]);
  }
}

export async function copyText(text: string): Promise<Outcome<null>> {
  try {
    await navigator.clipboard.writeText(text);
    return succeed(null);
  } catch {
    return fail("copyRefused", [
      "The browser does not let this page copy. Mark the link below and copy it by hand.",
    ]);
  }
}
