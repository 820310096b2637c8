import type { Browser } from "playwright-core";
import { measuredPhone } from "./measuredPhone.ts";

interface TraceEvent {
  readonly name: string;
  readonly ph: string;
  readonly pid: number;
  readonly tid: number;
  /** Processor time of the thread itself, µs. */
  readonly tdur?: number;
  readonly args: { readonly name?: string };
}

/** A task longer than this holds up who taps, ms. */
const longMs = 50;
const settledMs = 4000;
/** The second holds the tasks, `RunTask`; the first the loading of a page. */
const categories = ["devtools.timeline", "disabled-by-default-devtools.timeline"];

/**
 * How long the first load holds up who taps, on a processor `slowdown` times slower, ms: each task of the page's
 * main thread by the processor time that it took, so that a busy machine does not count.
 */
export async function ownBlockingMs(
  browser: Browser,
  address: string,
  slowdown: number,
): Promise<number> {
  await browser.startTracing(undefined, { categories });
  const phone = await measuredPhone(browser);
  const page = await phone.newPage();
  await page.goto(address, { waitUntil: "load" });
  await page.locator("h1").first().waitFor();
  await page.waitForTimeout(settledMs);
  await phone.close();
  const trace = JSON.parse((await browser.stopTracing()).toString()) as {
    readonly traceEvents: readonly TraceEvent[];
  };
  const events = trace.traceEvents;
  const { origin } = new URL(address);
  // The process in which the page was loaded; the browser may begin with one and go on with another.
  const ours = new Set(
    events
      .filter(({ name, args }) => name === "CommitLoad" && JSON.stringify(args).includes(origin))
      .map(({ pid }) => pid),
  );
  const mains = new Set(
    events
      .filter(({ name, args }) => name === "thread_name" && args.name === "CrRendererMain")
      .map(({ pid, tid }) => `${pid} ${tid}`),
  );
  const tasks = events.filter(
    ({ name, ph, pid, tid }) =>
      name === "RunTask" && ph === "X" && ours.has(pid) && mains.has(`${pid} ${tid}`),
  );
  if (tasks.length === 0) throw new Error("The trace has no task of the page.");
  return tasks.reduce(
    (sum, { tdur = 0 }) => sum + Math.max(0, (slowdown * tdur) / 1000 - longMs),
    0,
  );
}
