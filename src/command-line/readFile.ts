import { readFileSync, statSync } from "node:fs";
import { fail, type Outcome, succeed } from "../physics/outcome.ts";
import { recordBounds } from "../records/check/checkRecord.ts";

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

/** The text of a file, if it is a file, of a size a check can have, and UTF-8 text. */
export function readTextFile(path: string): Outcome<string> {
  try {
    if (path.includes("\0")) return fail("fileUnreadable", ["There is no file of this name."]);
    const status = statSync(path);
    if (status.isDirectory()) return fail("fileIsFolder", ["This is a folder, not a file."]);
    if (!status.isFile()) return fail("fileNotPlain", ["This is a device or pipe, not a file."]);
    if (status.size === 0) return fail("textEmpty", ["The file is empty."]);
    if (status.size > recordBounds.textCharacters) {
      const most = recordBounds.textCharacters / 1e6;
      return fail("textTooLong", [
        `The file has ${(status.size / 1e6).toFixed(1)} MB, and a check at most ${most} MB.`,
      ]);
    }
    const bytes = readFileSync(path);
    try {
      return succeed(new TextDecoder("utf-8", { fatal: true }).decode(bytes));
    } catch {
      return fail("fileNotText", ["The file is not text, so it is not a check."]);
    }
  } catch (error) {
    const code = codeOf(error);
    return fail("fileUnreadable", [reasons[code] ?? `The file can't be read (${code}).`]);
  }
}
