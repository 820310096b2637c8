import type { StopAtSpeed } from "./stopAtSpeed.ts";
import type { StopCurve } from "./stopCurve.ts";

/**
 * Speed of compression, mm/s, at which the rest loss has its full size. It falls to nothing on both
 * sides of rest, so that a stop at rest pushes with its static force alone. Common practice.
 */
export const restLossSpeed = 5;

/**
 * The whole force of a stop, N, at a compression x > 0, mm, that changes at ẋ, mm/s:
 *
 * F = max(0, F∞(x)·(e + h·σ(ẋ)) + Σqᵢ + c(x, sign ẋ)·ẋ), σ(ẋ) = ẋ/(5 mm/s) held within ±1.
 *
 * F∞ is the static curve, e its share at rest, h the rest loss, c the dashpot. A branch (generalised
 * Maxwell element on the static curve) holds q̇ᵢ = gᵢ·F∞′(x)·ẋ − qᵢ/τᵢ in contact and fades, q̇ᵢ = −qᵢ/τᵢ,
 * while apart. Its state here is the force that it has forgotten, yᵢ = gᵢ·F∞(x) − qᵢ, N, for which
 * ẏᵢ = qᵢ/τᵢ: the same law without the slope of the curve. With F∞(xᵢ) = yᵢ/gᵢ it loses
 * (x − xᵢ)·qᵢ/τᵢ ≥ 0, so a branch never gives back more than it took.
 *
 * Source: standard linear solid and its generalisation as in rheology texts (Maxwell branches beside a
 * spring); that they follow the static curve is common practice. A stop pushes and never pulls.
 */
export class StopForce {
  readonly branchCount: number;
  readonly #curve: StopCurve;
  readonly #dashpot: StopAtSpeed["dashpot"];
  readonly #restLoss: number;
  readonly #staticShare: number;
  readonly #firstRate: number;
  readonly #shares: Float64Array;
  /** 1/τ, 1/s. */
  readonly #rates: Float64Array;
  /** e + Σgᵢ */
  readonly #atOnce: number;

  constructor(curve: StopCurve, parts: StopAtSpeed) {
    this.#curve = curve;
    this.#dashpot = parts.dashpot;
    this.#restLoss = parts.restLoss;
    this.#staticShare = parts.staticShare;
    this.#firstRate = curve.slope(0);
    const count = parts.branches.length;
    this.branchCount = count;
    this.#shares = new Float64Array(count);
    this.#rates = new Float64Array(count);
    let atOnce = parts.staticShare;
    for (const [branch, { tauS, share }] of parts.branches.entries()) {
      this.#shares[branch] = share;
      this.#rates[branch] = 1 / tauS;
      atOnce += share;
    }
    this.#atOnce = atOnce;
  }

  /** F∞(x), N; straight on below x = 0, where no stop pushes, for steps that end a hair past it. */
  curveForce(x: number): number {
    return x >= 0 ? this.#curve.force(x) : this.#firstRate * x;
  }

  /** e·F∞(x): what remains at rest, N; 0 at x ≤ 0. */
  atRest(x: number): number {
    return this.#staticShare * this.#curve.force(x);
  }

  /** Energy held by what remains at rest, N·mm. */
  energyAtRest(x: number): number {
    return this.#staticShare * this.#curve.energy(x);
  }

  /** σ(ẋ). */
  restLossShare(speed: number): number {
    return Math.min(1, Math.max(-1, speed / restLossSpeed));
  }

  /**
   * The force before it is held at 0 or above, N.
   * @param curveForce F∞(x); @param speed ẋ, mm/s; @param sign which of the dashpot's columns holds: > 0
   * compressing; @param lossShare σ; @param states the branches' yᵢ from `from` on
   */
  whole(
    x: number,
    curveForce: number,
    speed: number,
    sign: number,
    lossShare: number,
    states: Float64Array,
    from: number,
  ): number {
    const dashpot = this.#dashpot;
    const end = from + this.branchCount;
    let force = curveForce * (this.#atOnce + this.#restLoss * lossShare);
    for (let state = from; state < end; state++) force -= states[state];
    return dashpot === null ? force : force + dashpot.coefficient(x, sign) * speed;
  }

  /** Puts ẏᵢ, N/s, of the branches, whose states begin at `from`, into `rates` from `to` on. */
  relaxation(
    curveForce: number,
    states: Float64Array,
    from: number,
    rates: Float64Array,
    to: number,
  ): void {
    const shares = this.#shares;
    const own = this.#rates;
    for (let branch = 0; branch < shares.length; branch++) {
      rates[to + branch] = (shares[branch] * curveForce - states[from + branch]) * own[branch];
    }
  }

  /** Puts the branches of a stop that has long been held at a force of its curve into `states`. */
  relaxed(curveForce: number, states: Float64Array, from: number): void {
    for (let branch = 0; branch < this.branchCount; branch++) {
      states[from + branch] = this.#shares[branch] * curveForce;
    }
  }

  /** Lets the branches of a free stop fade for `seconds`, 0 or more. */
  fade(seconds: number, states: Float64Array, from: number): void {
    for (let branch = 0; branch < this.branchCount; branch++) {
      const share = Math.exp(-seconds * this.#rates[branch]);
      states[from + branch] = states[from + branch] * share;
    }
  }
}
