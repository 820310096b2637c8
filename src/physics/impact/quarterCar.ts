import { standardGravity } from "../road/restPosition.ts";
import type { OdeSystem } from "./dormandPrince.ts";
import type { ImpactSetup } from "./impactSetup.ts";
import type { RoadProfile } from "./roadProfile.ts";

/** Rate of metal on metal past the hard limit, at the wheel, N/mm. Source: model section 5. */
export const hardContactRate = 2000;

/** Columns of a row beyond the four state derivatives. */
export const column = {
  sprungAcceleration: 2,
  roadPower: 4,
  damperPower: 5,
  stopPower: 6,
  stopForce: 7,
} as const;

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
} as const;

export const switchCount = 6;

/** By how much a switch's measure may stand on the wrong side: m/s, mm, mm, mm, N, N. */
const slack = Float64Array.of(1e-9, 1e-8, 1e-8, 1e-8, 1e-6, 1e-6);

/**
 * Two masses over one wheel, with the stop through its real kinematics (model section 5). State: heights
 * of sprung and unsprung mass above rest, m, and their speeds, m/s, up positive. Forces N.
 *
 * Within a step every law is the smooth one that the switches name, also a little past its end; the
 * caller finds where a switch's measure changes sign, ends a step there and turns the switch.
 */
export class QuarterCar implements OdeSystem {
  readonly stateCount = 4;
  readonly rowLength = 8;
  readonly on = new Uint8Array(switchCount);
  /** Measures of the switches at the place measured last. */
  readonly measures = new Float64Array(switchCount);
  /** Wheel travel, mm, and stop compression, mm (below 0: gap left), at the place measured last. */
  wheelTravel = 0;
  compression = 0;
  /** True while the wheel is on the bump. */
  onBump: boolean;

  readonly #setup: ImpactSetup;
  readonly #profile: RoadProfile;
  readonly #closing = new Float64Array(3);
  readonly #firstRate: number;
  readonly #restForce: number;
  readonly #limit: number;
  /** Weight at this corner, N. */
  readonly weight: number;
  readonly #springRate: number;
  readonly #tyreRate: number;
  readonly #bump: number;
  readonly #rebound: number;

