import * as messages from "../../words/compiled/physics/stopTests.ts";
import { fail, type Outcome, succeed } from "../outcome.ts";
import type { Message, Sentence } from "../sentence.ts";
import type {
  DampingFit,
  DampingRow,
  DampingValue,
  Remark,
  RestLoss,
  StaticPoint,
} from "./benchTest.ts";
import { depthLevels } from "./depthLevels.ts";
import { addRow, emptySums, type Sums, totalOf, withoutRest } from "./depthSums.ts";
import { residualsFrom } from "./residuals.ts";
import { restForceAt, restLossOf } from "./restLossFit.ts";
import { speedGroups } from "./speedGroups.ts";
import { curveThrough, staticErrorAt } from "./staticCurve.ts";

/** Rows at speed: depth mm, speed mm/s (positive compressing), force N, all of one length. */
export interface MovingRows {
  readonly depthMm: Float64Array;
  readonly speedMmPerS: Float64Array;
  readonly forceN: Float64Array;
}

/**
 * Rest loss and damping table of rows at speed in no order of time: force less static force is
 * h·F∞·σ(v) + c·v, one h for all rows, one c ≥ 0 at each depth, compressing and rebounding apart, by
 * non-negative least squares. h stays where the Bayesian information criterion needs it (Schwarz, Ann.
 * Stat. 6 (1978) 461, from memory); otherwise c = Σyv/Σv². The standard error takes the rows' scatter,
 * s² = Σ(y − cv)²/(n − 1), that of the static curve there and that of h. A depth counts where it was
 * tested at two speeds. Rows in which a rebounding stop has lifted off its plate say nothing of damping
 * and are left out. Source: JCGM 100:2008, H.3 (least squares).
 *
 * Errors: "staticRowsOnly", "noStaticRows", "tooFewSpeeds", "tooFewDepths".
 */
export function dampingFit(
  moving: MovingRows,
  points: readonly StaticPoint[],
): Outcome<DampingFit> {
  if (moving.depthMm.length === 0) return fail("staticRowsOnly", staticRowsOnly);
  const curve = curveThrough(points);
  if (curve === null) return fail("noStaticRows", noCurve);
  const levels = depthLevels(moving.depthMm);
  const groups = speedGroups(moving.speedMmPerS.map(Math.abs));
  const touching = 0.005 * (points.at(-1) as StaticPoint).forceN;
  const sums = Array.from({ length: 2 * levels.count * groups.count }, emptySums);
  const depths = new Float64Array(levels.count);
  const counts = new Float64Array(levels.count);
  const excess = new Float64Array(moving.depthMm.length);
  const counted = new Uint8Array(moving.depthMm.length);
  let liftedOff = 0;
  for (let row = 0; row < excess.length; row++) {
    const depth = moving.depthMm[row];
    const speed = moving.speedMmPerS[row];
    const force = moving.forceN[row];
    if (depth <= 0) continue;
    if (speed < 0 && force <= touching) {
      liftedOff++;
      continue;
    }
    const beyond = force - curve.force(depth);
    const level = levels.levelOf(depth);
    const direction = speed > 0 ? 0 : 1;
    const group = groups.groupOf(Math.abs(speed));
    const place = (direction * levels.count + level) * groups.count + group;
    addRow(sums[place] as Sums, speed, beyond, restForceAt(curve, depth, speed));
    depths[level] = depths[level] + depth;
    counts[level] = counts[level] + 1;
    excess[row] = beyond;
    counted[row] = 1;
  }
  const sumsAt = (direction: 0 | 1, level: number): readonly Sums[] => {
    const from = (direction * levels.count + level) * groups.count;
    return sums.slice(from, from + groups.count);
  };
  const restLoss = restLossOf(sumsAt, levels.count);
  const rows: DampingRow[] = [];
  const byLevel = new Map<number, DampingRow>();
  for (let level = 0; level < levels.count; level++) {
    const depthMm = depths[level] / counts[level];
    const staticError = staticErrorAt(points, depthMm);
    const compressing = lineThrough(sumsAt(0, level), staticError, restLoss);
    const rebounding = lineThrough(sumsAt(1, level), staticError, restLoss);
    if (compressing === null && rebounding === null) continue;
    const row = { depthMm, compressing, rebounding };
    rows.push(row);
    byLevel.set(level, row);
  }
  const compressed = rows.filter((row) => row.compressing !== null).length;
  const rebounded = rows.filter((row) => row.rebounding !== null).length;
  if (rows.length === 0) return fail("tooFewSpeeds", tooFewSpeeds);
  if (compressed < 2 && rebounded < 2) return fail("tooFewDepths", tooFewDepths);
  const remarks: Remark[] = [
    ...(compressed < 2 ? [notTested("compressionNotTested", messages.pressed)] : []),
    ...(rebounded < 2 ? [notTested("reboundNotTested", messages.letBack)] : []),
    ...(liftedOff === 0 ? [] : [liftedOffRemark(liftedOff)]),
    ...proportionRemark(
      (direction, level) =>
        sumsAt(direction, level).map((each) => withoutRest(each, restLoss?.value ?? 0)),
      levels.count,
      groups.count,
    ),
  ];
  const used = depthsAndResiduals(moving, excess, counted, (row) => {
    const found = byLevel.get(levels.levelOf(moving.depthMm[row]));
    const speed = moving.speedMmPerS[row];
    const value = speed > 0 ? found?.compressing : found?.rebounding;
    if (!value) return null;
    const rest = restForceAt(curve, moving.depthMm[row], speed);
    return value.coefficient * speed + (restLoss?.value ?? 0) * rest;
  });
  return succeed({
    rows,
    restLoss,
    table: rows.map((row) => [
      row.depthMm,
      heldValue(rows, row.depthMm, compressed < 2, (each) => each.compressing),
      heldValue(rows, row.depthMm, rebounded < 2, (each) => each.rebounding),
    ]),
    residuals: residualsFrom(used.depthMm, used.residualN),
    remarks,
  });
}

