import { type Unpacked, unpack } from "./unpack.ts";
import type { UnpackReply, UnpackRequest } from "./unpackMessages.ts";

let parts: AsyncGenerator<Unpacked> | null = null;

self.onmessage = async ({ data }: MessageEvent<UnpackRequest>) => {
  if (data.kind === "file") parts = unpack(data.file);
  let reply: UnpackReply = null;
  try {
    const next = await parts?.next();
    if (next && !next.done) reply = next.value;
  } catch {
    reply = "unreadable";
  }
  self.postMessage(reply);
};
