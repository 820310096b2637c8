import { ComputeDispatcher } from "../../src/compute/computeDispatcher.ts";
import type { Reply, Request } from "../../src/compute/messages.ts";

/** A desk whose turns are taken by hand and whose clock moves by one at every look. */
export class SlowDispatcher {
  readonly replies: Reply[] = [];
  readonly #turns: (() => void)[] = [];
  readonly #desk: ComputeDispatcher;
  #clock = 0;

  constructor() {
    this.#desk = new ComputeDispatcher({
      reply: (reply) => this.replies.push(structuredClone(reply)),
      later: (work) => this.#turns.push(work),
      now: () => this.#clock++,
    });
  }

  receive(request: Request): void {
    this.#desk.receive(structuredClone(request));
  }

  /** One slice; false when there is nothing to do. */
  turn(): boolean {
    const work = this.#turns.shift();
    work?.();
    return work !== undefined;
  }

  finish(): void {
    while (this.turn());
  }

  of(ticket: number): Reply[] {
    return this.replies.filter((reply) => reply.ticket === ticket);
  }
}
