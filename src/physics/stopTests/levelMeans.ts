import { depthLevels } from "./depthLevels.ts";

/** Mean depth and force of the rows of one level, with the doubt of the force there. */
export interface LevelMean {
  readonly depthMm: number;
  readonly forceN: number;
  /** N: scatter about the level's own straight line, over √rows; 0 where too few rows tell. */
  readonly standardErrorN: number;
  readonly rows: number;
}

/** The levels of the rows by rising depth. mm, N; finite, of one length, at least one row. */
export function levelMeans(depthMm: Float64Array, forceN: Float64Array): readonly LevelMean[] {
  const levels = depthLevels(depthMm);
  const sums = Array.from({ length: levels.count }, () => new LineSums());
  for (let row = 0; row < depthMm.length; row++) {
    const depth = depthMm[row];
    sums[levels.levelOf(depth)].add(depth, forceN[row]);
  }
  return sums.filter(({ rows }) => rows > 0).map((sum) => sum.mean());
}

/** Running sums of a straight line through the rows of one level (Welford's updates). */
class LineSums {
  rows = 0;
  #depth = 0;
  #force = 0;
  #depthSquares = 0;
  #forceSquares = 0;
  #products = 0;

  add(depth: number, force: number): void {
    this.rows++;
    const fromDepth = depth - this.#depth;
    const fromForce = force - this.#force;
    this.#depth += fromDepth / this.rows;
    this.#force += fromForce / this.rows;
    this.#depthSquares += fromDepth * (depth - this.#depth);
    this.#forceSquares += fromForce * (force - this.#force);
    this.#products += fromDepth * (force - this.#force);
  }

  mean(): LevelMean {
    const explained = this.#depthSquares > 0 ? this.#products ** 2 / this.#depthSquares : 0;
    const free = this.rows - (this.#depthSquares > 0 ? 2 : 1);
    const scatter = free > 0 ? Math.max(0, this.#forceSquares - explained) / free : 0;
    return {
      depthMm: this.#depth,
      forceN: this.#force,
      standardErrorN: Math.sqrt(scatter / this.rows),
      rows: this.rows,
    };
  }
}
