import type { Kinematics } from "../kinematics/kinematics.ts";
import { standardGravity } from "../standardGravity.ts";
import { losesEnergy } from "../stop/stopAtSpeed.ts";
import { restLossSpeed, StopForce } from "../stop/stopForce.ts";
import type { DormandPrince, OdeSystem } from "./dormandPrince.ts";
import type { ImpactSetup } from "./impactSetup.ts";
import type { RoadProfile } from "./roadProfile.ts";
import { massStates, type RowColumns, rowColumns } from "./rowColumns.ts";
import { slack, switchCount, switches } from "./switches.ts";

/** Rate of metal on metal past the hard limit, at the wheel, N/mm. See MODEL.md, Impact. */
const hardContactRate = 2000;

/** What tells of a step: its start, its size, the states at both ends and the rows of its stages. */
type StepTried = Pick<DormandPrince, "time" | "size" | "state" | "next" | "rows">;

const { compressing, pressing, fullStop, hardContact, grounded, pushing } = switches;
const { closingFast, openingFast } = switches;

/** A stop just met that would pull by no more than this, N, pushes. */
const noPull = 1e-2;

/** Share of the weight below which a tyre may lift and land again within one step. */
const hardlyHolding = 0.25;

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

  readonly #kinematics: Kinematics;
  readonly #gap: number;
  readonly #restTravel: number;
  readonly #sprungMass: number;
  readonly #unsprungMass: number;
  readonly #staticShare: number;
  readonly #hasDashpot: boolean;
  readonly #bumpProfile: RoadProfile["bump"];
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
    const { stop, gapMm, restTravelMm } = setup;
    this.#kinematics = setup.kinematics;
    this.#gap = gapMm;
    this.#restTravel = restTravelMm;
    this.#sprungMass = setup.sprungMassKg;
    this.#unsprungMass = setup.unsprungMassKg;
    this.#staticShare = setup.atSpeed.staticShare;
    this.#hasDashpot = setup.atSpeed.dashpot !== null;
    this.#bumpProfile = profile.bump;
    this.#contactTravel = this.#travelFor(gapMm) - restTravelMm;
    this.#fullStopTravel = this.#travelFor(gapMm + stop.usableCompressionMm) - restTravelMm;
    this.#limitTravel = (setup.hardLimitMm ?? Number.POSITIVE_INFINITY) - restTravelMm;
    this.#stop = new StopForce(stop, setup.atSpeed);
    this.isLossy = losesEnergy(setup.atSpeed);
    this.#hasRestLoss = setup.atSpeed.restLoss > 0;
    this.stateCount = massStates + this.#stop.branchCount;
    const { column, rowLength } = rowColumns(this.stateCount);
    this.column = column;
    this.rowLength = rowLength;
    this.weight = (setup.sprungMassKg + setup.unsprungMassKg) * standardGravity;
    this.#springRate = setup.wheelRateNPerMm;
    this.#tyreRate = 1000 * setup.tyreRateNPerMm;
    this.#bump = 1000 * setup.damperBumpNsPerMm;
    this.#rebound = 1000 * setup.damperReboundNsPerMm;
    this.onBump = profile.bump.endS > 0;
    this.#kinematics.evaluate(restTravelMm, this.#closing);
    const closing = this.#closing[0];
    const slope = this.#closing[1];
    this.#restForce = this.#stop.atRest(closing - gapMm) * slope;
  }

  /** Wheel travel that closes the stop by s, mm; ±∞ past either end of the layout's reach. */
  #travelFor(s: number): number {
    const travel = this.#kinematics.wheelTravel(s);
    if (travel.ok) return travel.value;
    this.#kinematics.evaluate(0, this.#closing);
    return s > this.#closing[0] ? Number.POSITIVE_INFINITY : Number.NEGATIVE_INFINITY;
  }

  /** Wheel travel from the measured ride height, mm. */
  wheelTravel(y: Float64Array): number {
    return 1000 * (y[1] - y[0]) + this.#restTravel;
  }

  /** Compression of the stop at a wheel travel, mm; below 0: gap left. */
  compression(wheelTravel: number): number {
    this.#kinematics.evaluate(wheelTravel, this.#closing);
    return this.#closing[0] - this.#gap;
  }

  /** Puts the stop's branches, in `y`, into the state of one that has stood at rest for long. */
  rest(y: Float64Array): void {
    const compression = this.compression(this.#restTravel);
    this.#stop.relaxed(Math.max(0, this.#stop.curveForce(compression)), y, massStates);
  }

  /** Sets every switch from where the car stands; at rest the wheel is about to rise. */
  setSwitches(t: number, y: Float64Array): void {
    this.on.fill(0);
    this.on[compressing] = 1;
    this.measure(t, y);
    const { measures, on } = this;
    on[compressing] = measures[compressing] >= 0 ? 1 : 0;
    for (let s = pressing; s < switchCount; s++) {
      on[s] = measures[s] > 0 ? 1 : 0;
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
    return this.onBump ? this.#bumpProfile.height(t) : 0;
  }

  derivative(t: number, y: Float64Array, rows: Float64Array, offset: number): void {
    const { on } = this;
    const powers = offset + this.stateCount;
    const sprungSpeed = y[2];
    const unsprungSpeed = y[3];
    const travelSpeed = unsprungSpeed - sprungSpeed;
    const fromRest = 1000 * (y[1] - y[0]);
    let stopForce = 0;
    let stopAtWheel = 0;
    let lossPower = 0;
    if (on[pressing] === 1) {
      this.#kinematics.evaluate(fromRest + this.#restTravel, this.#closing);
      const slope = this.#closing[1];
      const x = this.#closing[0] - this.#gap;
      const curveForce = this.#stop.curveForce(x);
      const remaining = this.#staticShare * curveForce;
      stopForce = remaining;
      const closingSpeed = 1000 * slope * travelSpeed;
      rows[powers + 5] = closingSpeed;
      rows[powers + 6] = x;
      if (this.isLossy) {
        const whole = this.#wholeForce(x, curveForce, closingSpeed, y);
        stopForce = on[pushing] === 1 ? whole : 0;
        lossPower = (stopForce - remaining) * slope * travelSpeed;
        this.#stop.relaxation(curveForce, y, massStates, rows, offset + massStates);
        rows[powers + 4] = whole;
      }
      stopAtWheel = stopForce * slope;
    } else {
      for (let state = offset + massStates; state < powers; state++) rows[state] = 0;
    }
    const damper = (on[compressing] === 1 ? this.#bump : this.#rebound) * travelSpeed;
    let suspension = this.#springRate * fromRest + damper + stopAtWheel - this.#restForce;
    if (on[hardContact] === 1) {
      suspension += hardContactRate * (fromRest - this.#limitTravel);
    }
    let road = 0;
    let roadSpeed = 0;
    if (this.onBump) {
      road = this.#bumpProfile.height(t);
      roadSpeed = this.#bumpProfile.speed(t);
    }
    const tyre = on[grounded] === 1 ? this.#tyreRate * (road - y[1]) : -this.weight;
    rows[offset] = sprungSpeed;
    rows[offset + 1] = unsprungSpeed;
    rows[offset + 2] = suspension / this.#sprungMass;
    rows[offset + 3] = (tyre - suspension) / this.#unsprungMass;
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

  /** Energy in a stop in contact that remains at rest, J, at the end of a step. */
  stopEnergyAtEnd({ rows }: StepTried): number {
    const compression = rows[6 * this.rowLength + this.column.compression];
    return this.#stop.energyAtRest(compression) / 1000;
  }

  /** The same at a state. */
  stopEnergy(y: Float64Array): number {
    return this.#stop.energyAtRest(this.compression(this.wheelTravel(y))) / 1000;
  }

  /** Fills `measures` for a state. Every place along the travel is told by the wheel's. */
  measure(t: number, y: Float64Array): void {
    this.#measureMasses(t, y);
    this.#measureStop(y);
  }

  /** The same at the end of a step, whose last row has what the stop does there. */
  measureEnd({ time, size, next, rows }: StepTried): void {
    this.#measureMasses(time + size, next);
    if (!this.#isLossyContact()) {
      this.#measureStop(next);
      return;
    }
    const end = 6 * this.rowLength;
    this.#closingSpeed = rows[end + this.column.closingSpeed];
    this.#takeStop(rows[end + this.column.wholeForce]);
  }

  /** The measure of one switch alone. */
  measureOne(index: number, t: number, y: Float64Array): number {
    if (index >= pushing) this.#measureStop(y);
    else this.#measureMasses(t, y);
    return this.measures[index];
  }

  #measureMasses(t: number, y: Float64Array): void {
    const { measures } = this;
    const fromRest = 1000 * (y[1] - y[0]);
    measures[compressing] = y[3] - y[2];
    measures[pressing] = fromRest - this.#contactTravel;
    measures[fullStop] = fromRest - this.#fullStopTravel;
    measures[hardContact] = fromRest - this.#limitTravel;
    measures[grounded] = this.#tyreRate * (this.roadHeight(t) - y[1]) + this.weight;
  }

  #measureStop(y: Float64Array): void {
    const mayPull = this.#mayPull();
    if (!mayPull && this.#hasRestLoss && this.#isLossyContact()) this.#setClosingSpeed(y);
    this.#takeStop(mayPull ? this.#pull(y) : 1);
  }

  /** Takes the measures of the stop's switches from its whole force; its closing speed is set. */
  #takeStop(whole: number): void {
    const { measures } = this;
    const slides = this.#hasRestLoss && this.#isLossyContact();
    measures[pushing] = this.#mayPull() ? whole : 1;
    measures[closingFast] = slides ? this.#closingSpeed - restLossSpeed : -1;
    measures[openingFast] = slides ? -this.#closingSpeed - restLossSpeed : -1;
  }

  #isLossyContact(): boolean {
    return this.isLossy && this.on[pressing] === 1;
  }

  /**
   * True where the stop can be pulled away from faster than it follows: while a damped one rebounds, or
   * whenever one with branches may have been left too soon.
   */
  #mayPull(): boolean {
    return this.#isLossyContact() && (this.on[compressing] === 0 || this.#stop.branchCount > 0);
  }

  /** The stop's force, N: below 0 where it would pull. Sets its closing speed. */
  #pull(y: Float64Array): number {
    const x = this.#setClosingSpeed(y);
    return this.#wholeForce(x, this.#stop.curveForce(x), this.#closingSpeed, y);
  }

  /** Sets the speed at which the stop closes, mm/s; its compression, mm. */
  #setClosingSpeed(y: Float64Array): number {
    const x = this.compression(this.wheelTravel(y));
    this.#closingSpeed = 1000 * this.#closing[1] * (y[3] - y[2]);
    return x;
  }

  /** True where the measure taken last lies on the side that the switch stands for, within its slack. */
  agrees(index: number): boolean {
    const measure = this.measures[index];
    const allowed = slack[index];
    return this.on[index] === 1 ? measure >= -allowed : measure <= allowed;
  }

  /** True where the measure taken last is as good as 0. */
  isTurning(index: number): boolean {
    return Math.abs(this.measures[index]) <= slack[index];
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
    const travelStart = travelSign * (rows[3] - rows[2]);
    const travelEnd = travelSign * (rows[end + 3] - rows[end + 2]);
    if (travelStart < 0 && travelEnd > 0) return true;
    if (Math.abs(measures[grounded]) < hardlyHolding * this.weight) {
      const tyreSign = on[grounded] === 1 ? 1 : -1;
      const tyreStart = tyreSign * (this.#roadSpeed(time) - state[3]);
      const tyreEnd = tyreSign * (this.#roadSpeed(time + size) - next[3]);
      if (tyreStart < 0 && tyreEnd > 0) return true;
    }
    return this.#mayPullWithin();
  }

  /** True where the stop may push less than nothing within a step at whose ends it pushes, or pushes not. */
  #mayPullWithin(): boolean {
    if (!this.#mayPull()) return false;
    const dashpotRebounds = this.#hasDashpot && this.on[compressing] === 0;
    return dashpotRebounds || Math.abs(this.measures[pushing]) < hardlyHolding * this.weight;
  }

  #roadSpeed(t: number): number {
    return this.onBump ? this.#bumpProfile.speed(t) : 0;
  }

  /** Kinetic energy and energy held in springs, tyre and hard contact (not in the stop), J. */
  energy(t: number, y: Float64Array): { kinetic: number; potential: number } {
    const kinetic = (this.#sprungMass * y[2] ** 2 + this.#unsprungMass * y[3] ** 2) / 2;
    const fromRest = 1000 * (y[1] - y[0]);
    const pastLimit = Math.max(0, fromRest - this.#limitTravel);
    const springs =
      (this.#springRate * fromRest ** 2 + hardContactRate * pastLimit ** 2) / 2 -
      this.#restForce * fromRest;
    const tyre = this.roadHeight(t) - y[1];
    const lift = -this.weight / this.#tyreRate;
    const tyreEnergy =
      tyre >= lift
        ? (this.#tyreRate * tyre ** 2) / 2
        : (this.#tyreRate * lift ** 2) / 2 - this.weight * (tyre - lift);
    return { kinetic, potential: springs / 1000 + tyreEnergy };
  }
}
