import type { Browser, Page } from "playwright-core";

interface TraceEvent {
  readonly name: string;
  readonly pid: number;
  readonly tid: number;
  readonly tdur?: number;
  readonly args?: { readonly name?: string };
}

/** Processor time of the longest task of any page's main thread while `work` goes on, ms. */
export async function longestTask(
  browser: Browser,
  page: Page,
  work: () => Promise<void>,
): Promise<number> {
  await browser.startTracing(page, {
    categories: ["toplevel", "disabled-by-default-devtools.timeline"],
  });
  await work();
  const { traceEvents } = JSON.parse((await browser.stopTracing()).toString()) as {
    traceEvents: TraceEvent[];
  };
  const mains = new Set(
    traceEvents
      .filter(({ name, args }) => name === "thread_name" && args?.name === "CrRendererMain")
      .map(({ pid, tid }) => `${pid} ${tid}`),
  );
  const tasks = traceEvents.filter(
    ({ name, pid, tid, tdur }) =>
      /RunTask$/.test(name) && tdur !== undefined && mains.has(`${pid} ${tid}`),
  );
  return Math.max(0, ...tasks.map(({ tdur = 0 }) => tdur)) / 1000;
}
