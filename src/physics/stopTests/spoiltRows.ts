import * as messages from "../../words/compiled/physics/stopTests.ts";
import type { Remark } from "./benchTest.ts";
import { valuesAt } from "./sampled.ts";

export interface Channels {
  readonly depthMm: Float64Array;
  readonly forceN: Float64Array;
}

/** 1 for a row that a machine spoilt, with what was wrong in words. */
export interface SpoiltRows {
  readonly spoilt: Uint8Array;
  readonly count: number;
  readonly remarks: readonly Remark[];
}

/** A spike stands out of the median of five by this many of the steps around it … */
const spikeSteps = 8;
/** … and by this share of the whole span. */
const spikeShare = 0.04;
/** A force of exactly 0 between forces above this share of the greatest is a missing one. */
const missingShare = 0.05;
/** … over no more rows than this: a stop that lifts off shows 0 for longer. */
const mostMissing = 3;
/** A load cell at its end shows the same greatest number over so many rows … */
const plateauRows = 5;
/** … while the depth changes by this share of its span. */
const plateauShare = 0.01;
/** A depth that stood still jumps by this share of the span as it goes on. */
const jumpShare = 0.003;
const heldRows = 3;

/** Places of the rows that are spoilt, by what spoilt them. */
interface Found {
  readonly missing: readonly number[];
  readonly saturated: readonly number[];
  readonly held: readonly number[];
  readonly spikes: readonly number[];
}

/**
 * Rows of a test, in the order of time, that no stop made: single spikes, zeros written for missing
 * numbers, the load cell at its end, depths that stood still and then jumped. Common practice, no source.
 */
export function spoiltRows({ depthMm, forceN }: Channels): SpoiltRows {
  return marked(depthMm.length, forceN, {
    missing: [...missingRows(forceN, depthMm), ...missingRows(depthMm, forceN)],
    saturated: saturatedRows(depthMm, forceN),
    held: heldDepths(depthMm),
    spikes: [...spikesIn(forceN), ...spikesIn(depthMm)],
  });
}

/** Above this many rows a list is taken as it is: its means hardly feel a spike. */
const mostListed = 300_000;
const fewestListed = 8;

/**
 * The same of rows in no order of time, whatever their order: each is held against its neighbours in depth
 * among the rows of like speed.
 */
export function spoiltListRows({
  depthMm,
  speedMmPerS,
  forceN,
}: Channels & { readonly speedMmPerS: Float64Array }): SpoiltRows {
  const count = depthMm.length;
  const found = { missing: [], saturated: [], held: [], spikes: [] } as {
    [Kind in keyof Found]: number[];
  };
  if (count > mostListed) return marked(count, forceN, found);
  const like = speedMmPerS.map((speed) => Number(speed.toPrecision(2)));
  const by = (values: Float64Array, a: number, b: number) => values[a] - values[b];
  const order = Uint32Array.from(depthMm, (_, row) => row).sort(
    (a, b) => by(like, a, b) || by(depthMm, a, b) || by(forceN, a, b),
  );
  for (let from = 0; from < count; ) {
    let to = from;
    while (to < count && like[order[to]] === like[order[from]]) to++;
    const own = order.subarray(from, to);
    from = to;
    if (own.length < fewestListed) continue;
    const depths = valuesAt(depthMm, own);
    const forces = valuesAt(forceN, own);
    const rows = (places: readonly number[]) => places.map((place) => own[place]);
    found.missing.push(...rows(missingRows(forces, depths)));
    found.saturated.push(...rows(saturatedRows(depths, forces)));
    found.spikes.push(...rows(spikesIn(forces)));
  }
  return marked(count, forceN, found);
}

function marked(count: number, forceN: Float64Array, found: Found): SpoiltRows {
  const spoilt = new Uint8Array(count);
  const mark = (rows: readonly number[]): number => {
    const fresh = new Set(rows.filter((row) => spoilt[row] === 0));
    for (const row of fresh) spoilt[row] = 1;
    return fresh.size;
  };
  const remarks: Remark[] = [];
  const missing = mark(found.missing);
  if (missing > 0) remarks.push(missingRemark(missing));
  const saturated = mark(found.saturated);
  if (saturated > 0) remarks.push(saturatedRemark(saturated, greatest(forceN)));
  const held = mark(found.held);
  if (held > 0) remarks.push(heldRemark(held));
  const spikes = mark(found.spikes);
  if (spikes > 0) remarks.push(spikeRemark(spikes));
  return { spoilt, count: missing + saturated + held + spikes, remarks };
}

/** The rows that are not spoilt, of each column. */
export function soundRows(column: Float64Array, { spoilt, count }: SpoiltRows): Float64Array {
  return count === 0 ? column : column.filter((_, row) => spoilt[row] === 0);
}