  constructor(setup: ImpactSetup, profile: RoadProfile) {
    this.#setup = setup;
    this.#profile = profile;
    this.#firstRate = setup.stop.slope(0);
    this.#limit = setup.hardLimitMm ?? Number.POSITIVE_INFINITY;
    this.weight = (setup.sprungMassKg + setup.unsprungMassKg) * standardGravity;
    this.#springRate = setup.wheelRateNPerMm;
    this.#tyreRate = 1000 * setup.tyreRateNPerMm;
    this.#bump = 1000 * setup.damperBumpNsPerMm;
    this.#rebound = 1000 * setup.damperReboundNsPerMm;
    this.onBump = profile.bumpEndS > 0;
    setup.kinematics.evaluate(setup.restTravelMm, this.#closing);
    const closing = this.#closing[0] as number;
    const slope = this.#closing[1] as number;
    this.#restForce = setup.stop.force(closing - setup.gapMm) * slope;
  }

  /** Sets every switch from where the car stands; at rest the wheel is about to rise. */
  setSwitches(t: number, y: Float64Array): void {
    this.on[switches.compressing] = 1;
    this.on[switches.pressing] = 0;
    this.measure(t, y);
    const { measures, on } = this;
    on[switches.compressing] = (measures[switches.compressing] as number) >= 0 ? 1 : 0;
    for (let s = switches.pressing; s < switchCount; s++) {
      on[s] = (measures[s] as number) > 0 ? 1 : 0;
    }
    on[switches.pushing] = 1;
  }

  /** Turns one switch. A stop just met, or turning between compression and rebound, pushes. */
  turn(index: number): void {
    const { on } = this;
    on[index] = on[index] === 1 ? 0 : 1;
    if (index === switches.pressing || index === switches.compressing) on[switches.pushing] = 1;
  }

  roadHeight(t: number): number {
    const { amplitude, angularSpeed } = this.#profile;
    return this.onBump ? amplitude * (1 - Math.cos(angularSpeed * t)) : 0;
  }

  derivative(t: number, y: Float64Array, rows: Float64Array, offset: number): void {
    const { on } = this;
    const setup = this.#setup;
    const sprungSpeed = y[2] as number;
    const unsprungSpeed = y[3] as number;
    const travelSpeed = unsprungSpeed - sprungSpeed;
    const fromRest = 1000 * ((y[1] as number) - (y[0] as number));
    const wheelTravel = fromRest + setup.restTravelMm;
    let stopForce = 0;
    let stopAtWheel = 0;
    if (on[switches.pressing] === 1 && on[switches.pushing] === 1) {
      setup.kinematics.evaluate(wheelTravel, this.#closing);
      const slope = this.#closing[1] as number;
      const x = (this.#closing[0] as number) - setup.gapMm;
      stopForce = this.#rawStopForce(x, 1000 * slope * travelSpeed);
      stopAtWheel = stopForce * slope;
    }
    const damper = (on[switches.compressing] === 1 ? this.#bump : this.#rebound) * travelSpeed;
    let suspension = this.#springRate * fromRest + damper + stopAtWheel - this.#restForce;
    if (on[switches.hardContact] === 1) suspension += hardContactRate * (wheelTravel - this.#limit);
    let road = 0;
    let roadSpeed = 0;
    if (this.onBump) {
      const { amplitude, angularSpeed } = this.#profile;
      const angle = angularSpeed * t;
      road = amplitude * (1 - Math.cos(angle));
      roadSpeed = amplitude * angularSpeed * Math.sin(angle);
    }
    const tyre =
      on[switches.grounded] === 1 ? this.#tyreRate * (road - (y[1] as number)) : -this.weight;
    rows[offset] = sprungSpeed;
    rows[offset + 1] = unsprungSpeed;
    rows[offset + 2] = suspension / setup.sprungMassKg;
    rows[offset + 3] = (tyre - suspension) / setup.unsprungMassKg;
    rows[offset + 4] = tyre * roadSpeed;
    rows[offset + 5] = damper * travelSpeed;
    rows[offset + 6] = stopAtWheel * travelSpeed;
    rows[offset + 7] = stopForce;
  }

  /** Static and damping force together, N, not cut off at 0; straight on below x = 0. */
  #rawStopForce(x: number, closingSpeed: number): number {
    const { stop, damping } = this.#setup;
    const force = x >= 0 ? stop.force(x) : this.#firstRate * x;
    if (damping === null) return force;
    const sign = this.on[switches.compressing] === 1 ? 1 : -1;
    return force + damping.coefficient(x, sign) * closingSpeed;
  }

  /** Fills `measures`, `wheelTravel` and `compression` for a state. */
  measure(t: number, y: Float64Array): void {
    const { measures, on } = this;
    const setup = this.#setup;
    const travelSpeed = (y[3] as number) - (y[2] as number);
    this.wheelTravel = 1000 * ((y[1] as number) - (y[0] as number)) + setup.restTravelMm;
    setup.kinematics.evaluate(this.wheelTravel, this.#closing);
    this.compression = (this.#closing[0] as number) - setup.gapMm;
    measures[switches.compressing] = travelSpeed;
    measures[switches.pressing] = this.compression;
    measures[switches.fullStop] = this.compression - setup.stop.usableCompressionMm;
    measures[switches.hardContact] =
      this.#limit === Number.POSITIVE_INFINITY ? -1 : this.wheelTravel - this.#limit;
    measures[switches.grounded] =
      this.#tyreRate * (this.roadHeight(t) - (y[1] as number)) + this.weight;
    measures[switches.pushing] =
      setup.damping === null || on[switches.pressing] === 0 || on[switches.compressing] === 1
        ? 1
        : this.#rawStopForce(this.compression, 1000 * (this.#closing[1] as number) * travelSpeed);
  }

  /** True where the measure taken last lies on the side that the switch stands for, within its slack. */
  agrees(index: number): boolean {
    const measure = this.measures[index] as number;
    const allowed = slack[index] as number;
    return this.on[index] === 1 ? measure >= -allowed : measure <= allowed;
  }

  /** Kinetic energy and energy held in springs, tyre and hard contact (not in the stop), J. */
  energy(t: number, y: Float64Array): { kinetic: number; potential: number } {
    const setup = this.#setup;
    const kinetic =
      (setup.sprungMassKg * (y[2] as number) ** 2 + setup.unsprungMassKg * (y[3] as number) ** 2) /
      2;
    const fromRest = 1000 * ((y[1] as number) - (y[0] as number));
    const pastLimit = Math.max(0, fromRest + setup.restTravelMm - this.#limit);
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
