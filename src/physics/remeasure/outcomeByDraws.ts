import { assessStatic } from "../assess.ts";
import type { Assessment, Check, Fitment, Reading } from "../fitment.ts";
import type { QuantityId } from "../readings/readingId.ts";
import type { DrawnReading } from "../uncertainty/drawnReading.ts";
import { RandomSource } from "../uncertainty/randomSource.ts";
import { mean } from "../uncertainty/readingMean.ts";
import { leastSamples } from "../uncertainty/sharedDraws.ts";
import type { RemeasureOutcome } from "./linearDoubt.ts";
import type { Margin } from "./margin.ts";
import { isBetween, type RemeasureLevel } from "./openQuestions.ts";
import type { AfterReading } from "./readAgain.ts";
import { withReading } from "./withReading.ts";

/** New means that are tried, each as likely as the others. */
const tried = 12;
const shiftSamples = 2400;
const seed = 20_080_101;

/** What a reading is expected to be after `after`, its mean moved by `shift`. */
export function readingAfter(reading: DrawnReading, after: AfterReading, shift: number): Reading {
  const mean = reading.mean + shift;
  const scatter = after.standardError;
  // Two values that far either side of their mean have that standard error.
  return {
    values: scatter > 0 ? [mean - scatter, mean + scatter] : [mean],
    tol: after.halfWidth,
  };
}

/**
 * The same expectation as `LinearDoubt.outcome` for one reading, through the whole formulas: the static
 * assessment is done anew for new means spread as `after.shift` says, and its own decisions are taken.
 * Costs that many assessments; for margins that no line describes. Yields between them. A new mean
 * that cannot be assessed at all settles nothing.
 */
export function* outcomeByDraws(
  fitment: Fitment,
  margins: readonly Margin[],
  level: RemeasureLevel,
  blocked: boolean,
  reading: DrawnReading,
  after: AfterReading,
): Generator<void, RemeasureOutcome, void> {
  const assess = (shift: number): Assessment | null => {
    const changed = withReading(fitment, reading.id, readingAfter(reading, after, shift));
    const assessed = assessStatic(changed, { samples: leastSamples });
    return assessed.ok ? assessed.value : null;
  };
  let settled = margins.map(() => 0);
  let verdict = 0;
  for (const shift of likelyShifts(reading.id, after)) {
    const assessed = assess(shift);
    const checks = margins.map((margin) => checkIn(assessed, margin));
    const open = checks.map((check) => check === null || isOpen(check, level));
    settled = settled.map((share, index) => (open[index] ? share : share + 1 / tried));
    const failed = checks.some((check) => check !== null && hasFailed(check, level));
    if (failed || (!open.includes(true) && !blocked)) verdict += 1 / tried;
    yield;
  }
  const unmoved = assess(0);
  return { halfWidths: margins.map((margin) => halfWidthIn(unmoved, margin)), settled, verdict };
}

/**
 * Half the 95 % interval of a margin's figure with one reading as `after` leaves it, its mean unmoved:
 * one whole static assessment, so that the figure said beforehand is the one seen afterwards. mm; null
 * where it cannot be assessed, or is no interval of the assessment.
 */
export function halfWidthAfter(
  fitment: Fitment,
  margin: Margin,
  reading: DrawnReading,
  after: AfterReading,
): number | null {
  if (margin.interval === null) return null;
  const changed = withReading(fitment, reading.id, readingAfter(reading, after, 0));
  const assessed = assessStatic(changed);
  const halfWidth = assessed.ok ? halfWidthIn(assessed.value, margin) : 0;
  return halfWidth > 0 ? halfWidth : null;
}

/** Means of equally likely parts of the shift's distribution, least first. */
function likelyShifts(id: QuantityId, { shift }: AfterReading): readonly number[] {
  const draws = new Float64Array(shiftSamples);
  shift.halfWidths.forEach((halfWidth, place) => {
    RandomSource.stream(seed, `${id} shift ${place}`).addRectangular(draws, halfWidth);
  });
  if (shift.standardDeviation > 0) {
    RandomSource.stream(seed, `${id} shift scatter`).addNormal(draws, shift.standardDeviation);
  }
  draws.sort();
  const each = shiftSamples / tried;
  return Array.from({ length: tried }, (_, part) =>
    mean(draws.subarray(part * each, (part + 1) * each)),
  );
}

function checkIn(assessment: Assessment | null, { question }: Margin): Check | null {
  const corner = assessment?.corners.find(({ side }) => side === question.side);
  return corner?.checks.find(({ id }) => id === question.check.id) ?? null;
}

function isOpen({ state, probability }: Check, level: RemeasureLevel): boolean {
  if (state === "unsure") return true;
  return level === "care" && state === "care" && isBetween(probability ?? 0);
}

function hasFailed(check: Check, level: RemeasureLevel): boolean {
  return (
    check.state === "no" || (level === "care" && check.state === "care" && !isOpen(check, level))
  );
}

function halfWidthIn(assessment: Assessment | null, { question, about }: Margin): number {
  const corner = assessment?.corners.find(({ side }) => side === question.side);
  const interval =
    about === "reserve" ? corner?.intervals.reserveMm : corner?.intervals.wheelTravelToContactMm;
  return interval ? (interval[1] - interval[0]) / 2 : 0;
}
