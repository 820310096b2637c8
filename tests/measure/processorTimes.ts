import type { Browser, Page } from "playwright-core";

interface TraceEvent {
  readonly name: string;
  readonly pid: number;
  readonly tid: number;
  readonly tdur?: number;
  readonly args?: { readonly name?: string };
}

/** Processor time while `work` goes on, ms: of the longest task of any page's main thread, of all workers. */
export async function processorTimes(
  browser: Browser,
  page: Page,
  work: () => Promise<void>,
): Promise<{ readonly longestMs: number; readonly workersMs: number }> {
  await browser.startTracing(page, {
    categories: ["toplevel", "disabled-by-default-devtools.timeline"],
  });
  await work();
  const { traceEvents } = JSON.parse((await browser.stopTracing()).toString()) as {
    traceEvents: TraceEvent[];
  };
  const threads = (wanted: RegExp) =>
    new Set(
      traceEvents
        .filter(({ name, args }) => name === "thread_name" && wanted.test(args?.name ?? ""))
        .map(({ pid, tid }) => `${pid} ${tid}`),
    );
  const tasksOf = (wanted: RegExp) => {
    const those = threads(wanted);
    return traceEvents.flatMap(({ name, pid, tid, tdur }) =>
      /RunTask$/.test(name) && tdur !== undefined && those.has(`${pid} ${tid}`)
        ? [tdur / 1000]
        : [],
    );
  };
  return {
    longestMs: tasksOf(/^CrRendererMain$/).reduce((longest, ms) => Math.max(longest, ms), 0),
    workersMs: tasksOf(/^DedicatedWorker/).reduce((sum, ms) => sum + ms, 0),
  };
}
