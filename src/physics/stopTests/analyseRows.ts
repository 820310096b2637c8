import * as messages from "../../words/compiled/physics/stopTests.ts";
import { fail, type Outcome, succeed } from "../outcome.ts";
import { mean } from "../uncertainty/readingMean.ts";
import {
  type DampingFit,
  type DepthSpeedForce,
  type Remark,
  type RowsAnalysis,
  type RowsOptions,
  type SpeedSeries,
  type StaticPoint,
  staticSpeedMmPerS,
} from "./benchTest.ts";
import { dampingFit, type MovingRows, pushWithSpeed } from "./dampingFit.ts";
import { isTold, lossNotTold } from "./foundStop.ts";
import { levelMeans } from "./levelMeans.ts";
import { orientRows } from "./orientation.ts";
import { placesWhere, risingPlaces, sampledPlaces, valuesAt } from "./sampled.ts";
import { speedGroups } from "./speedGroups.ts";
import { soundRows, spoiltListRows } from "./spoiltRows.ts";
import { staticCurve } from "./staticCurve.ts";
import { zeroOfTest } from "./zeroOfTest.ts";

const fewestRows = 4;
/** Correlation of speed and excess force from which a reversed speed is sure, not noise. */
const clearlyReversed = 0.2;
const mostSeriesPoints = 500;

/**
 * What depth–speed–force rows say of a stop: signs, zeros and swapped columns put right and told in
 * `remarks`; the static curve from the static rows; the damping table from the rows at speed.
 *
 * Errors of the whole: "tooFewRows", "columnsNotUsable", "depthNotTold". What only curve or damping
 * lacks is the fault of that part.
 */
export function analyseRows(
  given: DepthSpeedForce,
  options: RowsOptions = {},
): Outcome<RowsAnalysis> {
  const threshold = options.staticSpeedMmPerS ?? staticSpeedMmPerS;
  if (given.depthMm.length < fewestRows) {
    return fail("tooFewRows", [messages.fileHoldsFewerThan]);
  }
  const oriented = orientRows(given, { ...options, staticSpeedMmPerS: threshold });
  if (!oriented.ok) return oriented;
  const spoilt = spoiltListRows(oriented.value.rows);
  const remarks: Remark[] = [...oriented.value.remarks, ...spoilt.remarks];
  const sound: MovingRows = {
    depthMm: soundRows(oriented.value.rows.depthMm, spoilt),
    speedMmPerS: soundRows(oriented.value.rows.speedMmPerS, spoilt),
    forceN: soundRows(oriented.value.rows.forceN, spoilt),
  };
  const slow = rowsWhere(sound, (speed) => Math.abs(speed) <= threshold);
  const zero = zeroOfTest(slow.depthMm.length === 0 ? [] : levelMeans(slow.depthMm, slow.forceN));
  if (!zero.ok) return zero;
  remarks.push(...zero.value.remarks);
  const { depthMm: depthZero, forceN: forceZero } = zero.value;
  const rows: MovingRows = {
    depthMm: sound.depthMm.map((depth) => depth - depthZero),
    speedMmPerS: sound.speedMmPerS,
    forceN: sound.forceN.map((force) => force - forceZero),
  };
  const still = rowsWhere(rows, (speed) => Math.abs(speed) <= threshold);
  const curve = staticCurve(still.depthMm, still.forceN);
  const points = curve.ok ? curve.value.curve.points : [];
  if (curve.ok) remarks.push(...curve.value.remarks);
  const moving = rowsWhere(rows, (speed) => Math.abs(speed) > threshold);
  const { speedMmPerS, damping } = dampingEitherWay(moving, points, remarks);
  if (damping.ok && !isTold(damping.value)) remarks.push(lossNotTold);
  const signed: MovingRows = { ...moving, speedMmPerS };
  const depthRange = rangeOf(rows.depthMm);
  return succeed({
    kind: "rows",
    rows: rows.depthMm.length,
    staticSpeedMmPerS: threshold,
    speeds: [...(still.depthMm.length === 0 ? [] : [series(still, 0)]), ...seriesAtSpeed(signed)],
    depthRangeMm: depthRange,
    staticCurve: curve.ok ? succeed(curve.value.curve) : curve,
    damping,
    remarks,
  });
}

/** Damping never adds energy: where speed and force beyond the static one disagree, the sign is turned. */
function dampingEitherWay(
  moving: MovingRows,
  points: readonly StaticPoint[],
  remarks: Remark[],
): { readonly speedMmPerS: Float64Array; readonly damping: Outcome<DampingFit> } {
  const reversed = pushWithSpeed(moving, points) < -clearlyReversed;
  const speedMmPerS = reversed ? moving.speedMmPerS.map((speed) => -speed) : moving.speedMmPerS;
  if (reversed) {
    remarks.push({
      code: "speedReversed",
      sentence: [messages.fileCountsSpeedAs],
    });
  }
  const damping = dampingFit({ ...moving, speedMmPerS }, points);
  if (damping.ok) remarks.push(...damping.value.remarks);
  return { speedMmPerS, damping };
}

function rowsWhere(rows: MovingRows, wanted: (speed: number) => boolean): MovingRows {
  return rowsAt(rows, placesWhere(rows.speedMmPerS, wanted));
}

function rowsAt(rows: MovingRows, places: Uint32Array): MovingRows {
  return {
    depthMm: valuesAt(rows.depthMm, places),
    speedMmPerS: valuesAt(rows.speedMmPerS, places),
    forceN: valuesAt(rows.forceN, places),
  };
}

function rangeOf(values: Float64Array): readonly [number, number] {
  let least = Number.POSITIVE_INFINITY;
  let most = Number.NEGATIVE_INFINITY;
  for (const value of values) {
    least = Math.min(least, value);
    most = Math.max(most, value);
  }
  return [least, most];
}

function seriesAtSpeed(moving: MovingRows): readonly SpeedSeries[] {
  if (moving.depthMm.length === 0) return [];
  const groups = speedGroups(moving.speedMmPerS.map(Math.abs));
  // Compressing groups first, slowest first, then those of the rebound.
  const placesOf: number[][] = Array.from({ length: 2 * groups.count }, () => []);
  moving.speedMmPerS.forEach((speed, row) => {
    const group = groups.groupOf(Math.abs(speed)) + (speed > 0 ? 0 : groups.count);
    placesOf[group]?.push(row);
  });
  return placesOf
    .filter((places) => places.length > 0)
    .map((places) => {
      const taken = rowsAt(moving, Uint32Array.from(places));
      return series(taken, mean(taken.speedMmPerS));
    });
}

function series(rows: MovingRows, speedMmPerS: number): SpeedSeries {
  const sampled = sampledPlaces(rows.depthMm.length, mostSeriesPoints);
  const places = risingPlaces(rows.depthMm, sampled);
  return {
    speedMmPerS,
    rows: rows.depthMm.length,
    depthMm: valuesAt(rows.depthMm, places),
    forceN: valuesAt(rows.forceN, places),
  };
}
