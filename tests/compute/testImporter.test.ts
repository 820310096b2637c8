import { describe, expect, it } from "vitest";
import type { ImportReply, ImportRequest } from "../../src/compute/importMessages.ts";
import { createTestImporter, type ImportWorkerLike } from "../../src/compute/testImporter.ts";

class HandWorker implements ImportWorkerLike {
  onmessage: ImportWorkerLike["onmessage"] = null;
  onerror: ImportWorkerLike["onerror"] = null;
  onmessageerror: ImportWorkerLike["onmessageerror"] = null;
  readonly asked: ImportRequest[] = [];
  ended = false;

  postMessage(message: ImportRequest): void {
    this.asked.push(message);
  }

  terminate(): void {
    this.ended = true;
  }

  say(reply: ImportReply): void {
    this.onmessage?.({ data: reply } as MessageEvent<ImportReply>);
  }
}

function setUp() {
  const workers: HandWorker[] = [];
  const told: string[] = [];
  const importer = createTestImporter(() => {
    const worker = new HandWorker();
    workers.push(worker);
    return worker;
  });
  const handlers = {
    onProgress: () => told.push("progress"),
    onDone: () => told.push("done"),
    onFault: ({ code }: { readonly code: string }) => told.push(code),
  };
  return { importer, workers, told, handlers };
}

const file = new File(["x"], "x.csv");
const progress: ImportReply = {
  kind: "progress",
  progress: { phase: "reading", bytes: 1, totalBytes: 1, rows: 0 },
};

describe("the importer", () => {
  it("hands over the file, tells progress and the end, and ends its worker", () => {
    const { importer, workers, told, handlers } = setUp();
    importer.start(file, handlers, { staticSpeedMmPerS: 2 });
    expect(workers[0]?.asked).toEqual([{ file, options: { staticSpeedMmPerS: 2 } }]);
    workers[0]?.say(progress);
    workers[0]?.say({ kind: "fault", fault: { code: "fileEmpty", sentence: ["Empty."] } });
    expect(told).toEqual(["progress", "fileEmpty"]);
    expect(workers[0]?.ended).toBe(true);
  });

  it("calls nothing after it is cancelled, and ends the worker at once", () => {
    const { importer, workers, told, handlers } = setUp();
    const cancel = importer.start(file, handlers);
    cancel();
    workers[0]?.say(progress);
    expect(told).toEqual([]);
    expect(workers[0]?.ended).toBe(true);
  });

  it("a newer file takes the place of an older one", () => {
    const { importer, workers, told, handlers } = setUp();
    const older = importer.start(file, handlers);
    importer.start(file, handlers);
    older();
    workers[0]?.say(progress);
    workers[1]?.say(progress);
    expect(told).toEqual(["progress"]);
    expect(workers.map(({ ended }) => ended)).toEqual([true, false]);
    importer.dispose();
    expect(workers[1]?.ended).toBe(true);
  });

  it("a worker that breaks, and a browser without workers, are told in a sentence", () => {
    const { importer, workers, told, handlers } = setUp();
    importer.start(file, handlers);
    workers[0]?.onerror?.({ preventDefault: () => undefined } as ErrorEvent);
    createTestImporter(() => {
      throw new Error("no workers");
    }).start(file, handlers);
    expect(told).toEqual(["workerLost", "workerAbsent"]);
  });
});
