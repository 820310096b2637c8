import type { CheckRecord } from "../records/check/checkRecord.ts";

/** A file ready to be saved or shared. */
export interface TextFile {
  readonly name: string;
  readonly text: string;
  readonly mime: string;
}

/** A name that every file system takes: letters and digits of any script, hyphens between. */
function plainName(label: string): string {
  const plain = label
    .normalize("NFKC")
    .replace(/[^\p{L}\p{N}]+/gu, "-")
    .replace(/^-+|-+$/g, "");
  return [...plain].slice(0, 60).join("") || "check";
}

/** The record as one file, photos and all: what another phone, the desk and `assess` read. */
export function checkFile(record: CheckRecord): TextFile {
  const day = record.createdAt.slice(0, 10);
  return {
    name: `stopfit-${plainName(`${record.vehicle.label} ${record.axle}`)}-${day}.json`,
    text: `${JSON.stringify(record, null, 2)}\n`,
    mime: "application/json",
  };
}

/** Has the browser save a file. Needs a document; throws only where the browser itself does. */
export function downloadFile({ name, text, mime }: TextFile): void {
  const address = URL.createObjectURL(new Blob([text], { type: mime }));
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
  link.hidden = true;
  document.body.append(link);
  link.click();
  link.remove();
  // Some browsers read the address only after the tap has been dealt with.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}

export function downloadCheck(record: CheckRecord): void {
  downloadFile(checkFile(record));
}
