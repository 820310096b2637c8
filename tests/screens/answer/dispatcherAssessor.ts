import {
  type Assessor,
  type AssessorWorkerLike,
  createAssessor,
} from "../../../src/compute/assessor.ts";
import { ComputeDispatcher } from "../../../src/compute/computeDispatcher.ts";
import type { Reply, Request } from "../../../src/compute/messages.ts";

type Question = Exclude<Request, { kind: "cancel" }>;

const mostRemembered = 60;

/** All that was answered to the questions that this file's tests asked lately. */
const answered = new Map<string, readonly Reply[]>();

/** The question itself, whoever asks it: the same one has the same answer to the last digit. */
function textOf({ ticket: _, ...question }: Question): string {
  return JSON.stringify({ ...question, lane: null });
}

interface Asked {
  readonly text: string;
  readonly replies: Reply[];
}

/**
 * The worker's own desk, in this thread: happy-dom has no workers. A question that was answered whole before
 * gets the same replies again, in the same order and one at a time.
 */
export class DeskWorker implements AssessorWorkerLike {
  onmessage: AssessorWorkerLike["onmessage"] = null;
  onerror: AssessorWorkerLike["onerror"] = null;
  onmessageerror: AssessorWorkerLike["onmessageerror"] = null;
  #ended = false;
  readonly #asked = new Map<number, Asked>();
  readonly #desk = new ComputeDispatcher({
    reply: (reply) => {
      this.#note(reply);
      this.#send(reply);
    },
    later: (work) => setTimeout(() => !this.#ended && work(), 0),
    now: () => performance.now(),
  });

  postMessage(message: Request): void {
    const question = structuredClone(message);
    if (question.kind !== "cancel") {
      const text = textOf(question);
      const known = answered.get(text);
      if (known !== undefined) {
        for (const reply of known) this.#send({ ...reply, ticket: question.ticket });
        return;
      }
      this.#asked.set(question.ticket, { text, replies: [] });
    }
    this.#desk.receive(question);
  }

  terminate(): void {
    this.#ended = true;
  }

  #send(reply: Reply): void {
    const event = new MessageEvent("message", { data: structuredClone(reply) });
    setTimeout(() => !this.#ended && this.onmessage?.(event), 0);
  }

  #note(reply: Reply): void {
    const asked = this.#asked.get(reply.ticket);
    if (asked === undefined) return;
    asked.replies.push(structuredClone(reply));
    if (!reply.last) return;
    this.#asked.delete(reply.ticket);
    if (reply.kind !== "fault") answered.set(asked.text, asked.replies);
    const [oldest] = answered.keys();
    if (answered.size > mostRemembered && oldest !== undefined) answered.delete(oldest);
  }
}

export function startDeskAssessor(): Assessor {
  return createAssessor({ startWorker: () => new DeskWorker() });
}
