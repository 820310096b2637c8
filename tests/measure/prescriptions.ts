import { assessFitment } from "../../src/physics/assess.ts";
import type { Fitment, Reading } from "../../src/physics/fitment.ts";
import { spacersByMm } from "../../src/physics/prescription/candidates.ts";
import { withStop } from "../../src/physics/prescription/fitmentWithStop.ts";
import { type Prescription, prescribeSteps } from "../../src/physics/prescription/prescribe.ts";
import type { Decided } from "../../src/physics/prescription/trials.ts";
import { meanOf } from "../../src/physics/uncertainty/readingMean.ts";
import {
  exhaustive,
  exhaustivelyDecided,
  finished,
  searched,
} from "../physics/prescription/exhaustive.ts";
import { generatedFitment, shelf } from "../physics/prescription/generated.ts";
import { randomFrom } from "../support/generateRecords.ts";

/**
 * What the prescription comes to on generated vehicles, and whether it finds a solution that is known to
 * exist: `npm run prescriptions`, or `-- 50 20 10` for fewer vehicles, solutions, and solutions on which every
 * combination is put through the whole model as well.
 */
const [vehicles = 500, solutions = 200, whole = 20] = process.argv.slice(2).map(Number);
const options = { samples: 10_000, spacersMm: spacersByMm };

function count<Key extends string>(keys: readonly Key[]): string {
  const times = new Map<string, number>();
  for (const key of keys) times.set(key, (times.get(key) ?? 0) + 1);
  return [...times]
    .sort(([, one], [, other]) => other - one)
    .map(([key, many]) => `${key} ${many}`)
    .join(", ");
}

/** The vehicle changed as prescribed, as the fitting would leave it, measured again. */
function promised(fitment: Fitment, prescription: Extract<Prescription, { none: false }>): boolean {
  const changed = withStop(fitment, prescription.candidate.stop, prescription.spacerMm);
  const assessed = assessFitment(changed, options);
  return assessed.ok && assessed.value.verdict === prescription.verdict;
}

function why(prescription: Extract<Prescription, { none: true }>): string {
  return [...new Set(prescription.blockedBy.map(({ check }) => check))].sort().join(" + ");
}

const given: string[] = [];
const blocked: string[] = [];
const freed: string[] = [];
let kept = 0;
const started = performance.now();
for (let seed = 1; seed <= vehicles; seed += 1) {
  const fitment = generatedFitment(seed);
  const prescription = finished(prescribeSteps(fitment, shelf, options));
  if (prescription.none) {
    given.push("none");
    blocked.push(why(prescription));
    freed.push(prescription.freed.map(({ kind }) => kind)[0] ?? "nothing alone");
    continue;
  }
  given.push(
    `${prescription.state}${prescription.unknown.length > 0 ? " for height" : ""}: ${prescription.change}`,
  );
  if (promised(fitment, prescription)) kept += 1;
}
const prescribed = given.filter((each) => each !== "none").length;
const seconds = (performance.now() - started) / 1000;
process.stdout.write(
  [
    `${vehicles} generated vehicles, ${(seconds / vehicles).toFixed(2)} s each`,
    `  prescribed ${prescribed}: ${count(given)}`,
    `  promised verdict kept: ${kept} of ${prescribed}`,
    `  none possible, blocked by: ${count(blocked)}`,
    `  freed first by: ${count(freed)}`,
    "",
  ].join("\n"),
);

function shifted(reading: Reading, by: number): Reading {
  return { ...reading, values: reading.values.map((value) => value + by) };
}

/** A vehicle on which one stop of the shelf with one spacer surely fits, standing with another stop. */
function withKnownSolution(seed: number): Fitment | null {
  const random = randomFrom(seed * 7919);
  const part = shelf[Math.floor(random() * shelf.length)];
  const spacer = [0, ...spacersByMm][Math.floor(random() * 7)] ?? 0;
  if (part === undefined) return null;
  const plain = generatedFitment(seed, { bare: 0 });
  const solved: Fitment = { ...plain, stop: part.stop };
  const assessed = assessFitment(solved, options);
  if (!assessed.ok) return null;
  const sure = assessed.value.corners.every(
    ({ checks, clearanceProbability, earlyContactProbability }) =>
      checks.every(({ id, state }) => id === "balance" || state === "ok") &&
      (clearanceProbability ?? 0) > 0.99 &&
      (earlyContactProbability ?? 0) > 0.99,
  );
  if (!sure) return null;
  const taller = meanOf(part.stop.freeHeight) + spacer - meanOf(plain.stop.freeHeight);
  return {
    ...plain,
    // Where the other stop would be pressed there is none: else it would hold the vehicle up.
    corners: plain.corners.map(({ gap, ...corner }) => {
      if (gap === undefined) return corner;
      const own = shifted(gap, taller);
      return meanOf(own) >= 0
        ? { ...corner, gap: own }
        : { ...corner, seatToPad: shifted(own, meanOf(plain.stop.freeHeight)) };
    }),
  };
}

let made = 0;
let found = 0;
let same = 0;
let sameWhole = 0;
const lost: number[] = [];
for (let seed = 1; made < solutions && seed < 400 * solutions; seed += 1) {
  const fitment = withKnownSolution(seed);
  if (fitment === null) continue;
  made += 1;
  const best = searched(fitment, shelf, options).best;
  if (best?.judgement.state === "ok") found += 1;
  else lost.push(seed);
  const key = (trial: Decided | null) =>
    trial && `${trial.combination.candidate.id} ${trial.combination.spacerMm}`;
  if (key(best) === key(exhaustivelyDecided(fitment, shelf, options))) same += 1;
  if (made <= whole && key(best) === key(exhaustive(fitment, shelf, options))) sameWhole += 1;
}
process.stdout.write(
  [
    `${made} vehicles with a known solution`,
    `  found: ${found} (${((100 * found) / Math.max(1, made)).toFixed(1)} %)${lost.length > 0 ? `, not in ${lost.join(", ")}` : ""}`,
    `  pruned search as the exhaustive one: ${same} of ${made}`,
    `  the same with every combination through the whole model: ${sameWhole} of ${Math.min(made, whole)}`,
    "",
  ].join("\n"),
);
