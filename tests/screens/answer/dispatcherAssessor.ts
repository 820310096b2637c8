import {
  type Assessor,
  type AssessorWorkerLike,
  createAssessor,
} from "../../../src/compute/assessor.ts";
import { ComputeDispatcher } from "../../../src/compute/computeDispatcher.ts";
import type { Request } from "../../../src/compute/messages.ts";

/** The worker's own desk, in this thread: happy-dom has no workers. */
export class DeskWorker implements AssessorWorkerLike {
  onmessage: AssessorWorkerLike["onmessage"] = null;
  onerror: AssessorWorkerLike["onerror"] = null;
  onmessageerror: AssessorWorkerLike["onmessageerror"] = null;
  #ended = false;
  readonly #desk = new ComputeDispatcher({
    reply: (reply) => {
      const event = new MessageEvent("message", { data: structuredClone(reply) });
      setTimeout(() => !this.#ended && this.onmessage?.(event), 0);
    },
    later: (work) => setTimeout(() => !this.#ended && work(), 0),
    now: () => performance.now(),
  });

  postMessage(message: Request): void {
    this.#desk.receive(structuredClone(message));
  }

  terminate(): void {
    this.#ended = true;
  }
}

export function startDeskAssessor(): Assessor {
  return createAssessor({ startWorker: () => new DeskWorker() });
}
