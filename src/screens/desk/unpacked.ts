import { isPacked } from "../../compute/packedFile.ts";
import type { Unpacked } from "../../compute/unpack.ts";
import { unpackBeside } from "../../compute/unpacker.ts";

/** What is chosen, with archives and mails taken apart: what they hold comes in their place. */
export async function* unpacked(sources: AsyncIterable<Unpacked>): AsyncGenerator<Unpacked> {
  for await (const source of sources) {
    if (source.kind === "file" && (await isPacked(source.file))) yield* unpackBeside(source.file);
    else yield source;
  }
}
