import type { Fault } from "../../physics/outcome.ts";
import type { Way } from "../../records/review/submission.ts";
import type { Frame } from "../../sharing/frame.ts";

/** One thing to take in: a file that is not read yet, or a text. */
export type Source =
  | { readonly kind: "file"; readonly file: File; readonly from?: string }
  | {
      readonly kind: "text";
      readonly text: string;
      readonly what: string;
      readonly way: Way;
      readonly from?: string;
      readonly sentAt?: string;
    }
  /** What could not be taken apart, and why. */
  | { readonly kind: "refused"; readonly name: string; readonly fault: Fault };

export async function* sourcesOfFiles(files: Iterable<File>): AsyncGenerator<Source> {
  for (const file of files) yield { kind: "file", file };
}

export async function* sourceOfText(text: string, way: Way = "link"): AsyncGenerator<Source> {
  yield { kind: "text", text, what: "The pasted text", way };
}

export async function* sourceOfCode(frame: Frame): AsyncGenerator<Source> {
  const [{ payloadText }, { openPrefix }] = await Promise.all([
    import("../../sharing/payload.ts"),
    import("../../sharing/shareLink.ts"),
  ]);
  const text = `${openPrefix}${payloadText(frame, "letters")}`;
  yield { kind: "text", text, what: "The scanned code", way: "code" };
}

/** Entries must be asked for in the very turn of the drop; the files in folders come afterwards. */
export function sourcesOfDrop(transfer: DataTransfer): AsyncGenerator<Source> {
  const entries = [...transfer.items].flatMap((item) => item.webkitGetAsEntry?.() ?? []);
  if (entries.length > 0) return sourcesOfEntries(entries);
  const files = [...transfer.files];
  if (files.length > 0) return sourcesOfFiles(files);
  return sourceOfText(transfer.getData("text/plain"));
}

async function* sourcesOfEntries(entries: readonly FileSystemEntry[]): AsyncGenerator<Source> {
  for (const entry of entries) {
    if (entry.isFile) yield { kind: "file", file: await fileOf(entry as FileSystemFileEntry) };
    else yield* sourcesOfFolder(entry as FileSystemDirectoryEntry);
  }
}

async function* sourcesOfFolder(folder: FileSystemDirectoryEntry): AsyncGenerator<Source> {
  const reader = folder.createReader();
  // A reader gives a hundred or so at a time, and none once it is through.
  for (;;) {
    const entries = await new Promise<FileSystemEntry[]>((resolve) =>
      reader.readEntries(resolve, () => resolve([])),
    );
    if (entries.length === 0) return;
    yield* sourcesOfEntries(entries);
  }
}

/** A file that has gone meanwhile is an unreadable one: it must be told, not left out. */
function fileOf(entry: FileSystemFileEntry): Promise<File> {
  return new Promise((resolve) => entry.file(resolve, () => resolve(new File([], entry.name))));
}
