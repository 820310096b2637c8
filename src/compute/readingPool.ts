import { cancelled, createPool, type Pool } from "./pool.ts";

/** Enough to read beside the screen, and to leave the rest of a phone alone. */
const hands = 2;

/**
 * A pool to read in what comes from outside, beside the screen; where a browser has no workers it is read
 * in turns of its own.
 */
export function createReadingPool(): Pool {
  if (typeof Worker === "function") return createPool({ size: hands });
  let ended = false;
  return {
    size: 1,
    run: async (task) => {
      const { poolAnswer } = await import("./poolWork.ts");
      return ended ? { kind: "failed", fault: cancelled } : poolAnswer(task);
    },
    cancel: () => undefined,
    dispose: () => {
      ended = true;
    },
  };
}
