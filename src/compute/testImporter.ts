import type { Fault } from "../physics/outcome.ts";
import type { ImportProgress } from "../records/testRows/importFile.ts";
import type { ImportOptions, TestImport } from "../records/testRows/testFile.ts";
import * as messages from "../words/compiled/compute.ts";
import type { ImportReply, ImportRequest } from "./importMessages.ts";
import { follow, type WorkerLike } from "./workerLike.ts";

export type { ImportProgress } from "../records/testRows/importFile.ts";

export interface ImportHandlers {
  /** About every 100 ms while reading, once before analysing. */
  onProgress(progress: ImportProgress): void;
  /** The tests of the file, at least one. */
  onDone(result: readonly TestImport[]): void;
  /**
   * One sentence. Faults of the headings ("headingsNotKnown", "columnMissing", "columnsTwice",
   * "unitNotTold", "unitNotKnown", "unitOfAnother", "columnsNotUsable") can be met by choosing `columns`.
   */
  onFault(fault: Fault): void;
}

export interface TestImporter {
  /**
   * Reads and analyses a CSV file in a worker of its own; an import under way is ended. Returns a
   * function that cancels, after which no handler is called.
   */
  start(file: File, handlers: ImportHandlers, options?: ImportOptions): () => void;
  dispose(): void;
}

export type ImportWorkerLike = WorkerLike<ImportRequest, ImportReply>;

const lost: Fault = {
  code: "workerLost",
  sentence: [messages.readingFileStoppedOn],
};

const absent: Fault = {
  code: "workerAbsent",
  sentence: [messages.thisBrowserCannotRead],
};

/** `startWorker` only for tests without a browser. */
export function createTestImporter(
  startWorker: () => ImportWorkerLike = startModuleWorker,
): TestImporter {
  let end: (() => void) | null = null;
  const start: TestImporter["start"] = (file, handlers, options = {}) => {
    end?.();
    let worker: ImportWorkerLike;
    try {
      worker = startWorker();
    } catch {
      handlers.onFault(absent);
      return () => undefined;
    }
    let running = true;
    const finish = () => {
      running = false;
      worker.terminate();
      if (end === finish) end = null;
    };
    end = finish;
    follow(
      worker,
      (reply) => {
        if (!running) return;
        if (reply.kind === "progress") return handlers.onProgress(reply.progress);
        finish();
        if (reply.kind === "done") handlers.onDone(reply.result);
        else handlers.onFault(reply.fault);
      },
      () => {
        if (!running) return;
        finish();
        handlers.onFault(lost);
      },
    );
    worker.postMessage({ file, options });
    return () => {
      if (running) finish();
    };
  };
  return { start, dispose: () => end?.() };
}

function startModuleWorker(): ImportWorkerLike {
  return new Worker(new URL("./importWorker.ts", import.meta.url), { type: "module" });
}
