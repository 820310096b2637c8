import type { CheckRecord } from "../records/check/checkRecord.ts";
import type { Pack } from "../records/pack/pack.ts";
import { saveFile } from "./saveFile.ts";

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
  return [...plain].slice(0, 60).join("");
}

/** The record as one file, photos and all: what another phone, the desk and `assess` read. */
export function checkFile(record: CheckRecord): TextFile {
  const day = record.createdAt.slice(0, 10);
  return {
    name: `stopfit-${plainName(`${record.vehicle.label} ${record.axle}`) || "check"}-${day}.json`,
    text: `${JSON.stringify(record, null, 2)}\n`,
    mime: "application/json",
  };
}

/** A reference pack as one file, as it was on a day. */
export function packFile(pack: Pack, day: string): TextFile {
  return {
    name: `stopfit-pack-${plainName(pack.name) || "unnamed"}-${day}.json`,
    text: `${JSON.stringify(pack, null, 2)}\n`,
    mime: "application/json",
  };
}

/** Has the browser save a text as a file; false where the person would not have it saved after all. */
export function downloadFile({ name, text, mime }: TextFile): Promise<boolean> {
  return saveFile(new File([text], name, { type: mime }));
}

/**
 * The same for the share sheet. Made before the tap, because browsers open the sheet only straight
 * after one. Plain text, because browsers refuse to share JSON while they share text.
 */
export function fileToShare({ name, text }: TextFile): File {
  return new File([text], name.replace(/\.json$/, ".txt"), { type: "text/plain" });
}
