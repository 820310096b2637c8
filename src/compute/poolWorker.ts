import type { PackPlatforms } from "../records/pack/pack.ts";
import type { PoolReply, PoolRequest } from "./poolMessages.ts";
import { poolAnswer } from "./poolWork.ts";

let pack: PackPlatforms | null = null;

self.onmessage = async ({ data }: MessageEvent<PoolRequest>) => {
  if (data.kind === "pack") {
    pack = data.pack;
    return;
  }
  const reply: PoolReply = { ticket: data.ticket, result: await poolAnswer(data.task, pack) };
  self.postMessage(reply);
};
