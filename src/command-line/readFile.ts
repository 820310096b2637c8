import { readFileSync, statSync } from "node:fs";
import { fail, type Outcome, succeed } from "../physics/outcome.ts";
import { recordBounds } from "../records/check/recordFormat.ts";

function codeOf(error: unknown): string {
  return typeof error === "object" && error !== null && "code" in error ? String(error.code) : "";
}

const reasons: { readonly [code: string]: string } = {
  ENOENT: "There is no file of this name.",
  ENOTDIR: "There is no file of this name.",
  EACCES: "The file may not be read: permission is refused.",
  EPERM: "The file may not be read: permission is refused.",
  EISDIR: "This is a folder, not a file.",
  ELOOP: "The file is a link that leads back to itself.",
  ENAMETOOLONG: "The name of the file is too long.",
};

/** The text of a file, if it is a file, of a size a check (or `most` bytes) can have, and UTF-8 text. */
export function readTextFile(path: string, most = recordBounds.textCharacters): Outcome<string> {
  try {
    if (path.includes("\0")) return fail("fileUnreadable", ["There is no file of this name."]);
    const status = statSync(path);
    if (status.isDirectory()) return fail("fileIsFolder", ["This is a folder, not a file."]);
    if (!status.isFile()) return fail("fileNotPlain", ["This is a device or pipe, not a file."]);
    if (status.size === 0) return fail("textEmpty", ["The file is empty."]);
    if (status.size > most) {
      return fail("textTooLong", [
        `The file has ${(status.size / 1e6).toFixed(1)} MB, and one of its kind at most ${most / 1e6} MB.`,
      ]);
    }
    const bytes = readFileSync(path);
    try {
      return succeed(new TextDecoder("utf-8", { fatal: true }).decode(bytes));
    } catch {
      return fail("fileNotText", ["The file is not text, so it is not a check."]);
    }
  } catch (error) {
    return unreadable(error);
  }
}

/** Why the system could not give a file, in words. */
export function unreadable(error: unknown): Outcome<never> {
  const code = codeOf(error);
  return fail("fileUnreadable", [reasons[code] ?? `The file can't be read (${code}).`]);
}
