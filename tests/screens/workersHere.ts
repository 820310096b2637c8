import { ComputeDispatcher } from "../../src/compute/computeDispatcher.ts";
import type { Request } from "../../src/compute/messages.ts";
import type { PoolRequest, PoolTask } from "../../src/compute/poolMessages.ts";
import { poolAnswer } from "../../src/compute/poolWork.ts";
import type { PackPlatforms } from "../../src/records/pack/pack.ts";

type Post = (message: unknown) => void;
type Receive = (message: unknown) => void;

function assessing(post: Post): Receive {
  const dispatcher = new ComputeDispatcher({
    reply: post,
    later: (work) => setTimeout(work, 0),
    now: () => performance.now(),
  });
  return (message) => dispatcher.receive(message as Request);
}

function pooling(post: Post): Receive {
  let pack: PackPlatforms | null = null;
  return async (message) => {
    const request = message as PoolRequest;
    if (request.kind === "pack") pack = request.pack;
    else post({ ticket: request.ticket, result: await poolAnswer(request.task, pack) });
  };
}

/** Stands in for the browser's workers, by the module that each is started with: all work is done in this thread. */
export class WorkerHere {
  onmessage: ((event: MessageEvent) => void) | null = null;
  onerror: ((event: ErrorEvent) => void) | null = null;
  onmessageerror: ((event: MessageEvent) => void) | null = null;
  #ended = false;
  readonly #receive: Receive;

  constructor(address: URL | string) {
    const post: Post = (message) => {
      const data = structuredClone(message);
      setTimeout(() => {
        if (!this.#ended) this.onmessage?.(new MessageEvent("message", { data }));
      }, 0);
    };
    const name = /(\w+)\.[jt]s/.exec(String(address))?.[1];
    if (name === "worker") this.#receive = assessing(post);
    else if (name === "poolWorker") this.#receive = pooling(post);
    else throw new Error(`no worker here: ${address}`);
  }

  postMessage(message: unknown): void {
    // A part of a file goes as it is: this page's own Blob is none that Node could copy.
    const { task } = message as { task?: PoolTask };
    const data = task?.kind === "backupLines" ? message : structuredClone(message);
    setTimeout(() => {
      if (!this.#ended) this.#receive(data);
    }, 0);
  }

  terminate(): void {
    this.#ended = true;
  }
}
