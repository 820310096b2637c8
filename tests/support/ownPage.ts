import { afterAll, vi } from "vitest";
import { builtinEnvironments } from "vitest/runtime";

/*
 * Test files share a process, for to begin one takes longer than most of them. Each has a page and
 * modules of its own all the same: nothing that one keeps, shows or waits for is met by the next.
 * Packages that hold on to the page count among its modules (`server.deps.inline`).
 */

type Work = (...given: unknown[]) => void;

const { BroadcastChannel, setImmediate, setInterval, setTimeout } = globalThis;
const ofTheProcess = new Set(Object.getOwnPropertyNames(globalThis));
const page = await builtinEnvironments["happy-dom"].setup(globalThis, {});

/** How to end what would still happen in a page that is gone. */
const ends = new Map<object, () => void>();

Object.assign(globalThis, {
  BroadcastChannel: class extends BroadcastChannel {
    constructor(name: string) {
      super(name);
      ends.set(this, () => this.close());
    }
  },
  setImmediate(work: Work, ...given: unknown[]) {
    const immediate = setImmediate(() => {
      ends.delete(immediate);
      work(...given);
    });
    ends.set(immediate, () => clearImmediate(immediate));
    return immediate;
  },
  setInterval(work: Work, ms?: number, ...given: unknown[]) {
    const timer = setInterval(work, ms, ...given);
    ends.set(timer, () => clearInterval(timer));
    return timer;
  },
  setTimeout(work: Work, ms?: number, ...given: unknown[]) {
    const timer = setTimeout(() => {
      ends.delete(timer);
      work(...given);
    }, ms);
    ends.set(timer, () => clearTimeout(timer));
    return timer;
  },
});

afterAll(async () => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
  vi.unstubAllEnvs();
  vi.resetModules();
  for (const end of ends.values()) end();
  await page.teardown(globalThis);
  Object.assign(globalThis, { BroadcastChannel, setImmediate, setInterval, setTimeout });
  for (const name of Object.getOwnPropertyNames(globalThis)) {
    if (!ofTheProcess.has(name)) Reflect.deleteProperty(globalThis, name);
  }
});
