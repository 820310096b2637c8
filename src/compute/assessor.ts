import type { Assessment, DesignEvent, Fitment, Side } from "../physics/fitment.ts";
import type { ImpactRun } from "../physics/impact/index.ts";
import type { Fault, Outcome } from "../physics/outcome.ts";
import type {
  Candidate,
  PrescribeProgress,
  Prescription,
  SearchOptions,
} from "../physics/prescription/index.ts";
import type { RankedStop, RankProgress } from "../physics/ranking/index.ts";
import type { ReadingId } from "../physics/readings/index.ts";
import type { RemeasurePlan, ToolsAtHand } from "../physics/remeasure/index.ts";
import type { CornerDynamics, MapCell } from "../physics/stiffness/index.ts";
import * as messages from "../words/compiled/compute.ts";
import type { MapLayout, Reply, Request, StopChange } from "./messages.ts";
import { follow, type WorkerLike } from "./workerLike.ts";

interface AssessHandlers {
  /** Sections 1 to 4 and 6: the verdict as far as it goes without impacts. */
  onStatic(assessment: Assessment): void;
  /** Everything, with what each stiffness class fails on. */
  onComplete(assessment: Assessment, corners: readonly CornerDynamics[]): void;
  onFault(fault: Fault): void;
}

export interface AssessRequestOptions {
  readonly samples?: number;
  readonly seed?: number;
  /** A newer request takes the place of an older one of its lane; "answer" where absent. */
  readonly lane?: string;
  /** Nothing is told before the whole answer. */
  readonly wholeOnly?: boolean;
}

interface MapHandlers {
  onLayout?(layout: MapLayout): void;
  onCell(cell: MapCell): void;
  onDone(): void;
  onFault?(fault: Fault): void;
}

interface MapRequestOptions {
  /** mm, by spacer; absent: heights that hold what clearance wants and early contact allows. */
  readonly heights?: readonly number[];
  readonly lane?: string;
}

interface RankHandlers {
  /** After each stop, with what was ranked of it, and now and then between. */
  onProgress?(progress: RankProgress): void;
  /** All, best first. */
  onRanked(ranked: readonly RankedStop[]): void;
  onFault?(fault: Fault): void;
}

interface PrescribeHandlers {
  /** Now and then while it is searched. */
  onProgress?(progress: PrescribeProgress): void;
  onPrescribed(prescription: Prescription): void;
  onFault?(fault: Fault): void;
}

interface PrescribeRequestOptions extends SearchOptions {
  readonly lane?: string;
}

interface RankRequestOptions extends SearchOptions {
  readonly lane?: string;
}

interface RemeasureHandlers {
  onPlan(plan: RemeasurePlan): void;
  onFault?(fault: Fault): void;
}

interface RemeasureRequestOptions {
  /** Readings not to propose again. */
  readonly passed?: readonly ReadingId[];
  readonly lane?: string;
}

export interface Assessor {
  /** Returns a function that cancels. Handlers of a request that was overtaken are not called again. */
  assess(fitment: Fitment, handlers: AssessHandlers, options?: AssessRequestOptions): () => void;
  map(fitment: Fitment, side: Side, handlers: MapHandlers, options?: MapRequestOptions): () => void;
  /** Every candidate on this vehicle; returns a function that cancels. */
  rank(
    fitment: Fitment,
    candidates: readonly Candidate[],
    handlers: RankHandlers,
    options: RankRequestOptions,
  ): () => void;
  /** What to do about this vehicle, of the fitted stop and the candidates; returns a function that cancels. */
  prescribe(
    fitment: Fitment,
    candidates: readonly Candidate[],
    handlers: PrescribeHandlers,
    options: PrescribeRequestOptions,
  ): () => void;
  /** What to measure again for a complete assessment of this fitment; returns a function that cancels. */
  planRemeasure(
    fitment: Fitment,
    assessment: Assessment,
    tools: ToolsAtHand,
    handlers: RemeasureHandlers,
    options?: RemeasureRequestOptions,
  ): () => void;
  /** One event in time, loaded, with the trace; several may be under way. */
  run(
    fitment: Fitment,
    side: Side,
    event: DesignEvent,
    change?: StopChange,
  ): Promise<Outcome<ImpactRun>>;
  /** Ends the worker; what is under way ends in a fault. */
  dispose(): void;
}

