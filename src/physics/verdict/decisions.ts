import type { State } from "../fitment.ts";

/** Probability from which something is taken as so. Common practice in conformity assessment. */
export const sureEnough = 0.95;
/** Probability up to which something is taken as not so. */
export const unlikelyEnough = 0.05;

const badness: Readonly<Record<State, number>> = { ok: 0, care: 1, unsure: 2, no: 3 };

/** The worst of several states: no > unsure > care > ok; ok where there is none. */
export function worstState(states: Iterable<State>): State {
  let worst: State = "ok";
  for (const state of states) if (badness[state] > badness[worst]) worst = state;
  return worst;
}

/**
 * Decision by the probability that a tolerance is kept (JCGM 106:2012, clause 8): ok where the wanted
 * one is kept with 0.95, care where the lesser one is, no where even the lesser is kept with 0.05 at
 * most, else unsure.
 *
 * Clearance: wanted reserve ≥ 5 mm, lesser reserve ≥ 0. Early contact: wanted z_c ≥ z_need laden,
 * lesser z_c ≥ z_need unladen.
 */
export function decide(wantedKept: number, lesserKept: number): State {
  return decideBy(known(wantedKept), known(lesserKept));
}

/** A probability of which it may be told how it stands to a number before it is known itself. */
export interface AskedProbability {
  isAtLeast(share: number): boolean;
  isAbove(share: number): boolean;
}

function known(probability: number): AskedProbability {
  return {
    isAtLeast: (share) => probability >= share,
    isAbove: (share) => probability > share,
  };
}

/** `decide` by no more of the probabilities than it takes. */
export function decideBy(wanted: AskedProbability, lesser: AskedProbability): State {
  if (wanted.isAtLeast(sureEnough)) return "ok";
  if (lesser.isAtLeast(sureEnough)) return "care";
  return lesser.isAbove(unlikelyEnough) ? "unsure" : "no";
}

/** Greatest share of the usable compression that a stop made to carry may take under load. */
export const carryShares = { ok: 0.25, care: 0.5 } as const;

/** A stop of duty carry: its loaded compression as a share of δu. Common practice, no source. */
export function decideCarry(loadedShare: number): State {
  if (loadedShare <= carryShares.ok) return "ok";
  return loadedShare <= carryShares.care ? "care" : "no";
}
