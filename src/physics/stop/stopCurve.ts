import * as messages from "../../words/compiled/physics/stop.ts";
import type { Stop } from "../fitment.ts";
import { fail, type Outcome, succeed } from "../outcome.ts";
import { length } from "../sentence.ts";
import { meanOf } from "../uncertainty/readingMean.ts";
import { pchipSlopes } from "./pchip.ts";

/**
 * A stop's static force over its compression. x: compression in mm, positive as
 * the stop is pressed; at x ≤ 0 the stop is free and gives nothing. Finite for every finite x.
 */
export interface StopCurve {
  /** Force, N, ≥ 0; never falls as x grows. */
  force(x: number): number;
  /** Rate dF/dx, N/mm, ≥ 0; at x = 0 the rate at first touch. */
  slope(x: number): number;
  /** Energy stored, N·mm (mJ): the exact integral of the force from 0 to x. */
  energy(x: number): number;
  /** Usable compression δu, mm: past it a further 10 × the end slope stands for the full stop. */
  readonly usableCompressionMm: number;
  /** The same curve with every force multiplied; factor finite and above 0. */
  scaled(factor: number): StopCurve;
}

/** What a stop without loss gives back of its curve at the greatest compression. */
export const staticFormulas = {
  force: messages.checkFStaticAt,
  energy: messages.checkAreaUnderStatic,
} as const;

/** How much steeper than its end slope a stop becomes past its usable compression. Common practice. */
const fullStopSteepening = 10;

/**
 * The stop's static curve: PCHIP through (0, 0) and the points, straight on at the end slope past the
 * last point, and 10 × the end slope more past the usable compression δu. The end slope is that of the
 * PCHIP or of the last segment, whichever is greater, and at least F(δu)/δu: a test that ends flat,
 * because its machine was at its limit, would else let the stop bottom without a force.
 *
 * Errors, each a named outcome: `curveEmpty`, `curveNotFinite`, `curveNotRising` (the points must rise
 * in both columns from (0, 0)), `usableNotPositive`, `usableAboveFreeHeight`.
 */
export function stopCurve(stop: Stop): Outcome<StopCurve> {
  const usable = stop.usableCompressionMm;
  if (!(Number.isFinite(usable) && usable > 0)) {
    return fail("usableNotPositive", [messages.usableCompressionOfStop]);
  }
  const freeHeight = meanOf(stop.freeHeight);
  if (!(usable < freeHeight)) {
    return fail(
      "usableAboveFreeHeight",
      [messages.stopCannotBePressed({ usable: length(usable) })],
      "stop.freeHeight",
    );
  }
  const first = stop.curve[0];
  const points =
    first !== undefined && first[0] === 0 && first[1] === 0 ? stop.curve.slice(1) : stop.curve;
  if (points.length === 0) {
    return fail("curveEmpty", [messages.stopHasNoForce]);
  }
  const depths = [0];
  const forces = [0];
  for (const [depth, force] of points) {
    if (!(Number.isFinite(depth) && Number.isFinite(force))) {
      return fail("curveNotFinite", [messages.pointOfStopsForce]);
    }
    if (depth <= depths[depths.length - 1] || force <= forces[forces.length - 1]) {
      return fail("curveNotRising", [messages.stopsForceCurveMust({ depth: length(depth) })]);
    }
    depths.push(depth);
    forces.push(force);
  }
  return succeed(
    new PiecewiseCubicCurve(Float64Array.from(depths), cubics(depths, forces, usable), usable, 1),
  );
}

/** Per piece: force, slope, and the quadratic and cubic coefficient at its start; energy up to it. */
const stride = 5;

/** Cubic pieces between the knots, then the straight piece past the last knot. */
function cubics(
  depths: readonly number[],
  forces: readonly number[],
  usable: number,
): Float64Array {
  const slopes = pchipSlopes(depths, forces);
  const pieces = new Float64Array(stride * depths.length);
  let energy = 0;
  for (let knot = 0; knot < depths.length; knot++) {
    const force = forces[knot];
    const slope = slopes[knot];
    const nextDepth = depths[knot + 1];
    let quadratic = 0;
    let cubic = 0;
    const at = stride * knot;
    pieces[at + 4] = energy;
    if (nextDepth !== undefined) {
      const width = nextDepth - depths[knot];
      const secant = (forces[knot + 1] - force) / width;
      const nextSlope = slopes[knot + 1];
      quadratic = (3 * secant - 2 * slope - nextSlope) / width;
      cubic = (slope + nextSlope - 2 * secant) / (width * width);
      energy +=
        width * (force + width * (slope / 2 + width * (quadratic / 3 + (width * cubic) / 4)));
    }
    pieces[at] = force;
    pieces[at + 1] = slope;
    pieces[at + 2] = quadratic;
    pieces[at + 3] = cubic;
  }
  const end = depths.length - 1;
  pieces[stride * end + 1] = endSlope(depths, forces, pieces, usable);
  return pieces;
}

