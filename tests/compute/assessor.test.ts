import { afterEach, describe, expect, it, vi } from "vitest";
import {
  type Assessor,
  type AssessorWorkerLike,
  createAssessor,
} from "../../src/compute/assessor.ts";
import { ComputeDispatcher } from "../../src/compute/computeDispatcher.ts";
import type { Reply, Request } from "../../src/compute/messages.ts";
import type { Fitment } from "../../src/physics/fitment.ts";
import type { Fault } from "../../src/physics/outcome.ts";
import type { MapCell } from "../../src/physics/stiffness/heightClassMap.ts";
import { demoFitment } from "../physics/demoFitments.ts";

const arm = demoFitment("arm-fits");
const strut = demoFitment("strut-too-stiff");
const samples = 10_000;

/** A worker in this thread: everything is handed over by structured clone, as to a real one. */
class ThreadWorker implements AssessorWorkerLike {
  onmessage: ((event: MessageEvent<Reply>) => void) | null = null;
  onerror: ((event: ErrorEvent) => void) | null = null;
  onmessageerror: ((event: MessageEvent) => void) | null = null;
  readonly requests: Request[] = [];
  readonly replies: Reply[] = [];
  terminated = false;
  readonly #desk = new ComputeDispatcher({
    reply: (reply) => {
      const data = structuredClone(reply);
      this.replies.push(data);
      setTimeout(() => this.terminated || this.onmessage?.({ data } as MessageEvent<Reply>), 0);
    },
    later: (work) => setTimeout(() => this.terminated || work(), 0),
    now: () => performance.now(),
  });

  postMessage(message: Request): void {
    const request = structuredClone(message);
    this.requests.push(request);
    setTimeout(() => this.terminated || this.receive(request), 0);
  }

  receive(request: Request): void {
    this.#desk.receive(request);
  }

  terminate(): void {
    this.terminated = true;
  }
}

class SilentWorker extends ThreadWorker {
  override receive(): void {}
}

interface Answer {
  readonly log: string[];
  readonly done: Promise<string>;
}

function ask(assessor: Assessor, fitment: Fitment, lane?: string): Answer & { cancel(): void } {
  const log: string[] = [];
  let cancel = () => {};
  const done = new Promise<string>((resolve) => {
    const note = (entry: string) => {
      log.push(entry);
      if (entry !== "static") resolve(entry);
    };
    cancel = assessor.assess(
      fitment,
      {
        onStatic: () => note("static"),
        onComplete: () => note("complete"),
        onFault: (fault) => note(fault.code),
      },
      { samples, ...(lane === undefined ? {} : { lane }) },
    );
  });
  return { log, done, cancel: () => cancel() };
}

const turn = () => new Promise((resolve) => setTimeout(resolve, 0));

afterEach(() => {
  vi.useRealTimers();
});

describe("the assessor", () => {
  it("gives the static answer, then the whole one", async () => {
    const assessor = createAssessor({ startWorker: () => new ThreadWorker() });
    const answer = ask(assessor, arm);
    await answer.done;
    expect(answer.log).toEqual(["static", "complete"]);
    assessor.dispose();
  });

  it("lets the newest request of a lane win and leaves other lanes alone", async () => {
    const assessor = createAssessor({ startWorker: () => new ThreadWorker() });
    const older = ask(assessor, arm);
    const other = ask(assessor, arm, "proposed");
    await turn();
    const newer = ask(assessor, strut);
    await Promise.all([newer.done, other.done]);
    expect(newer.log).toEqual(["static", "complete"]);
    expect(other.log).toEqual(["static", "complete"]);
    expect(older.log).not.toContain("complete");
    assessor.dispose();
  });

  it("begins at once, and ends only the newest of several that come in one go", async () => {
    const worker = new ThreadWorker();
    const assessor = createAssessor({ startWorker: () => worker });
    const overtaken = Array.from({ length: 5 }, () => ask(assessor, arm));
    expect(worker.requests).toHaveLength(5);
    const newest = ask(assessor, strut);
    await newest.done;
    await turn();
    expect(newest.log).toEqual(["static", "complete"]);
    for (const { log } of overtaken) expect(log).toEqual([]);
    const ended = worker.replies.filter(({ kind }) => kind === "complete");
    expect(ended.map(({ ticket }) => ticket)).toEqual([worker.requests.at(-1)?.ticket]);
    assessor.dispose();
  });

  it("says nothing more of a cancelled request", async () => {
    const assessor = createAssessor({ startWorker: () => new ThreadWorker() });
    const cancelled = ask(assessor, arm, "cancelled");
    await turn();
    cancelled.cancel();
    await ask(assessor, strut).done;
    expect(cancelled.log).not.toContain("complete");
    assessor.dispose();
  });

  it("streams a map and draws it to the end", async () => {
    const assessor = createAssessor({ startWorker: () => new ThreadWorker() });
    const cells: MapCell[] = [];
    let heights: readonly number[] = [];
    await new Promise<void>((resolve, reject) => {
      assessor.map(
        arm,
        "left",
        {
          onLayout: (layout) => {
            heights = layout.heights;
          },
          onCell: (cell) => cells.push(cell),
          onDone: resolve,
          onFault: reject,
        },
        { heights: [0, 10] },
      );
    });
    expect(heights).toEqual([0, 10]);
    expect(cells).toHaveLength(22);
    assessor.dispose();
  });

  it("runs several events side by side, each with its trace", async () => {
    const assessor = createAssessor({ startWorker: () => new ThreadWorker() });
    const event = { kind: "landing", heightM: 0.1 } as const;
    const runs = await Promise.all([
      assessor.run(arm, "left", event),
      assessor.run(arm, "left", event, { stiffnessClass: 63 }),
      assessor.run(strut, "right", event),
    ]);
    const peaks = runs.map((run) => (run.ok ? run.value.result.peakStopForceN : 0));
    expect(new Set(peaks).size).toBe(3);
    expect(runs.every((run) => run.ok && run.value.trace instanceof Object)).toBe(true);
    assessor.dispose();
  });
});

