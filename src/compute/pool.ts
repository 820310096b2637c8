import type { Fault } from "../physics/outcome.ts";
import type { PackPlatforms } from "../records/pack/pack.ts";
import * as messages from "../words/compiled/compute.ts";
import type { PoolReply, PoolRequest, PoolResult, PoolTask } from "./poolMessages.ts";
import { follow, type WorkerLike } from "./workerLike.ts";

export type PoolWorkerLike = WorkerLike<PoolRequest, PoolReply>;

export interface Pool {
  readonly size: number;
  /** One piece of work; never rejects. What was cancelled or lost ends in "failed". */
  run(task: PoolTask): Promise<PoolResult>;
  /** Ends what is under way and drops what waits; the pool can be used again afterwards. */
  cancel(): void;
  dispose(): void;
}

export interface PoolOptions {
  startWorker?(): PoolWorkerLike;
  readonly size?: number;
  /** The pack that readings are held against; without one they are held against each other only. */
  readonly pack?: PackPlatforms;
}

/** One core is left to the screen. */
export function poolSize(cores: number | undefined): number {
  return Math.max(1, (cores ?? 1) - 1);
}

export const cancelled: Fault = { code: "cancelled", sentence: [messages.itWasStopped] };

const lost: Fault = {
  code: "workerLost",
  sentence: [messages.calculationStoppedOnThisDevice],
};

interface Job {
  readonly ticket: number;
  readonly task: PoolTask;
  readonly settle: (result: PoolResult) => void;
}

interface Hand {
  worker: PoolWorkerLike | null;
  job: Job | null;
}

export function createPool(options: PoolOptions = {}): Pool {
  const size = options.size ?? poolSize(globalThis.navigator?.hardwareConcurrency);
  return new WorkerPool(options.startWorker ?? startModuleWorker, size, options.pack ?? null);
}

function startModuleWorker(): PoolWorkerLike {
  return new Worker(new URL("./poolWorker.ts", import.meta.url), { type: "module" });
}

class WorkerPool implements Pool {
  readonly #startWorker: () => PoolWorkerLike;
  readonly #hands: Hand[];
  readonly #pack: PackPlatforms | null;
  readonly #waiting: Job[] = [];
  #ticket = 0;
  #closed = false;

  constructor(startWorker: () => PoolWorkerLike, size: number, pack: PackPlatforms | null) {
    this.#startWorker = startWorker;
    this.#pack = pack && { platforms: pack.platforms, ...(pack.rules && { rules: pack.rules }) };
    this.#hands = Array.from({ length: size }, () => ({ worker: null, job: null }));
  }

  get size(): number {
    return this.#hands.length;
  }

  run(task: PoolTask): Promise<PoolResult> {
    return new Promise((settle) => {
      if (this.#closed) settle({ kind: "failed", fault: cancelled });
      else {
        this.#ticket += 1;
        this.#waiting.push({ ticket: this.#ticket, task, settle });
        this.#handOut();
      }
    });
  }

  cancel(): void {
    const waiting = this.#waiting.splice(0);
    for (const hand of this.#hands) {
      if (hand.job !== null) this.#end(hand, cancelled);
    }
    for (const { settle } of waiting) settle({ kind: "failed", fault: cancelled });
  }

  dispose(): void {
    this.#closed = true;
    this.cancel();
    for (const hand of this.#hands) {
      hand.worker?.terminate();
      hand.worker = null;
    }
  }

  #handOut(): void {
    for (const hand of this.#hands) {
      if (hand.job !== null) continue;
      const job = this.#waiting.shift();
      if (job === undefined) return;
      hand.job = job;
      try {
        hand.worker ??= this.#start(hand);
        hand.worker.postMessage({ kind: "task", ticket: job.ticket, task: job.task });
      } catch {
        this.#end(hand, lost);
        this.#handOut();
      }
    }
  }

  #start(hand: Hand): PoolWorkerLike {
    const worker = this.#startWorker();
    follow(
      worker,
      ({ ticket, result }) => {
        const { job } = hand;
        if (job === null || ticket !== job.ticket) return;
        hand.job = null;
        job.settle(result);
        this.#handOut();
      },
      () => {
        this.#end(hand, lost);
        this.#handOut();
      },
    );
    if (this.#pack !== null) worker.postMessage({ kind: "pack", pack: this.#pack });
    return worker;
  }

  /** A worker cannot be asked to stop: it is ended, and a new one started when there is work. */
  #end(hand: Hand, fault: Fault): void {
    hand.worker?.terminate();
    hand.worker = null;
    const { job } = hand;
    hand.job = null;
    job?.settle({ kind: "failed", fault });
  }
}
