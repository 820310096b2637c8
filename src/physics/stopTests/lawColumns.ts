import type { StopCurve } from "../stop/stopCurve.ts";
import { restLossSpeed } from "../stop/stopForce.ts";

/** Times after which the branches of a fit have lost all but 1/e of their force, s: a decade each. */
export const branchTimesS = [0.001, 0.003, 0.01, 0.03, 0.1, 0.3, 1, 3, 10] as const;

/**
 * The columns of a fit of the stop's force law, by row of a test in the order of time. Force = e·F∞ +
 * h·F∞·σ(v) + Σ c_k·hat_k(x)·v + Σ g_i·r_i, linear in the parts wanted:
 * column 0 F∞, 1 F∞·σ, then the dashpot's knots compressing and rebounding, then the branches' answers
 * to unit share. ṙ = F∞′·ẋ − r/τ, exact for an F∞ that runs straight from row to row.
 */
export interface LawColumns {
  readonly count: number;
  /** Depths of the dashpot's knots, mm, rising. */
  readonly knotsMm: readonly number[];
  readonly rest: 1;
  readonly dashpot: number;
  readonly branches: number;
  /** Column by column, each as long as the rows. */
  readonly values: readonly Float64Array[];
  /** F∞′ at each row, N/mm. */
  readonly slope: Float64Array;
}

interface Moved {
  readonly timeS: Float64Array;
  readonly depthMm: Float64Array;
  readonly speedMmPerS: Float64Array;
}

/** `withTime` false: rows in no order of time, which say nothing of branches. */
export function lawColumns(
  rows: Moved,
  curve: StopCurve,
  knotsMm: readonly number[],
  withTime: boolean,
): LawColumns {
  const length = rows.depthMm.length;
  const dashpot = 2;
  const branches = dashpot + 2 * knotsMm.length;
  const count = branches + (withTime ? branchTimesS.length : 0);
  const values = Array.from({ length: count }, () => new Float64Array(length));
  const slope = new Float64Array(length);
  const [still, rest] = values as [Float64Array, Float64Array];
  let knot = 0;
  for (let row = 0; row < length; row++) {
    const x = rows.depthMm[row];
    const v = rows.speedMmPerS[row];
    const force = curve.force(x);
    still[row] = force;
    rest[row] = force * Math.max(-1, Math.min(1, v / restLossSpeed));
    slope[row] = x > 0 ? curve.slope(x) : 0;
    if (!(x > 0)) continue;
    const first = dashpot + (v > 0 ? 0 : knotsMm.length);
    while (knot > 0 && knotsMm[knot] > x) knot--;
    while (knot < knotsMm.length - 2 && knotsMm[knot + 1] <= x) knot++;
    const low = knotsMm[knot];
    const high = knotsMm[knot + 1] ?? low;
    const share = high > low ? Math.max(0, Math.min(1, (x - low) / (high - low))) : 0;
    values[first + knot][row] = (1 - share) * v;
    if (share > 0) values[first + knot + 1][row] = share * v;
  }
  if (withTime) {
    for (const [index, tau] of branchTimesS.entries()) {
      branchAnswer(rows.timeS, still, tau, values[branches + index]);
    }
  }
  return { count, knotsMm, rest: 1, dashpot, branches, values, slope };
}

function branchAnswer(
  timeS: Float64Array,
  force: Float64Array,
  tau: number,
  into: Float64Array,
): void {
  let held = 0;
  for (let row = 1; row < force.length; row++) {
    const steps = (timeS[row] - timeS[row - 1]) / tau;
    const decay = Math.exp(-steps);
    const rise = force[row] - force[row - 1];
    held = held * decay + rise * (steps > 1e-9 ? (1 - decay) / steps : 1);
    into[row] = held;
  }
}

/** The dashpot's columns, compressing and then rebounding. */
export function dashpotColumns({
  dashpot,
  branches,
}: Pick<LawColumns, "dashpot" | "branches">): readonly number[] {
  return Array.from({ length: branches - dashpot }, (_, index) => dashpot + index);
}

/** What a law leaves of the force of each row, N. */
export function residualsOfLaw(
  forceN: Float64Array,
  { values }: Pick<LawColumns, "values">,
  law: Float64Array,
): Float64Array {
  const left = forceN.slice();
  for (const [column, own] of values.entries()) {
    const part = law[column];
    if (part === 0) continue;
    for (let row = 0; row < left.length; row++) left[row] = left[row] - part * own[row];
  }
  return left;
}
