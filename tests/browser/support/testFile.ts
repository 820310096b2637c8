import { closeSync, mkdtempSync, openSync, writeSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

/** What a generated test file holds: force = curve(depth) + damping·speed, and noise of this size. */
export const knownStop = {
  force: (depth: number) => 60 * depth + 0.02 * depth ** 3,
  compressing: 0.5,
  rebounding: 0.9,
  noiseN: 5,
} as const;

const speeds = [0, 150, 400, -150, -400];
const depths = Array.from({ length: 20 }, (_, index) => 2 + 2 * index);

/** A seeded generator of numbers from -1 to 1: a linear congruence is even enough for noise. */
function noise(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 31 - 1;
  };
}

/** A file of depth, speed and force, row after row, on disk; its path. */
export function writeTestFile(rows: number, name = "bench.csv"): string {
  const path = join(mkdtempSync(join(tmpdir(), "stopfit-rows-")), name);
  const file = openSync(path, "w");
  const next = noise(7);
  let lines = ["depth [mm],speed [mm/s],force [N]"];
  for (let row = 0; row < rows; row += 1) {
    const depth = depths[row % depths.length] ?? 2;
    const speed = speeds[Math.floor(row / depths.length) % speeds.length] ?? 0;
    const damping = speed > 0 ? knownStop.compressing : knownStop.rebounding;
    const force = knownStop.force(depth) + damping * speed + knownStop.noiseN * next();
    lines.push(`${depth},${speed},${force.toFixed(2)}`);
    if (lines.length >= 50_000) {
      writeSync(file, `${lines.join("\n")}\n`);
      lines = [];
    }
  }
  writeSync(file, `${lines.join("\n")}\n`);
  closeSync(file);
  return path;
}
