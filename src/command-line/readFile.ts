import { readFileSync, statSync } from "node:fs";
import { fail, type Outcome, succeed } from "../physics/outcome.ts";
import { recordBounds } from "../records/check/recordFormat.ts";
import * as messages from "../words/compiled/command-line.ts";

function codeOf(error: unknown): string {
  return typeof error === "object" && error !== null && "code" in error ? String(error.code) : "";
}

const reasons: { readonly [code: string]: string } = {
  ENOENT: messages.thereIsNoFile,
  ENOTDIR: messages.thereIsNoFile,
  EACCES: messages.fileMayNotBe,
  EPERM: messages.fileMayNotBe,
  EISDIR: messages.thisIsFolderNot,
  ELOOP: messages.fileIsLinkThat,
  ENAMETOOLONG: messages.nameOfFileIs,
};

/** The text of a file, if it is a file, of a size a check (or `most` bytes) can have, and UTF-8 text. */
export function readTextFile(path: string, most = recordBounds.textCharacters): Outcome<string> {
  try {
    if (path.includes("\0")) return fail("fileUnreadable", [messages.thereIsNoFile]);
    const status = statSync(path);
    if (status.isDirectory()) return fail("fileIsFolder", [messages.thisIsFolderNot]);
    if (!status.isFile()) return fail("fileNotPlain", [messages.thisIsDeviceOr]);
    if (status.size === 0) return fail("textEmpty", [messages.fileIsEmpty]);
    if (status.size > most) {
      return fail("textTooLong", [
        messages.fileHasMbAnd({ status: (status.size / 1e6).toFixed(1), most: most / 1e6 }),
      ]);
    }
    const bytes = readFileSync(path);
    try {
      return succeed(new TextDecoder("utf-8", { fatal: true }).decode(bytes));
    } catch {
      return fail("fileNotText", [messages.fileIsNotText]);
    }
  } catch (error) {
    return unreadable(error);
  }
}

/** Why the system could not give a file, in words. */
export function unreadable(error: unknown): Outcome<never> {
  const code = codeOf(error);
  return fail("fileUnreadable", [reasons[code] ?? messages.fileCantBeRead({ code })]);
}
