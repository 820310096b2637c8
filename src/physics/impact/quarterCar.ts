import { standardGravity } from "../standardGravity.ts";
import { losesEnergy } from "../stop/stopAtSpeed.ts";
import { restLossSpeed, StopForce } from "../stop/stopForce.ts";
import type { DormandPrince, OdeSystem } from "./dormandPrince.ts";
import type { ImpactSetup } from "./impactSetup.ts";
import type { RoadProfile } from "./roadProfile.ts";

/** Rate of metal on metal past the hard limit, at the wheel, N/mm. See MODEL.md, Impact. */
const hardContactRate = 2000;

/** Columns of a row: the derivatives of the state, then the powers, then the stop's force. */
export interface RowColumns {
  readonly sprungAcceleration: number;
  /** Into the stop beyond what remains at rest: what its force is more, or less, than that. */
  readonly stopLossPower: number;
  readonly roadPower: number;
  readonly damperPower: number;
  readonly stopForce: number;
}

/** Heights and speeds of the two masses; the states of the stop's branches follow them. */
const massStates = 4;

/** Each switch turns a smooth law into another; it is on where its measure is above 0. */
export const switches = {
  /** Wheel rising toward the body: bump damping. */
  compressing: 0,
  /** Stop in contact. */
  pressing: 1,
  /** Past the usable compression. */
  fullStop: 2,
  /** Past the hard limit. */
  hardContact: 3,
  /** Tyre on the ground. */
  grounded: 4,
  /** Stop still pushing: not slower to rebound than it is pulled away from. */
  pushing: 5,
  /** Stop closing, or opening, fast enough for its whole rest loss. */
  closingFast: 6,
  openingFast: 7,
} as const;

export const switchCount = 8;

/** What tells of a step: its start, its size, the states at both ends and the rows of its stages. */
type StepTried = Pick<DormandPrince, "time" | "size" | "state" | "next" | "rows">;

const { compressing, pressing, fullStop, hardContact, grounded, pushing } = switches;
const { closingFast, openingFast } = switches;

/** A stop just met that would pull by no more than this, N, pushes. */
const noPull = 1e-2;

/** Share of the weight below which a tyre may lift and land again within one step. */
const hardlyHolding = 0.25;

/** By how much a switch's measure may stand on the wrong side: m/s, mm, mm, mm, N, N, mm/s, mm/s. */
const slack = Float64Array.of(1e-8, 1e-6, 1e-6, 1e-6, 1e-4, 1e-4, 1e-5, 1e-5);

/**
 * Two masses over one wheel, with the stop through its real kinematics. State: heights of sprung and
 * unsprung mass above rest, m, their speeds, m/s, up positive, then the states of the stop's branches.
 * Forces N. Source: the quarter car of the vehicle dynamics texts; the stop's force acts at the wheel by
 * virtual work, F·ds/dz.
 *
 * Within a step every law is the smooth one that the switches name, also a little past its end; the
 * caller finds where a switch's measure changes sign, ends a step there and turns the switch.
 */
export class QuarterCar implements OdeSystem {
  readonly stateCount: number;
  readonly rowLength: number;
  readonly column: RowColumns;
  readonly on = new Uint8Array(switchCount);
  /** Measures of the switches at the place measured last. */
  readonly measures = new Float64Array(switchCount);
  /** True while the wheel is on the bump. */
  onBump: boolean;
  /** Weight at this corner, N. */
  readonly weight: number;
  /** True where the stop loses energy: its force is then not told by its compression alone. */
  readonly isLossy: boolean;

  readonly #setup: ImpactSetup;
  readonly #profile: RoadProfile;
  readonly #closing = new Float64Array(3);
  /** Wheel travels, from rest, mm, at which stop, full stop and hard limit are met; ±∞ where never or always. */
  readonly #contactTravel: number;
  readonly #fullStopTravel: number;
  readonly #limitTravel: number;
  readonly #stop: StopForce;
  readonly #hasRestLoss: boolean;
  /** Time at which the stop was left last, s. */
  #leftAt = 0;
  /** Of the stop, at the place looked at last, mm/s. */
  #closingSpeed = 0;
  readonly #restForce: number;
  /** N/mm */
  readonly #springRate: number;
  /** N/m */
  readonly #tyreRate: number;
  /** N·s/m */
  readonly #bump: number;
  readonly #rebound: number;