export type AssessorWorkerLike = WorkerLike<Request, Reply>;

export interface AssessorOptions {
  startWorker?(): AssessorWorkerLike;
  /** Silence of the worker after which it counts as lost, ms. */
  readonly patienceMs?: number;
}

type RequestBody<Body = Request> = Body extends Request ? Omit<Body, "ticket"> : never;

interface Pending {
  readonly lane: string | null;
  take(reply: Reply): void;
  fault(fault: Fault): void;
}

const traceStepS = 0.001;

const lost: Fault = {
  code: "workerLost",
  sentence: [messages.calculationStoppedOnThis],
};

const absent: Fault = {
  code: "workerAbsent",
  sentence: [messages.thisBrowserCannotRun],
};

const closed: Fault = { code: "assessorClosed", sentence: [messages.calculationWasClosed] };

export function createAssessor(options: AssessorOptions = {}): Assessor {
  return new WorkerAssessor(options.startWorker ?? startModuleWorker, options.patienceMs ?? 20_000);
}

function startModuleWorker(): AssessorWorkerLike {
  return new Worker(new URL("./worker.ts", import.meta.url), { type: "module" });
}

class WorkerAssessor implements Assessor {
  readonly #startWorker: () => AssessorWorkerLike;
  readonly #patienceMs: number;
  readonly #pending = new Map<number, Pending>();
  #worker: AssessorWorkerLike | null = null;
  #ticket = 0;
  #watch: ReturnType<typeof setTimeout> | null = null;
  #closed = false;

  constructor(startWorker: () => AssessorWorkerLike, patienceMs: number) {
    this.#startWorker = startWorker;
    this.#patienceMs = patienceMs;
  }

