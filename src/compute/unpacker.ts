import { cleanName } from "../records/text/soundText.ts";
import * as messages from "../words/compiled/compute.ts";
import { isPacked } from "./packedFile.ts";
import type { Unpacked } from "./unpack.ts";
import type { UnpackReply, UnpackRequest } from "./unpackMessages.ts";
import { follow, type WorkerLike } from "./workerLike.ts";

type UnpackWorkerLike = WorkerLike<UnpackRequest, UnpackReply>;

function startModuleWorker(): UnpackWorkerLike {
  return new Worker(new URL("./unpackWorker.ts", import.meta.url), { type: "module" });
}

/**
 * What an archive or a mail holds, taken apart beside the screen; it is left off as soon as nothing more is
 * asked for. Where a browser has no workers it is taken apart here.
 */
async function* unpackBeside(file: File): AsyncGenerator<Unpacked> {
  if (typeof Worker !== "function") {
    const { unpack } = await import("./unpack.ts");
    yield* unpack(file);
    return;
  }
  const worker = startModuleWorker();
  try {
    const ask = (request: UnpackRequest) =>
      new Promise<UnpackReply>((settle) => {
        follow(worker, settle, () => settle("unreadable"));
        worker.postMessage(request);
      });
    for (let reply = await ask({ kind: "file", file }); reply !== null; ) {
      if (reply === "unreadable") {
        yield unreadable(file);
        return;
      }
      yield reply;
      reply = await ask({ kind: "next" });
    }
  } finally {
    worker.terminate();
  }
}

function unreadable({ name }: File): Unpacked {
  const sentence = [messages.fileCantBeTaken({ name: cleanName(name, 80) })];
  return { kind: "refused", name, fault: { code: "notUnpacked", sentence } };
}

/** What is chosen, with archives and mails taken apart: what they hold comes in their place. */
export async function* unpacked(sources: AsyncIterable<Unpacked>): AsyncGenerator<Unpacked> {
  for await (const source of sources) {
    if (source.kind === "file" && (await isPacked(source.file))) yield* unpackBeside(source.file);
    else yield source;
  }
}
