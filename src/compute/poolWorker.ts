import type { PoolReply, PoolRequest } from "./poolMessages.ts";
import { poolWork } from "./poolWork.ts";

self.onmessage = ({ data: { ticket, task } }: MessageEvent<PoolRequest>) => {
  const reply: PoolReply = { ticket, result: poolWork(task) };
  self.postMessage(reply);
};