/** Σyv over all rows: below 0 where the force is the greater the faster the stop moves away from it. */
export function pushWithSpeed(moving: MovingRows, points: readonly StaticPoint[]): number {
  const curve = curveThrough(points);
  if (curve === null) return 0;
  let products = 0;
  let speedSquares = 0;
  let forceSquares = 0;
  for (let row = 0; row < moving.depthMm.length; row++) {
    const depth = moving.depthMm[row];
    if (depth <= 0) continue;
    const speed = moving.speedMmPerS[row];
    const beyond = moving.forceN[row] - curve.force(depth);
    products += speed * beyond;
    speedSquares += speed * speed;
    forceSquares += beyond * beyond;
  }
  const scale = Math.sqrt(speedSquares * forceSquares);
  return scale > 0 ? products / scale : 0;
}

function lineThrough(
  groups: readonly Sums[],
  staticError: number,
  restLoss: RestLoss | null,
): DampingValue | null {
  const tested = groups.filter(({ rows }) => rows > 0);
  if (tested.length < 2) return null;
  const all = totalOf(tested);
  const { rows, speedSquares, speeds, restSpeed } = all;
  const { products, forceSquares } = withoutRest(all, restLoss?.value ?? 0);
  const line = products / speedSquares;
  const coefficient = restLoss === null ? line : Math.max(0, line);
  const scatter = Math.max(0, forceSquares - line * products) / (rows - 1);
  return {
    coefficient,
    standardError: Math.hypot(
      Math.sqrt(scatter / speedSquares),
      (staticError * speeds) / speedSquares,
      ((restLoss?.standardError ?? 0) * Math.abs(restSpeed)) / speedSquares,
    ),
    rows,
    speedsMmPerS: tested.map((each) => each.speeds / each.rows),
  };
}

