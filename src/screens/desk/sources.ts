import type { Unpacked } from "../../compute/unpack.ts";
import type { Way } from "../../records/review/submission.ts";
import type { Frame } from "../../sharing/frame.ts";
import * as messages from "../../words/compiled/screens/desk.ts";

export async function* sourcesOfFiles(files: Iterable<File>): AsyncGenerator<Unpacked> {
  for (const file of files) yield { kind: "file", file };
}

export async function* sourceOfText(text: string, way: Way = "link"): AsyncGenerator<Unpacked> {
  yield { kind: "text", text, what: messages.pastedText, way };
}

export async function* sourceOfCode(frame: Frame): AsyncGenerator<Unpacked> {
  const [{ payloadText }, { openPrefix }] = await Promise.all([
    import("../../sharing/payload.ts"),
    import("../../sharing/shareLink.ts"),
  ]);
  const text = `${openPrefix}${payloadText(frame, "letters")}`;
  yield { kind: "text", text, what: messages.scannedCode, way: "code" };
}

/** Entries must be asked for in the very turn of the drop; the files in folders come afterwards. */
export function sourcesOfDrop(transfer: DataTransfer): AsyncGenerator<Unpacked> {
  const entries = [...transfer.items].flatMap((item) => item.webkitGetAsEntry?.() ?? []);
  if (entries.length > 0) return sourcesOfEntries(entries);
  const files = [...transfer.files];
  if (files.length > 0) return sourcesOfFiles(files);
  return sourceOfText(transfer.getData("text/plain"));
}

async function* sourcesOfEntries(entries: readonly FileSystemEntry[]): AsyncGenerator<Unpacked> {
  for (const entry of entries) {
    if (entry.isFile) yield { kind: "file", file: await fileOf(entry as FileSystemFileEntry) };
    else yield* sourcesOfFolder(entry as FileSystemDirectoryEntry);
  }
}

async function* sourcesOfFolder(folder: FileSystemDirectoryEntry): AsyncGenerator<Unpacked> {
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