function missingRows(values: Float64Array, other: Float64Array): readonly number[] {
  const mostOther = Math.max(greatest(other), -least(other));
  const most = Math.max(greatest(values), -least(values));
  const rows: number[] = [];
  for (let row = 1; row < values.length - 1; row++) {
    if (values[row] !== 0) continue;
    let from = row - 1;
    while (from >= 0 && values[from] === 0) from--;
    let to = row + 1;
    while (to < values.length && values[to] === 0) to++;
    const before = Math.abs(values[from] ?? 0);
    const after = Math.abs(values[to] ?? 0);
    const isShort = to - from - 1 <= mostMissing;
    const isLoaded = Math.abs(other[row]) > missingShare * mostOther;
    if (
      isShort &&
      isLoaded &&
      Math.min(before, after) > missingShare * most &&
      isNear(before, after)
    ) {
      for (let place = from + 1; place < to; place++) rows.push(place);
    }
    row = to;
  }
  return rows;
}

function isNear(a: number, b: number): boolean {
  return a < 1.5 * b && b < 1.5 * a;
}

function saturatedRows(depthMm: Float64Array, forceN: Float64Array): readonly number[] {
  const span = greatest(depthMm) - least(depthMm);
  const rows: number[] = [];
  for (const end of [greatest(forceN), least(forceN)]) {
    if (end === 0) continue;
    for (let row = 0; row < forceN.length; row++) {
      if (forceN[row] !== end) continue;
      const from = row;
      while (row + 1 < forceN.length && forceN[row + 1] === end) row++;
      const depths = depthMm.subarray(from, row + 1);
      const moved = greatest(depths) - least(depths);
      if (depths.length < plateauRows || moved < plateauShare * span) continue;
      for (let place = from; place <= row; place++) rows.push(place);
    }
  }
  return rows;
}

/** Runs of one depth that end in a jump; the first row of a run is fresh and stays. */
function heldDepths(depthMm: Float64Array): readonly number[] {
  const span = greatest(depthMm) - least(depthMm);
  const rows: number[] = [];
  for (let row = 1; row < depthMm.length; row++) {
    if (depthMm[row] !== depthMm[row - 1]) continue;
    const from = row;
    while (row + 1 < depthMm.length && depthMm[row + 1] === depthMm[row]) row++;
    const next = depthMm[row + 1];
    if (row - from + 2 < heldRows || next === undefined) continue;
    const jump = Math.abs(next - depthMm[row]);
    const afterwards = Math.abs((depthMm[row + 2] ?? next) - next);
    // After a real rest the motion goes on in steps as great as its first one.
    if (jump < jumpShare * span || jump < 2.5 * afterwards) continue;
    for (let place = from; place <= row; place++) rows.push(place);
  }
  return rows;
}

function spikesIn(values: Float64Array): readonly number[] {
  const span = greatest(values) - least(values);
  const rows: number[] = [];
  const five = new Float64Array(5);
  const steps = new Float64Array(10);
  for (let row = 2; row < values.length - 2; row++) {
    const here = values[row];
    const fromBefore = Math.abs(here - values[row - 1]);
    const fromAfter = Math.abs(here - values[row + 1]);
    if (Math.max(fromBefore, fromAfter) < spikeShare * span) continue;
    for (let k = 0; k < 5; k++) five[k] = values[row - 2 + k];
    five.sort();
    const out = Math.abs(here - five[2]);
    if (out < spikeShare * span) continue;
    for (let k = 0; k < 10; k++) {
      const place = Math.min(values.length - 1, Math.max(1, row - 4 + k));
      steps[k] = Math.abs(values[place] - values[place - 1]);
    }
    steps.sort();
    if (out > spikeSteps * steps[5]) rows.push(row);
  }
  return rows;
}

function greatest(values: Float64Array): number {
  let found = Number.NEGATIVE_INFINITY;
  for (const value of values) if (value > found) found = value;
  return found;
}

function least(values: Float64Array): number {
  let found = Number.POSITIVE_INFINITY;
  for (const value of values) if (value < found) found = value;
  return found;
}

function missingRemark(count: number): Remark {
  return {
    code: "zerosForMissing",
    sentence: [messages.rowsHold0Between({ count: { kind: "count", value: count } })],
  };
}

function saturatedRemark(count: number, force: number): Remark {
  return {
    code: "saturated",
    sentence: [
      messages.forceStandsAtOver({
        force: { kind: "force", value: force },
        count: { kind: "count", value: count },
      }),
    ],
  };
}

function heldRemark(count: number): Remark {
  return {
    code: "heldDepths",
    sentence: [messages.inRowsDepthStood({ count: { kind: "count", value: count } })],
  };
}

function spikeRemark(count: number): Remark {
  return {
    code: "spikes",
    sentence: [
      messages.rowStandsFarOut({
        count: { kind: "count", value: count },
        count2: count,
      }),
    ],
  };
}