/** The direction's value at a depth, straight between tested depths, ends held; 0 where not tested. */
function heldValue(
  rows: readonly DampingRow[],
  depthMm: number,
  untested: boolean,
  of: (row: DampingRow) => DampingValue | null,
): number {
  if (untested) return 0;
  const tested = rows.flatMap((row) => {
    const value = of(row);
    return value === null ? [] : [[row.depthMm, Math.max(0, value.coefficient)] as const];
  });
  const after = tested.findIndex(([depth]) => depth >= depthMm);
  const next = tested.at(after) as (typeof tested)[number];
  const before = tested[after - 1];
  if (before === undefined) return next[1];
  return before[1] + ((next[1] - before[1]) * (depthMm - before[0])) / (next[0] - before[0]);
}

function depthsAndResiduals(
  moving: MovingRows,
  excess: Float64Array,
  counted: Uint8Array,
  dampingForce: (row: number) => number | null,
): { readonly depthMm: Float64Array; readonly residualN: Float64Array } {
  const depthMm = new Float64Array(excess.length);
  const residualN = new Float64Array(excess.length);
  let used = 0;
  for (let row = 0; row < excess.length; row++) {
    const force = counted[row] === 1 ? dampingForce(row) : null;
    if (force === null) continue;
    depthMm[used] = moving.depthMm[row];
    residualN[used] = excess[row] - force;
    used++;
  }
  return { depthMm: depthMm.slice(0, used), residualN: residualN.slice(0, used) };
}

/** The slower half of the speeds held against the faster half, at the depths that have both. */
function proportionRemark(
  sumsAt: (direction: 0 | 1, level: number) => readonly Sums[],
  levels: number,
  groups: number,
): Remark[] {
  const half = Math.floor(groups / 2);
  let slow = 0;
  let fast = 0;
  let variance = 0;
  for (const direction of [0, 1] as const) {
    for (let level = 0; level < levels; level++) {
      const sums = sumsAt(direction, level);
      const slowPart = partOf(sums.slice(0, half));
      const fastPart = partOf(sums.slice(half));
      if (slowPart === null || fastPart === null) continue;
      slow += slowPart.coefficient;
      fast += fastPart.coefficient;
      variance += slowPart.variance + fastPart.variance;
    }
  }
  const differs =
    Math.abs(fast - slow) > 0.25 * Math.max(slow, fast) &&
    Math.abs(fast - slow) > 3 * Math.sqrt(variance);
  if (!differs || slow <= 0) return [];
  return [
    {
      code: "notProportional",
      sentence: [
        messages.dampingGrows({
          hasFast: fast > slow,
          value: { kind: "share", value: Math.max(0, fast / slow) },
        }),
      ],
    },
  ];
}

function partOf(sums: readonly Sums[]): { coefficient: number; variance: number } | null {
  const total = (of: (each: Sums) => number) => sums.reduce((sum, each) => sum + of(each), 0);
  const rows = total((each) => each.rows);
  if (rows < 2) return null;
  const speedSquares = total((each) => each.speedSquares);
  const coefficient = total((each) => each.products) / speedSquares;
  const scatter = total((each) => each.forceSquares) - coefficient * total((each) => each.products);
  return { coefficient, variance: Math.max(0, scatter) / (rows - 1) / speedSquares };
}

function notTested(code: Remark["code"], motion: Message): Remark {
  return {
    code,
    sentence: [messages.stopWasNotTested({ motion })],
  };
}

function liftedOffRemark(rows: number): Remark {
  return {
    code: "liftedOff",
    sentence: [
      messages.rowInWhichStop({
        rows: { kind: "count", value: rows },
        rows2: rows,
      }),
    ],
  };
}

const staticRowsOnly: Sentence = [messages.everyRowOfThis];
const noCurve: Sentence = [messages.withoutStaticCurveFrom];
const tooFewSpeeds: Sentence = [messages.rowsAtSpeedHold];
const tooFewDepths: Sentence = [messages.rowsAtSpeedHoldOnly];
