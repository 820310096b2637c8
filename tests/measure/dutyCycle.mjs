/*
 * Slows processes down by letting them run for one part of each short period only: all their threads,
 * workers too, which the browser's own throttling cannot reach. Usage: dutyCycle.mjs FACTOR PID…, or
 * dutyCycle.mjs FACTOR --below PID for all that a process has started, and what those start meanwhile.
 */
import { readdirSync, readFileSync } from "node:fs";
import { setPriority } from "node:os";

const [factorText, ...rest] = process.argv.slice(2);
const factor = Number(factorText);
const below = rest[0] === "--below" ? Number(rest[1]) : null;
let pids = below === null ? rest.map(Number) : [];

/** Every process under one, but this and its like. */
function descendants(root) {
  const parents = new Map();
  for (const name of readdirSync("/proc")) {
    if (!/^\d+$/.test(name)) continue;
    try {
      const stat = readFileSync(`/proc/${name}/stat`, "utf8");
      const [, , parent] = stat.slice(stat.lastIndexOf(")")).split(" ");
      parents.set(Number(name), Number(parent));
    } catch {
      // It has ended meanwhile.
    }
  }
  const under = (pid) => pid !== undefined && pid > 1 && (pid === root || under(parents.get(pid)));
  return [...parents.keys()].filter(
    (pid) => pid !== root && pid !== process.pid && under(parents.get(pid)),
  );
}

const lookAgainMs = 200;
let lookedAt = Number.NEGATIVE_INFINITY;
function look() {
  if (below === null || performance.now() - lookedAt < lookAgainMs) return;
  lookedAt = performance.now();
  pids = descendants(below);
}
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
  look();
  const started = performance.now();
  signal("SIGCONT");
  waitUntil(started + runMs);
  signal("SIGSTOP");
  const stopped = performance.now();
  waitUntil(stopped + (stopped - started) * (factor - 1));
  setImmediate(period);
}
period();
