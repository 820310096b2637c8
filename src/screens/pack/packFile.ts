import { createReadingPool } from "../../compute/readingPool.ts";
import type { Fault } from "../../physics/outcome.ts";
import { type Pack, packBounds } from "../../records/pack/pack.ts";
import * as messages from "../../words/compiled/screens/pack.ts";

export type OpenedPack =
  | { readonly ok: true; readonly pack: Pack; readonly file: string }
  | { readonly ok: false; readonly file: string; readonly faults: readonly Fault[] };

/** UTF-8 takes at most three bytes for each character. */
const mostBytes = 3 * packBounds.textCharacters;

/** A pack from a file, or a sentence for everything that is wrong with it. */
export async function readPackFile(file: File): Promise<OpenedPack> {
  const refuse = (sentence: string): OpenedPack => ({
    ok: false,
    file: file.name,
    faults: [{ code: "packFile", sentence: [sentence] }],
  });
  if (file.size > mostBytes) {
    return refuse(messages.fileIsMbToo({ file: Math.round(file.size / 1e6) }));
  }
  let text: string;
  try {
    text = await file.text();
  } catch {
    return refuse(messages.fileCantBeRead);
  }
  const pool = createReadingPool();
  const done = await pool.run({ kind: "readPack", text });
  pool.dispose();
  if (done.kind === "failed") return { ok: false, file: file.name, faults: [done.fault] };
  if (done.kind !== "pack") return refuse(messages.fileCantBeReadOpen);
  const { read } = done;
  return read.ok
    ? { ok: true, pack: read.value, file: file.name }
    : { ok: false, file: file.name, faults: read.faults };
}
