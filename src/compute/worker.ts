import { ComputeDispatcher } from "./computeDispatcher.ts";
import type { Request } from "./messages.ts";

const turns = new MessageChannel();
const waiting: (() => void)[] = [];
turns.port1.onmessage = () => waiting.shift()?.();

const desk = new ComputeDispatcher({
  reply: (reply) => self.postMessage(reply),
  later: (work) => {
    waiting.push(work);
    turns.port2.postMessage(null);
  },
  now: () => performance.now(),
});

self.onmessage = (event: MessageEvent<Request>) => desk.receive(event.data);
