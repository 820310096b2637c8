/** Runs `work` once the browser has nothing better to do, half a second from now at the latest. */
export function whenIdle(work: () => void): void {
  // Not every browser has it.
  if ("requestIdleCallback" in globalThis) requestIdleCallback(work, { timeout: 500 });
  else setTimeout(work, 300);
}
