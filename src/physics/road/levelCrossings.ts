import * as messages from "../../words/compiled/physics/road.ts";
import type { RoadKurtosis } from "../fitment.ts";

/**
 * How often a random motion passes a level, as a share E(z/σ) of how often it passes its mean. Lengths
 * mm, rates per second, speed m/s.
 *
 * Kurtosis 3, a stationary Gaussian motion: E = exp(−z²/2σ²). Source: Rice, Bell Syst. Tech. J. 23/24
 * (1944/45).
 *
 * Kurtosis 5: the greater of that and (1 + u)·exp(−u), u = √3·z/σ. Roads are rough and smooth by turns
 * (Rouillard 2008, 2009), which makes a Gaussian motion whose variance v itself varies along the road.
 * ν0 does not hang on v, so E is the mean of exp(−z²/2v); with v gamma distributed (Johannesson,
 * Podgórski, Rychlik 2017) of mean σ² and shape 3/2, which makes the kurtosis 3·(1 + 2/3) = 5, that mean
 * is (1 + u)·exp(−u). Below 2σ the even road's share is the greater. The 5 is common practice.
 */

const root3 = Math.sqrt(3);
const mostRounds = 30;
/** Newton's rounds end where u changes by no more than this share. */
const settled = 1e-15;

export const crossingFormulas = {
  unevenness: "u = √3·z/σ",
  even: messages.contactsKm01000,
  uneven: messages.contactsKm01000V,
  share: "E = V·N/(ν0·1000)",
  level: { text: messages.uWith1U, by: messages.uOfE },
  zeroUpcrossings: messages.n0KtM2,
} as const;

/** u of a level of `sigmas` σ above the mean. */
export function unevenness(sigmas: number): number {
  return root3 * sigmas;
}

/** E at a level of `sigmas` σ above the mean; 1 at or below it. */
export function crossingShare(sigmas: number, kurtosis: RoadKurtosis): number {
  const z = Math.max(sigmas, 0);
  const even = Math.exp((-z * z) / 2);
  if (kurtosis === 3) return even;
  const u = unevenness(z);
  return Math.max(even, (1 + u) * Math.exp(-u));
}

/** The level, in σ above the mean, at which E has this share; 0 for a share of 1 or more. */
export function levelOfShare(share: number, kurtosis: RoadKurtosis): number {
  const fall = -Math.log(share);
  if (!(fall > 0)) return 0;
  const even = Math.sqrt(2 * fall);
  return kurtosis === 3 ? even : Math.max(even, unevenLevel(fall) / root3);
}

/**
 * u of (1 + u)·exp(−u) = exp(−fall), fall > 0: u = −1 − W₋₁(−exp(−1 − fall)). Newton's method on
 * fall + ln(1 + u) − u, concave, from √(2·fall) + fall, which lies above the root (bounds of W₋₁:
 * Chatzigeorgiou, IEEE Commun. Lett. 17 (2013) 1505), so that it falls to it.
 */
function unevenLevel(fall: number): number {
  let u = Math.sqrt(2 * fall) + fall;
  for (let round = 0; round < mostRounds; round++) {
    const next = u + ((fall + Math.log1p(u) - u) * (1 + u)) / u;
    if (!(next < u * (1 - settled))) return next > 0 ? Math.min(next, u) : u;
    u = next;
  }
  return u;
}

/**
 * Zero upcrossings per second of suspension travel, ν0 = σ̇/(2πσ) = √(kt/M)/2π.
 *
 * @param tyreRate kt, N/m, at least 0
 * @param totalMass M, kg, above 0
 */
export function zeroUpcrossingsPerSecond(tyreRate: number, totalMass: number): number {
  return Math.sqrt(tyreRate / totalMass) / (2 * Math.PI);
}

/** One motion on one road. */
export interface RandomTravel {
  /** σ, mm, above 0. */
  readonly sigma: number;
  /** ν0, per second. */
  readonly zeroUpcrossings: number;
  /** V, m/s, above 0. */
  readonly speed: number;
  readonly kurtosis: RoadKurtosis;
}

/** Upcrossings of the mean per km travelled, ν0·1000/V. */
function meanPassedPerKm({ zeroUpcrossings, speed }: RandomTravel): number {
  return (zeroUpcrossings * 1000) / speed;
}

/** Upcrossings per km travelled of a level, mm above the mean; below it the rate of the mean. */
export function upcrossingsPerKm(level: number, travel: RandomTravel): number {
  return meanPassedPerKm(travel) * crossingShare(level / travel.sigma, travel.kurtosis);
}

/** N, above 0, but half as often as the mean at most: a limit met as often as that could not be missed. */
export function allowedPasses(allowedPerKm: number, travel: RandomTravel): number {
  return Math.min(allowedPerKm, meanPassedPerKm(travel) / 2);
}

/** E of so many passes per km. */
export function passedShare(passesPerKm: number, travel: RandomTravel): number {
  return passesPerKm / meanPassedPerKm(travel);
}

/**
 * The level, mm above the mean, passed `allowedPerKm` (above 0) times per km, but half as often as the
 * mean at most: a limit met as often as that could not be missed.
 */
export function levelPassedPerKm(allowedPerKm: number, travel: RandomTravel): number {
  const share = passedShare(allowedPasses(allowedPerKm, travel), travel);
  return travel.sigma * levelOfShare(share, travel.kurtosis);
}
