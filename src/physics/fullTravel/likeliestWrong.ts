import { areWithin, minus, slopesBetween } from "./differences.ts";
import { coverage95 } from "./normalisedError.ts";
import { SymmetricSystem } from "./symmetricSystem.ts";

/** One thing that may be wrong: how far the differences move with it. */
export interface Suspect<Id extends string = string> {
  readonly id: Id;
  /** What it would be once changed, in its own unit; null: it has no value of its own. */
  readonly wouldBe: (change: number) => number | null;
  /** How far off such a thing is once it is wrong, own unit. */
  readonly grossError: number;
  /** What the differences become per unit of change, mm. */
  readonly slopes: Float64Array;
  /** The differences that a change would cause, exactly, mm; NaN where it cannot be. */
  readonly caused: (change: number) => Float64Array;
  /** Changes that a known slip would be: inches for millimetres, a sign turned round. */
  readonly slips: readonly { readonly slip: Slip; readonly change: number }[];
}

type Slip = "unit" | "sign";

export interface Explanation<Id extends string = string> {
  readonly id: Id;
  /** What it would have to change by, own unit. */
  readonly change: number;
  readonly wouldBe: number | null;
  readonly slip: Slip | null;
  /** With that change every difference is within its doubt. */
  readonly explains: boolean;
  /** How much of the likelihood it has among all, 0…1. */
  readonly share: number;
}

/** A known slip is so much rarer than a plain mistake of any size. Common practice, no source. */
const slipRarity = 0.1;

/**
 * Which single thing, wrong by how much, explains observed differences best; the likeliest first.
 *
 * With differences d, their covariance Σ under the stated uncertainties alone, and the slopes J of a
 * suspect: the change that fits best is δ = JᵀΣ⁻¹d / JᵀΣ⁻¹J, and the test quantity
 * w² = (JᵀΣ⁻¹d)²/(JᵀΣ⁻¹J) is Baarda's (A testing procedure for use in geodetic networks, 1968, from
 * memory). With few contacts many suspects share the greatest w, so they are weighed by how likely such
 * an error is: a gross error with standard deviation G gives the evidence
 * (1 + G²q)^−½ · exp(½·w²·G²q/(1 + G²q)), q = JᵀΣ⁻¹J (the variance-inflation model of Box & Tiao,
 * Biometrika 55 (1968) 119, from memory). A slip has no free change: its evidence is
 * 0.1·exp(½(dᵀΣ⁻¹d − rᵀΣ⁻¹r)), r what is left. The change is then refined with the exact model.
 *
 * Valid: at least one difference; linear near the readings, which the refinement checks.
 *
 * @param covariance Σ, mm²
 * @param doubts √Σ_jj of each difference, mm
 */
export function likeliestWrong<Id extends string>(
  differences: Float64Array,
  covariance: readonly Float64Array[],
  doubts: Float64Array,
  suspects: readonly Suspect<Id>[],
): readonly Explanation<Id>[] {
  const system = new SymmetricSystem(covariance);
  const left = (caused: Float64Array): Float64Array => minus(differences, caused);
  const squares = (rest: Float64Array): number => system.product(rest, rest);
  const within = (rest: Float64Array): boolean => areWithin(rest, doubts, coverage95);
  const before = squares(differences);

  const weighed = suspects.flatMap((suspect) => {
    const { slopes, grossError, caused } = suspect;
    const q = system.product(slopes, slopes);
    if (!(q > 0)) return [];
    const fit = system.product(slopes, differences) / q;
    const gain = grossError ** 2 * q;
    const free = {
      change: refined(suspect, fit, differences, system),
      slip: null,
      evidence: (fit ** 2 * q * gain) / (1 + gain) / 2 - Math.log1p(gain) / 2,
    };
    const slips = suspect.slips.flatMap(({ slip, change }) => {
      const rest = left(caused(change));
      const after = squares(rest);
      if (!(after < before) || !within(rest)) return [];
      return [{ change, slip, evidence: Math.log(slipRarity) + (before - after) / 2 }];
    });
    const best = slips.reduce<(typeof slips)[number] | typeof free>(
      (so, next) => (next.evidence >= so.evidence ? next : so),
      free,
    );
    // A slip that fits is told even where a free change fits as well.
    const [fitting] = slips;
    return [{ suspect, ...best, slip: fitting === undefined ? null : fitting.slip }];
  });
  const greatest = Math.max(...weighed.map(({ evidence }) => evidence));
  const total = weighed.reduce((sum, { evidence }) => sum + Math.exp(evidence - greatest), 0);
  return weighed
    .map(({ suspect, change, slip, evidence }) => ({
      id: suspect.id,
      change,
      wouldBe: suspect.wouldBe(change),
      slip,
      explains: within(left(suspect.caused(change))),
      share: Math.exp(evidence - greatest) / total,
    }))
    .sort((a, b) => b.share - a.share);
}

/** The best change by the exact model: Gauss–Newton from the linear one, as far as it can be followed. */
function refined(
  { caused }: Suspect<string>,
  start: number,
  differences: Float64Array,
  system: SymmetricSystem,
): number {
  let change = start;
  let sound = start;
  for (let pass = 0; pass < 8; pass++) {
    const now = caused(change);
    const step = Math.max(1e-4, 1e-4 * Math.abs(change));
    const ahead = caused(change + step);
    const slopes = slopesBetween(now, ahead, step);
    const rest = minus(differences, now);
    const move = system.product(slopes, rest) / system.product(slopes, slopes);
    if (!Number.isFinite(move)) break;
    sound = change;
    if (Math.abs(move) < 1e-6 * Math.max(1, Math.abs(change))) break;
    change += move;
  }
  return sound;
}