describe("when the worker is no help", () => {
  it("says so where none can be started", async () => {
    const assessor = createAssessor({
      startWorker: () => {
        throw new Error("no workers here");
      },
    });
    expect(await ask(assessor, arm).done).toBe("workerAbsent");
    const run = await assessor.run(arm, "left", { kind: "landing", heightM: 0.1 });
    expect(run).toMatchObject({ ok: false, fault: { code: "workerAbsent" } });
  });

  it("ends all that is under way when it crashes, and starts a new one for the next request", async () => {
    const workers: ThreadWorker[] = [];
    const assessor = createAssessor({
      startWorker: () => {
        const worker = workers.length === 0 ? new SilentWorker() : new ThreadWorker();
        workers.push(worker);
        return worker;
      },
    });
    const mapFaults: Fault[] = [];
    const first = ask(assessor, arm);
    assessor.map(arm, "left", {
      onCell: () => {},
      onDone: () => {},
      onFault: (fault) => mapFaults.push(fault),
    });
    await turn();
    workers[0]?.onerror?.({ preventDefault: () => {} } as ErrorEvent);
    expect(await first.done).toBe("workerLost");
    expect(mapFaults.map(({ code }) => code)).toEqual(["workerLost"]);
    expect(workers[0]?.terminated).toBe(true);
    expect(await ask(assessor, arm).done).toBe("complete");
    expect(workers).toHaveLength(2);
    assessor.dispose();
  });

  it("gives up one that stays silent, after its patience", async () => {
    vi.useFakeTimers();
    const assessor = createAssessor({ startWorker: () => new SilentWorker(), patienceMs: 5000 });
    const answer = ask(assessor, arm);
    await vi.advanceTimersByTimeAsync(4999);
    expect(answer.log).toEqual([]);
    await vi.advanceTimersByTimeAsync(1);
    expect(answer.log).toEqual(["workerLost"]);
  });

  it("waits anew where the page slept through its patience", async () => {
    vi.useFakeTimers();
    const assessor = createAssessor({ startWorker: () => new SilentWorker(), patienceMs: 5000 });
    const answer = ask(assessor, arm);
    await vi.advanceTimersByTimeAsync(1000);
    vi.setSystemTime(Date.now() + 60_000);
    await vi.advanceTimersByTimeAsync(4000);
    expect(answer.log).toEqual([]);
    await vi.advanceTimersByTimeAsync(5000);
    expect(answer.log).toEqual(["workerLost"]);
  });

  it("tells of a fitment that cannot be handed over", async () => {
    const assessor = createAssessor({ startWorker: () => new ThreadWorker() });
    const odd = { ...arm, use: (() => "daily") as unknown as Fitment["use"] };
    expect(await ask(assessor, odd).done).toBe("workerLost");
    expect(await ask(assessor, arm).done).toBe("complete");
    assessor.dispose();
  });

  it("ends what is under way when it is closed, and refuses what comes after", async () => {
    const worker = new ThreadWorker();
    const assessor = createAssessor({ startWorker: () => worker });
    const answer = ask(assessor, arm);
    await turn();
    assessor.dispose();
    expect(await answer.done).toBe("assessorClosed");
    expect(worker.terminated).toBe(true);
    expect(await ask(assessor, arm).done).toBe("assessorClosed");
  });
});
