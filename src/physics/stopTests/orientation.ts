import * as messages from "../../words/compiled/physics/stopTests.ts";
import { fail, type Outcome, succeed } from "../outcome.ts";
import type { Message } from "../sentence.ts";
import type { DepthSpeedForce, Remark, RowsOptions } from "./benchTest.ts";
import { rankCorrelation } from "./rankCorrelation.ts";
import { strokeDirections, turnedAs } from "./strokeDirections.ts";

type Columns = Omit<DepthSpeedForce, "kind">;

/** Columns put in their places and turned the right way, with what was done. */
export interface OrientedRows {
  readonly rows: Columns;
  readonly remarks: readonly Remark[];
}

/** A stop is stiffer than this, N/mm, over its whole test; from 9 N/mm on by common practice. */
const softestRate = 0.5;
/** No stop is pressed deeper, mm. */
const deepest = 400;
const follows = 0.9;
const barelyFollows = 0.3;

/**
 * Which column is which, and which way each counts, from what every stop does: the deeper it is
 * pressed, the more it pushes. Swapped columns are put right where only one exchange explains the
 * numbers; force and depth that count the other way are turned. Speeds without a sign take theirs from
 * the order of the rows where that shows whole strokes. Common practice, no source.
 *
 * Errors: "columnsNotUsable" (force does not follow depth in any order of the columns).
 */
export function orientRows(given: Columns, options: RowsOptions = {}): Outcome<OrientedRows> {
  const remarks: Remark[] = [];
  const placed = columnsInPlace(given, options, remarks);
  if (!placed.ok) return placed;
  const turned = turnedRight(placed.value, remarks);
  return succeed({ rows: withSignedSpeeds(turned, options, remarks), remarks });
}

function columnsInPlace(given: Columns, options: RowsOptions, remarks: Remark[]): Outcome<Columns> {
  const { depthMm, speedMmPerS, forceN } = given;
  const factors = options.factors ?? { depth: 1, speed: 1, force: 1 };
  const as = (values: Float64Array, from: number, to: number) =>
    values.map((value) => (value / from) * to);
  const depthSpan = span(depthMm);
  const forceSpan = span(forceN);
  if (depthSpan === 0 && forceSpan === 0) return fail("columnsNotUsable", nothingChanges);
  const together = Math.abs(rankCorrelation(depthMm, forceN));
  if (depthSpan > 0) {
    const speedForForce = Math.abs(rankCorrelation(depthMm, speedMmPerS));
    const speedForDepth = Math.abs(rankCorrelation(speedMmPerS, forceN));
    const better = (found: number, other: number) =>
      found >= follows && found > together + 0.2 && other < follows;
    if (better(speedForForce, speedForDepth)) {
      remarks.push(swapped(messages.speedAndForce));
      return succeed({
        depthMm,
        speedMmPerS: as(forceN, factors.force, factors.speed),
        forceN: as(speedMmPerS, factors.speed, factors.force),
      });
    }
    if (better(speedForDepth, speedForForce)) {
      remarks.push(swapped(messages.depthAndSpeed));
      return succeed({
        depthMm: as(speedMmPerS, factors.speed, factors.depth),
        speedMmPerS: as(depthMm, factors.depth, factors.speed),
        forceN,
      });
    }
    if (together < barelyFollows) return fail("columnsNotUsable", forceDoesNotFollow);
  }
  const otherDepth = as(forceN, factors.force, factors.depth);
  const otherForce = as(depthMm, factors.depth, factors.force);
  const isSoft = forceSpan < softestRate * depthSpan;
  if (isSoft && span(otherDepth) <= deepest && span(otherForce) > span(otherDepth)) {
    remarks.push(swapped(messages.depthAndForce));
    return succeed({ depthMm: otherDepth, speedMmPerS, forceN: otherForce });
  }
  if (isSoft || depthSpan > 2 * deepest) return fail("columnsNotUsable", unitsNotBelievable);
  return succeed(given);
}

function turnedRight(given: Columns, remarks: Remark[]): Columns {
  let { depthMm, speedMmPerS, forceN } = given;
  if (pushSign(forceN) < 0) {
    forceN = forceN.map((force) => -force);
    remarks.push({
      code: "forceReversed",
      sentence: [messages.fileCountsPushingForce],
    });
  }
  if (rankCorrelation(depthMm, forceN) < 0) {
    depthMm = depthMm.map((depth) => -depth);
    speedMmPerS = speedMmPerS.map((speed) => -speed);
    remarks.push({
      code: "depthReversed",
      sentence: [messages.inFileDepthFalls],
    });
  }
  return { depthMm, speedMmPerS, forceN };
}

/** The sign of the large forces: a load cell's small offset does not matter. */
function pushSign(forceN: Float64Array): number {
  const greatest = forceN.reduce((most, force) => Math.max(most, Math.abs(force)), 0);
  let sum = 0;
  for (const force of forceN) if (Math.abs(force) > greatest / 2) sum += Math.sign(force);
  return Math.sign(sum);
}

function withSignedSpeeds(given: Columns, options: RowsOptions, remarks: Remark[]): Columns {
  const threshold = options.staticSpeedMmPerS ?? 0;
  const { depthMm, speedMmPerS } = given;
  let positive = 0;
  let negative = 0;
  for (const speed of speedMmPerS) {
    if (speed > threshold) positive++;
    if (speed < -threshold) negative++;
  }
  const moving = positive + negative;
  if (moving < 20 || (positive > 0 && negative > 0)) return given;
  const directions = strokeDirections(depthMm, speedMmPerS, threshold);
  if (directions === null) return given;
  remarks.push({
    code: "speedUnsigned",
    sentence: [messages.fileGivesSpeedsWithout],
  });
  return {
    ...given,
    speedMmPerS: turnedAs(speedMmPerS, directions),
  };
}

function span(values: Float64Array): number {
  let least = Number.POSITIVE_INFINITY;
  let most = Number.NEGATIVE_INFINITY;
  for (const value of values) {
    least = Math.min(least, value);
    most = Math.max(most, value);
  }
  return most - least;
}

function swapped(which: Message): Remark {
  return {
    code: "columnsSwapped",
    asks: true,
    sentence: [messages.columnsOfWereTaken({ which })],
  };
}

const nothingChanges = [messages.neitherDepthNorForce];
const forceDoesNotFollow = [messages.forceDoesNotFollow];
const unitsNotBelievable = [messages.byTheseNumbersStop];