  assess(
    fitment: Fitment,
    handlers: AssessHandlers,
    options: AssessRequestOptions = {},
  ): () => void {
    const { lane = "answer", ...draws } = options;
    return this.#ask(
      { kind: "assess", lane, fitment, ...draws },
      {
        lane: `assess ${lane}`,
        take: (reply) => {
          if (reply.kind === "static") handlers.onStatic(reply.assessment);
          if (reply.kind === "complete") handlers.onComplete(reply.assessment, reply.corners);
        },
        fault: (fault) => handlers.onFault(fault),
      },
    );
  }

  map(
    fitment: Fitment,
    side: Side,
    handlers: MapHandlers,
    options: MapRequestOptions = {},
  ): () => void {
    const { lane = "map", heights = null } = options;
    return this.#ask(
      { kind: "map", lane, fitment, side, heights },
      {
        lane: `map ${lane}`,
        take: (reply) => {
          if (reply.kind === "mapLayout") handlers.onLayout?.(reply.layout);
          if (reply.kind === "cells") {
            for (const cell of reply.cells) handlers.onCell(cell);
            if (reply.last) handlers.onDone();
          }
        },
        fault: (fault) => handlers.onFault?.(fault),
      },
    );
  }

  rank(
    fitment: Fitment,
    candidates: readonly Candidate[],
    handlers: RankHandlers,
    options: RankRequestOptions,
  ): () => void {
    const { lane = "rank", ...rankOptions } = options;
    return this.#ask(
      { kind: "rank", lane, fitment, candidates, options: rankOptions },
      {
        lane: `rank ${lane}`,
        take: (reply) => {
          if (reply.kind === "ranking") handlers.onProgress?.(reply.progress);
          if (reply.kind === "ranked") handlers.onRanked(reply.ranked);
        },
        fault: (fault) => handlers.onFault?.(fault),
      },
    );
  }

  prescribe(
    fitment: Fitment,
    candidates: readonly Candidate[],
    handlers: PrescribeHandlers,
    options: PrescribeRequestOptions,
  ): () => void {
    const { lane = "prescribe", ...searchOptions } = options;
    return this.#ask(
      { kind: "prescribe", lane, fitment, candidates, options: searchOptions },
      {
        lane: `prescribe ${lane}`,
        take: (reply) => {
          if (reply.kind === "prescribing") handlers.onProgress?.(reply.progress);
          if (reply.kind === "prescribed") handlers.onPrescribed(reply.prescription);
        },
        fault: (fault) => handlers.onFault?.(fault),
      },
    );
  }

  planRemeasure(
    fitment: Fitment,
    assessment: Assessment,
    tools: ToolsAtHand,
    handlers: RemeasureHandlers,
    options: RemeasureRequestOptions = {},
  ): () => void {
    const { lane = "remeasure", passed = [] } = options;
    return this.#ask(
      { kind: "remeasure", lane, fitment, assessment, tools, passed },
      {
        lane: `remeasure ${lane}`,
        take: (reply) => {
          if (reply.kind === "remeasurePlan") handlers.onPlan(reply.plan);
        },
        fault: (fault) => handlers.onFault?.(fault),
      },
    );
  }

  run(
    fitment: Fitment,
    side: Side,
    event: DesignEvent,
    change: StopChange = {},
  ): Promise<Outcome<ImpactRun>> {
    return new Promise((resolve) => {
      this.#ask(
        { kind: "run", fitment, side, event, change, traceStepS },
        {
          lane: null,
          take: (reply) => {
            if (reply.kind === "run") resolve({ ok: true, value: reply.run });
          },
          fault: (fault) => resolve({ ok: false, fault }),
        },
      );
    });
  }

  dispose(): void {
    this.#closed = true;
    this.#drop(closed);
  }

  #ask(body: RequestBody, pending: Pending): () => void {
    const ticket = ++this.#ticket;
    for (const [older, { lane }] of this.#pending) {
      if (lane !== null && lane === pending.lane) this.#pending.delete(older);
    }
    this.#pending.set(ticket, pending);
    this.#send({ ...body, ticket } as Request, pending);
    return () => {
      if (!this.#pending.delete(ticket)) return;
      this.#worker?.postMessage({ kind: "cancel", ticket });
      this.#keepWatch();
    };
  }

  /** Hands over at once, so that the worker begins before whoever asks goes on; faults come later. */
  #send(request: Request, pending: Pending): void {
    const worker = this.#closed ? null : this.#readyWorker();
    try {
      if (worker !== null) {
        worker.postMessage(request);
        this.#keepWatch();
        return;
      }
    } catch {
      // A fitment that cannot be handed over is told below, as is a missing worker.
    }
    const fault = this.#closed ? closed : worker === null ? absent : lost;
    queueMicrotask(() => {
      if (this.#pending.delete(request.ticket)) pending.fault(fault);
    });
  }

  #readyWorker(): AssessorWorkerLike | null {
    if (this.#worker !== null) return this.#worker;
    try {
      const worker = this.#startWorker();
      follow(
        worker,
        (reply) => this.#receive(reply),
        () => this.#drop(lost),
      );
      this.#worker = worker;
      return worker;
    } catch {
      return null;
    }
  }

  #receive(reply: Reply): void {
    const pending = this.#pending.get(reply.ticket);
    if (reply.last) this.#pending.delete(reply.ticket);
    this.#keepWatch();
    if (pending === undefined) return;
    if (reply.kind === "fault") pending.fault(reply.fault);
    else pending.take(reply);
  }

  /** Ends the worker and everything under way; the next request starts a new one. */
  #drop(fault: Fault): void {
    this.#worker?.terminate();
    this.#worker = null;
    const pending = [...this.#pending.values()];
    this.#pending.clear();
    this.#keepWatch();
    for (const each of pending) each.fault(fault);
  }

  /** Drops a worker that stays silent; a page that slept meanwhile waits anew. */
  #keepWatch(): void {
    if (this.#watch !== null) clearTimeout(this.#watch);
    this.#watch = null;
    if (this.#pending.size === 0) return;
    const from = Date.now();
    this.#watch = setTimeout(() => {
      if (Date.now() - from > 2 * this.#patienceMs) this.#keepWatch();
      else this.#drop(lost);
    }, this.#patienceMs);
  }
}