/** Slope past the last knot. With δu past it as well, F(δu)/δu at that slope is the last point's secant. */
function endSlope(
  depths: readonly number[],
  forces: readonly number[],
  pieces: Float64Array,
  usable: number,
): number {
  const end = depths.length - 1;
  const [depth = 0, lastDepth = 0] = [depths[end - 1], depths[end]];
  const [force = 0, lastForce = 0] = [forces[end - 1], forces[end]];
  const lastSecant = (lastForce - force) / (lastDepth - depth);
  const wholeSecant =
    usable < lastDepth
      ? forceWithin(Float64Array.from(depths), pieces, usable) / usable
      : lastForce / lastDepth;
  return Math.max(pieces[stride * end + 1], lastSecant, wholeSecant);
}

/** Force of a piece at an x ≥ 0 that it holds. */
function cubicOf(knots: Float64Array, pieces: Float64Array, piece: number, x: number): number {
  const into = x - knots[piece];
  const at = stride * piece;
  return pieces[at] + into * (pieces[at + 1] + into * (pieces[at + 2] + into * pieces[at + 3]));
}

function forceWithin(knots: Float64Array, pieces: Float64Array, x: number): number {
  return cubicOf(knots, pieces, pieceAt(knots, x), x);
}

/** The piece that holds x ≥ 0: the last knot at or below it, by bisection. */
function pieceAt(knots: Float64Array, x: number): number {
  let low = 0;
  let high = knots.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (knots[middle] <= x) low = middle;
    else high = middle - 1;
  }
  return low;
}

class PiecewiseCubicCurve implements StopCurve {
  readonly usableCompressionMm: number;
  readonly #knots: Float64Array;
  readonly #pieces: Float64Array;
  readonly #factor: number;
  readonly #fullStopRate: number;
  #lastPiece = 0;

  constructor(knots: Float64Array, pieces: Float64Array, usable: number, factor: number) {
    this.#knots = knots;
    this.#pieces = pieces;
    this.#factor = factor;
    this.usableCompressionMm = usable;
    this.#fullStopRate = fullStopSteepening * pieces[stride * (knots.length - 1) + 1];
  }

  force(x: number): number {
    if (!(x > 0)) return 0;
    const past = Math.max(0, x - this.usableCompressionMm);
    const piece = this.#pieceAt(x);
    const cubic = cubicOf(this.#knots, this.#pieces, piece, x);
    return this.#factor * (cubic + this.#fullStopRate * past);
  }

  slope(x: number): number {
    if (!(x >= 0)) return 0;
    const piece = this.#pieceAt(x);
    const into = x - this.#knots[piece];
    const at = stride * piece;
    const c = this.#pieces;
    const cubic = c[at + 1] + into * (2 * c[at + 2] + 3 * into * c[at + 3]);
    const past = x > this.usableCompressionMm ? this.#fullStopRate : 0;
    return this.#factor * (Math.max(0, cubic) + past);
  }

  energy(x: number): number {
    if (!(x > 0)) return 0;
    const piece = this.#pieceAt(x);
    const into = x - this.#knots[piece];
    const at = stride * piece;
    const c = this.#pieces;
    const past = Math.max(0, x - this.usableCompressionMm);
    const quartic =
      into * (c[at] + into * (c[at + 1] / 2 + into * (c[at + 2] / 3 + (into * c[at + 3]) / 4)));
    return this.#factor * (c[at + 4] + quartic + (this.#fullStopRate * past * past) / 2);
  }

  /** The piece asked for last is likely to be asked for again. */
  #pieceAt(x: number): number {
    const knots = this.#knots;
    const last = this.#lastPiece;
    const from = knots[last];
    if (x >= from && (last + 1 === knots.length || x < knots[last + 1])) return last;
    this.#lastPiece = pieceAt(knots, x);
    return this.#lastPiece;
  }

  scaled(factor: number): StopCurve {
    return new PiecewiseCubicCurve(
      this.#knots,
      this.#pieces,
      this.usableCompressionMm,
      this.#factor * factor,
    );
  }
}