  constructor(setup: ImpactSetup, profile: RoadProfile) {
    this.#setup = setup;
    this.#profile = profile;
    const { stop, gapMm, restTravelMm } = setup;
    this.#contactTravel = this.#travelFor(gapMm) - restTravelMm;
    this.#fullStopTravel = this.#travelFor(gapMm + stop.usableCompressionMm) - restTravelMm;
    this.#limitTravel = (setup.hardLimitMm ?? Number.POSITIVE_INFINITY) - restTravelMm;
    this.#stop = new StopForce(stop, setup.atSpeed);
    this.isLossy = losesEnergy(setup.atSpeed);
    this.#hasRestLoss = setup.atSpeed.restLoss > 0;
    this.stateCount = massStates + this.#stop.branchCount;
    this.rowLength = this.stateCount + 4;
    this.column = {
      sprungAcceleration: 2,
      stopLossPower: this.stateCount,
      roadPower: this.stateCount + 1,
      damperPower: this.stateCount + 2,
      stopForce: this.stateCount + 3,
    };
    this.weight = (setup.sprungMassKg + setup.unsprungMassKg) * standardGravity;
    this.#springRate = setup.wheelRateNPerMm;
    this.#tyreRate = 1000 * setup.tyreRateNPerMm;
    this.#bump = 1000 * setup.damperBumpNsPerMm;
    this.#rebound = 1000 * setup.damperReboundNsPerMm;
    this.onBump = profile.bump.endS > 0;
    setup.kinematics.evaluate(restTravelMm, this.#closing);
    const closing = this.#closing[0] as number;
    const slope = this.#closing[1] as number;
    this.#restForce = this.#stop.atRest(closing - gapMm) * slope;
  }

  /** Wheel travel that closes the stop by s, mm; ±∞ past either end of the layout's reach. */
  #travelFor(s: number): number {
    const { kinematics } = this.#setup;
    const travel = kinematics.wheelTravel(s);
    if (travel.ok) return travel.value;
    kinematics.evaluate(0, this.#closing);
    return s > (this.#closing[0] as number) ? Number.POSITIVE_INFINITY : Number.NEGATIVE_INFINITY;
  }

  /** Wheel travel from the measured ride height, mm. */
  wheelTravel(y: Float64Array): number {
    return 1000 * ((y[1] as number) - (y[0] as number)) + this.#setup.restTravelMm;
  }

  /** Compression of the stop at a wheel travel, mm; below 0: gap left. */
  compression(wheelTravel: number): number {
    this.#setup.kinematics.evaluate(wheelTravel, this.#closing);
    return (this.#closing[0] as number) - this.#setup.gapMm;
  }

  /** Puts the stop's branches, in `y`, into the state of one that has stood at rest for long. */
  rest(y: Float64Array): void {
    const compression = this.compression(this.#setup.restTravelMm);
    this.#stop.relaxed(Math.max(0, this.#stop.curveForce(compression)), y, massStates);
  }

  /** Sets every switch from where the car stands; at rest the wheel is about to rise. */
  setSwitches(t: number, y: Float64Array): void {
    this.on.fill(0);
    this.on[compressing] = 1;
    this.measure(t, y);
    const { measures, on } = this;
    on[compressing] = (measures[compressing] as number) >= 0 ? 1 : 0;
    for (let s = pressing; s < switchCount; s++) {
      on[s] = (measures[s] as number) > 0 ? 1 : 0;
    }
    on[pushing] = 1;
    if (on[pressing] === 1) this.#setStopSwitches(y);
  }

  /**
   * Turns one switch where the car stands, and what hangs on it: a stop just met has faded since it was
   * left, and may not push at once; one without branches that turns between compression and rebound
   * pushes.
   */
  turn(index: number, t: number, y: Float64Array): void {
    const { on } = this;
    on[index] = on[index] === 1 ? 0 : 1;
    if (index === pressing && on[pressing] === 1) {
      this.#stop.fade(t - this.#leftAt, y, massStates);
      this.#setStopSwitches(y);
    } else if (index === pressing) {
      this.#leftAt = t;
      on[pushing] = 1;
      on[closingFast] = 0;
      on[openingFast] = 0;
    } else if (index === compressing && this.#stop.branchCount === 0) {
      on[pushing] = 1;
    }
  }

  /** Sets the switches of a stop in contact that hang on speed and branches. */
  #setStopSwitches(y: Float64Array): void {
    const { on } = this;
    on[pushing] = 1;
    if (this.#hasRestLoss) {
      this.#setClosingSpeed(y);
      on[closingFast] = this.#closingSpeed > restLossSpeed ? 1 : 0;
      on[openingFast] = this.#closingSpeed < -restLossSpeed ? 1 : 0;
    }
    if (this.#stop.branchCount > 0) on[pushing] = this.#pull(y) >= -noPull ? 1 : 0;
  }

  roadHeight(t: number): number {
    return this.onBump ? this.#profile.bump.height(t) : 0;
  }

  derivative(t: number, y: Float64Array, rows: Float64Array, offset: number): void {
    const { on } = this;
    const setup = this.#setup;
    const sprungSpeed = y[2] as number;
    const unsprungSpeed = y[3] as number;
    const travelSpeed = unsprungSpeed - sprungSpeed;
    const fromRest = 1000 * ((y[1] as number) - (y[0] as number));
    let stopForce = 0;
    let stopAtWheel = 0;
    let lossPower = 0;
    if (on[pressing] === 1) {
      setup.kinematics.evaluate(fromRest + setup.restTravelMm, this.#closing);
      const slope = this.#closing[1] as number;
      const x = (this.#closing[0] as number) - setup.gapMm;
      const curveForce = this.#stop.curveForce(x);
      const remaining = setup.atSpeed.staticShare * curveForce;
      stopForce = remaining;
      if (this.isLossy) {
        const whole = this.#wholeForce(x, curveForce, 1000 * slope * travelSpeed, y);
        stopForce = on[pushing] === 1 ? whole : 0;
        lossPower = (stopForce - remaining) * slope * travelSpeed;
        this.#stop.relaxation(curveForce, y, massStates, rows, offset + massStates);
      }
      stopAtWheel = stopForce * slope;
    } else if (this.stateCount > massStates) {
      rows.fill(0, offset + massStates, offset + this.stateCount);
    }
    const damper = (on[compressing] === 1 ? this.#bump : this.#rebound) * travelSpeed;
    let suspension = this.#springRate * fromRest + damper + stopAtWheel - this.#restForce;
    if (on[hardContact] === 1) {
      suspension += hardContactRate * (fromRest - this.#limitTravel);
    }
    let road = 0;
    let roadSpeed = 0;
    if (this.onBump) {
      road = this.#profile.bump.height(t);
      roadSpeed = this.#profile.bump.speed(t);
    }
    const tyre = on[grounded] === 1 ? this.#tyreRate * (road - (y[1] as number)) : -this.weight;
    rows[offset] = sprungSpeed;
    rows[offset + 1] = unsprungSpeed;
    rows[offset + 2] = suspension / setup.sprungMassKg;
    rows[offset + 3] = (tyre - suspension) / setup.unsprungMassKg;
    const powers = offset + this.stateCount;
    rows[powers] = lossPower;
    rows[powers + 1] = tyre * roadSpeed;
    rows[powers + 2] = damper * travelSpeed;
    rows[powers + 3] = stopForce;
  }

  /** The stop's force by the laws that the switches name, N, not held at 0 or above. */
  #wholeForce(x: number, curveForce: number, closingSpeed: number, y: Float64Array): number {
    const { on } = this;
    const sign = on[compressing] === 1 ? 1 : -1;
    let lossShare = closingSpeed / restLossSpeed;
    if (on[closingFast] === 1) lossShare = 1;
    else if (on[openingFast] === 1) lossShare = -1;
    return this.#stop.whole(x, curveForce, closingSpeed, sign, lossShare, y, massStates);
  }

  /** Energy in the stop that remains at rest, J. */
  stopEnergy(y: Float64Array): number {
    return this.#stop.energyAtRest(this.compression(this.wheelTravel(y))) / 1000;
  }

  /** Fills `measures` for a state. Every place along the travel is told by the wheel's. */
  measure(t: number, y: Float64Array): void {
    const { measures } = this;
    const fromRest = 1000 * ((y[1] as number) - (y[0] as number));
    measures[compressing] = (y[3] as number) - (y[2] as number);
    measures[pressing] = fromRest - this.#contactTravel;
    measures[fullStop] = fromRest - this.#fullStopTravel;
    measures[hardContact] = fromRest - this.#limitTravel;
    measures[grounded] = this.#tyreRate * (this.roadHeight(t) - (y[1] as number)) + this.weight;
    measures[pushing] = this.#mayPull() ? this.#pull(y) : 1;
    const slides = this.#hasRestLoss && this.on[pressing] === 1;
    if (slides && !this.#mayPull()) this.#setClosingSpeed(y);
    measures[closingFast] = slides ? this.#closingSpeed - restLossSpeed : -1;
    measures[openingFast] = slides ? -this.#closingSpeed - restLossSpeed : -1;
  }

  /**
   * True where the stop can be pulled away from faster than it follows: while a damped one rebounds, or
   * whenever one with branches may have been left too soon.
   */
  #mayPull(): boolean {
    return (
      this.isLossy &&
      this.on[pressing] === 1 &&
      (this.on[compressing] === 0 || this.#stop.branchCount > 0)
    );
  }

  /** The stop's force, N: below 0 where it would pull. Sets its closing speed. */
  #pull(y: Float64Array): number {
    const x = this.#setClosingSpeed(y);
    return this.#wholeForce(x, this.#stop.curveForce(x), this.#closingSpeed, y);
  }

  /** Sets the speed at which the stop closes, mm/s; its compression, mm. */
  #setClosingSpeed(y: Float64Array): number {
    const x = this.compression(this.wheelTravel(y));
    this.#closingSpeed =
      1000 * (this.#closing[1] as number) * ((y[3] as number) - (y[2] as number));
    return x;
  }

  /** True where the measure taken last lies on the side that the switch stands for, within its slack. */
  agrees(index: number): boolean {
    const measure = this.measures[index] as number;
    const allowed = slack[index] as number;
    return this.on[index] === 1 ? measure >= -allowed : measure <= allowed;
  }

  /** True where the measure taken last is as good as 0. */
  isTurning(index: number): boolean {
    return Math.abs(this.measures[index] as number) <= (slack[index] as number);
  }

  /**
   * True where a switch that agrees at both ends of a step, measured at its end, may have turned twice
   * within: where the wheel's travel, or a tyre that hardly holds, first nears its turn and then leaves
   * it again. Between turns of the wheel all other places are passed once only; a stop about to be
   * pulled is always looked at.
   */
  mayTurnWithin({ time, size, state, next, rows }: StepTried): boolean {
    const { on, rowLength, measures } = this;
    const end = 6 * rowLength;
    const travelSign = on[compressing] === 1 ? 1 : -1;
    const travelStart = travelSign * ((rows[3] as number) - (rows[2] as number));
    const travelEnd = travelSign * ((rows[end + 3] as number) - (rows[end + 2] as number));
    if (travelStart < 0 && travelEnd > 0) return true;
    if (Math.abs(measures[grounded] as number) < hardlyHolding * this.weight) {
      const tyreSign = on[grounded] === 1 ? 1 : -1;
      const tyreStart = tyreSign * (this.#roadSpeed(time) - (state[3] as number));
      const tyreEnd = tyreSign * (this.#roadSpeed(time + size) - (next[3] as number));
      if (tyreStart < 0 && tyreEnd > 0) return true;
    }
    return this.#mayPullWithin();
  }

  /** True where the stop may push less than nothing within a step at whose ends it pushes, or pushes not. */
  #mayPullWithin(): boolean {
    if (!this.#mayPull()) return false;
    const dashpotRebounds = this.#setup.atSpeed.dashpot !== null && this.on[compressing] === 0;
    return (
      dashpotRebounds || Math.abs(this.measures[pushing] as number) < hardlyHolding * this.weight
    );
  }

  #roadSpeed(t: number): number {
    return this.onBump ? this.#profile.bump.speed(t) : 0;
  }

  /** Kinetic energy and energy held in springs, tyre and hard contact (not in the stop), J. */
  energy(t: number, y: Float64Array): { kinetic: number; potential: number } {
    const setup = this.#setup;
    const kinetic =
      (setup.sprungMassKg * (y[2] as number) ** 2 + setup.unsprungMassKg * (y[3] as number) ** 2) /
      2;
    const fromRest = 1000 * ((y[1] as number) - (y[0] as number));
    const pastLimit = Math.max(0, fromRest - this.#limitTravel);
    const springs =
      (this.#springRate * fromRest ** 2 + hardContactRate * pastLimit ** 2) / 2 -
      this.#restForce * fromRest;
    const tyre = this.roadHeight(t) - (y[1] as number);
    const lift = -this.weight / this.#tyreRate;
    const tyreEnergy =
      tyre >= lift
        ? (this.#tyreRate * tyre ** 2) / 2
        : (this.#tyreRate * lift ** 2) / 2 - this.weight * (tyre - lift);
    return { kinetic, potential: springs / 1000 + tyreEnergy };
  }
}
