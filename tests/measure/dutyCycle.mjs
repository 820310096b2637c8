/*
 * Slows processes down by letting them run for one part of each short period only: all their threads,
 * workers too, which the browser's own throttling cannot reach. Usage: dutyCycle.mjs FACTOR PID…
 */
import { setPriority } from "node:os";

const [factor, ...pids] = process.argv.slice(2).map(Number);
const runMs = 5;
const clock = new Int32Array(new SharedArrayBuffer(4));

function signal(name) {
  for (const pid of pids) {
    try {
      process.kill(pid, name);
    } catch {
      // That process has ended; the others go on.
    }
  }
}

// Late signals would let the processes run too long; only root may go first.
try {
  setPriority(-20);
} catch {
  // Then it is as exact as the machine is idle.
}

for (const ending of ["SIGTERM", "SIGINT", "SIGHUP"]) process.on(ending, () => process.exit(0));
process.on("exit", () => signal("SIGCONT"));

function waitUntil(time) {
  const left = time - performance.now();
  if (left > 0) Atomics.wait(clock, 0, 0, left);
}

function period() {
  const started = performance.now();
  signal("SIGCONT");
  waitUntil(started + runMs);
  signal("SIGSTOP");
  const stopped = performance.now();
  waitUntil(stopped + (stopped - started) * (factor - 1));
  setImmediate(period);
}
period();
