import type { StopCurve } from "../stop/stopCurve.ts";
import { restLossSpeed } from "../stop/stopForce.ts";
import type { RestLoss } from "./benchTest.ts";
import { type Sums, totalOf } from "./depthSums.ts";
import { nonNegativeLeastSquares } from "./nonNegativeLeastSquares.ts";

/** Force of a rest loss of share 1: F∞·σ(v). */
export function restForceAt(curve: StopCurve, depth: number, speed: number): number {
  return curve.force(depth) * Math.max(-1, Math.min(1, speed / restLossSpeed));
}

/** h and its standard error, with c ≥ 0 of every depth beside it; null where the rows do without. */
export function restLossOf(
  sumsAt: (direction: 0 | 1, level: number) => readonly Sums[],
  levels: number,
): RestLoss | null {
  const lines: Sums[] = [];
  for (const direction of [0, 1] as const) {
    for (let level = 0; level < levels; level++) {
      const tested = sumsAt(direction, level).filter(({ rows }) => rows > 0);
      if (tested.length >= 2) lines.push(totalOf(tested));
    }
  }
  const n = lines.length + 1;
  const gram = new Float64Array(n * n);
  const right = new Float64Array(n);
  const total = totalOf(lines);
  gram[0] = total.restSquares;
  right[0] = total.restForce;
  for (const [index, line] of lines.entries()) {
    const at = index + 1;
    gram[at * n + at] = line.speedSquares;
    gram[at] = line.restSpeed;
    gram[at * n] = line.restSpeed;
    right[at] = line.products;
  }
  const fitted = nonNegativeLeastSquares(gram, right);
  const value = fitted[0];
  if (!(value > 0)) return null;
  const without = new Uint8Array(n).fill(1);
  without[0] = 0;
  const misfit = (x: Float64Array) =>
    Math.max(0, total.forceSquares - x.reduce((sum, each, at) => sum + each * right[at], 0));
  const left = misfit(fitted);
  const leftWithout = misfit(nonNegativeLeastSquares(gram, right, without));
  const count = total.rows;
  const needed =
    leftWithout > 1e-12 * total.forceSquares &&
    count * Math.log(leftWithout / Math.max(left, 1e-9 * leftWithout)) > Math.log(count);
  if (!needed) return null;
  const own = lines.reduce(
    (sum, { restSquares, restSpeed, speedSquares }) =>
      sum + restSquares - (restSpeed * restSpeed) / speedSquares,
    0,
  );
  return { value, standardError: Math.sqrt(left / Math.max(1, count - n) / Math.max(own, 1e-9)) };
}
