import * as messages from "../../words/compiled/physics/impact.ts";
import type { DesignEvent, EventResult } from "../fitment.ts";
import { fail, type Outcome, succeed } from "../outcome.ts";
import { standardGravity } from "../standardGravity.ts";
import { ClosingSpeed, partingSpeed } from "./closingSpeed.ts";
import type { DormandPrince } from "./dormandPrince.ts";
import type { ImpactPeaks } from "./impactPeaks.ts";
import { giveBack, type ImpactRoom, roomFor } from "./impactRoom.ts";
import type { ImpactSetup } from "./impactSetup.ts";
import { type ImpactTrace, ImpactTracer } from "./impactTrace.ts";
import { QuarterCar } from "./quarterCar.ts";
import { type RoadProfile, roadProfile } from "./roadProfile.ts";
import { allowedErrors, growth } from "./stepErrors.ts";
import { switchCount, switches } from "./switches.ts";
import { type MeasureAlongStep, turningPlace } from "./turningPlace.ts";

export interface ImpactOptions {
  /** Allowed error of a step, relative. */
  readonly tolerance?: number;
  /** Steps tried before the run is given up. */
  readonly mostSteps?: number;
  /** Time between the points of the trace, s; absent: no trace. */
  readonly traceStepS?: number;
  /**
   * Ends the run as soon as the stop fails in it: above this acceleration, g, past its usable compression or
   * the hard limit. What comes after is then not in the result.
   */
  readonly failsAboveG?: number;
}

/** Where the energy of a run went, J. start + road = kinetic + potential + damper + stop. */
interface EnergyBalance {
  /** In the masses, springs and tyre at the start. */
  readonly start: number;
  /** Put in by the road. */
  readonly road: number;
  /** In the masses at the end. */
  readonly kinetic: number;
  /** In ride spring, tyre and hard contact at the end, less what the stop bore at rest. */
  readonly potential: number;
  /** Turned into heat by the damper. */
  readonly damper: number;
  /** Into the stop less out of it. */
  readonly stop: number;
}

export interface ImpactRun {
  readonly result: EventResult;
  readonly energy: EnergyBalance;
  /** Null unless asked for. */
  readonly trace: ImpactTrace | null;
  readonly steps: number;
}

export const impactDefaults = { tolerance: 5e-6, mostSteps: 6000 } as const;

export const runFormulas = {
  peakCompressionMm: messages.greatestXSZ,
  energyInJ: messages.fDtWhile0,
  energyOutJ: messages.fDtWhile02,
  leaveSpeedMmPerS: messages.greatestAsWheelLeaves,
  tyreOffMs: messages.timeInRunWith,
} as const;

/** Between these, m/s, the errors allowed follow the event's speed, so that a gentle event is as sure. */
const speedRange = [1e-3, 1] as const;
const firstStepS = 1e-4;
const leastStepS = 1e-12;
/** Turns of a switch without a step between, before a step is taken as it is. */
const mostTurnsInPlace = 12;

/**
 * One design event of one corner: the quarter car of MODEL.md, Impact, integrated from rest to the end
 * of the event. Linear spring and tyre, one corner alone.
 *
 * Steps end where a law changes (bump to rebound, contact, full stop, hard contact, tyre lifting off,
 * end of the bump), so that every step is over smooth laws.
 *
 * Errors: "eventNotUsable"; "impactTooStiff" when the steps run out;
 * "impactNotFinite"; "impactPastReach" when the wheel rises farther than the layout can move.
 */
export function simulateImpact(
  setup: ImpactSetup,
  event: DesignEvent,
  options: ImpactOptions = {},
): Outcome<ImpactRun> {
  const profile = roadProfile(event);
  if (!profile.ok) return profile;
  return new ImpactIntegration(setup, event.kind, profile.value, options).run();
}

const tooStiff = fail<ImpactRun>("impactTooStiff", [messages.impactCouldNotBe]);

class ImpactIntegration {
  readonly #setup: ImpactSetup;
  readonly #kind: DesignEvent["kind"];
  readonly #profile: RoadProfile;
  readonly #car: QuarterCar;
  readonly #room: ImpactRoom;
  readonly #solver: DormandPrince;
  readonly #peaks: ImpactPeaks;
  readonly #tracer: ImpactTracer | null;
  readonly #tolerance: number;
  readonly #mostSteps: number;
  readonly #failsAboveG: number | null;
  readonly #allowed: Float64Array;
  readonly #probe: Float64Array;
  /** The switch whose turn is looked for, and its measure. */
  #watched = 0;
  readonly #measure: MeasureAlongStep = {
    standing: (theta) => {
      const solver = this.#solver;
      solver.interpolate(theta, this.#probe);
      const time = solver.time + theta * solver.size;
      const measure = this.#car.measureOne(this.#watched, time, this.#probe);
      return this.#car.on[this.#watched] === 1 ? measure : -measure;
    },
    isTurning: () => this.#car.isTurning(this.#watched),
  };
  #steps = 0;
  #size = firstStepS;
  #turnsInPlace = 0;
  #crossed = -1;
  #road = 0;
  #damper = 0;
  #energyIn = 0;
  /** Held by what remains of the stop's force at rest, J: exact, so that only the rest is integrated. */
  #elastic = 0;
  #energyOut = 0;
  #leaveSpeed = 0;
  readonly #closingSpeed: ClosingSpeed;
  /** s */
  #tyreOff = 0;

  constructor(
    setup: ImpactSetup,
    kind: DesignEvent["kind"],
    profile: RoadProfile,
    options: ImpactOptions,
  ) {
    this.#setup = setup;
    this.#kind = kind;
    this.#profile = profile;
    this.#car = new QuarterCar(setup, profile);
    this.#room = roomFor(this.#car);
    this.#solver = this.#room.solver;
    this.#peaks = this.#room.peaks;
    this.#probe = this.#room.probe;
    this.#closingSpeed = new ClosingSpeed(setup.kinematics, this.#car);
    this.#tolerance = options.tolerance ?? impactDefaults.tolerance;
    this.#mostSteps = options.mostSteps ?? impactDefaults.mostSteps;
    this.#failsAboveG = options.failsAboveG ?? null;
    const eventSpeed = Math.max(-profile.startSpeed, profile.bump.greatestSpeed);
    const speed = Math.min(Math.max(eventSpeed, speedRange[0]), speedRange[1]);
    this.#allowed = allowedErrors(this.#car, this.#tolerance * speed);
    this.#tracer =
      options.traceStepS === undefined
        ? null
        : new ImpactTracer(
            profile.endS,
            options.traceStepS,
            setup.restTravelMm,
            this.#car,
            this.#solver,
          );
  }

  /** To be called once. */
  run(): Outcome<ImpactRun> {
    const outcome = this.#run();
    giveBack(this.#car, this.#room);
    return outcome;
  }

  #run(): Outcome<ImpactRun> {
    const car = this.#car;
    const solver = this.#solver;
    const { bump, endS, startSpeed } = this.#profile;
    solver.state[2] = startSpeed;
    solver.state[3] = startSpeed;
    car.rest(solver.state);
    car.setSwitches(0, solver.state);
    this.#peaks.takePlace(car.wheelTravel(solver.state));
    const start = car.energy(0, solver.state);
    this.#elastic = car.stopEnergy(solver.state);
    for (const end of [bump.endS, endS]) {
      car.onBump = end === bump.endS;
      this.#restart();
      if (!this.#advanceTo(end)) return this.#failure();
      if (this.#hasFailed()) break;
    }
    if (this.#peaks.wheelTravel > this.#setup.kinematics.range[1]) {
      return fail("impactPastReach", [messages.inThisEventWheel]);
    }
    const energy = car.energy(solver.time, solver.state);
    return succeed({
      result: this.#result(),
      energy: {
        start: start.kinetic + start.potential,
        road: this.#road,
        kinetic: energy.kinetic,
        potential: energy.potential,
        damper: this.#damper,
        stop: this.#energyIn - this.#energyOut,
      },
      trace: this.#tracer?.finish() ?? null,
      steps: this.#steps,
    });
  }

  #restart(): void {
    this.#solver.restart();
    this.#peaks.takeRow(this.#solver.rows);
  }

  /** Steps to a time, s, or to where the stop fails; false when it cannot get there. */
  #advanceTo(end: number): boolean {
    const solver = this.#solver;
    while (end - solver.time > leastStepS) {
      const left = end - solver.time;
      if (++this.#steps > this.#mostSteps) return false;
      const size = 1.01 * this.#size >= left ? left : this.#size;
      solver.attempt(size);
      const error = solver.error(this.#allowed, this.#tolerance);
      if (!(error <= 1)) {
        this.#size = size * (Number.isFinite(error) ? Math.max(0.1, growth(error)) : 0.1);
        continue;
      }
      const theta = this.#firstCrossing();
      if (this.#crossed >= 0 && this.#turnsInPlace < mostTurnsInPlace) {
        if (theta * size > leastStepS) {
          solver.attempt(theta * size);
          this.#commit();
          this.#turnsInPlace = 0;
        }
        this.#turnsInPlace++;
        this.#turn(this.#crossed);
        this.#size = size * Math.min(1, growth(error));
        continue;
      }
      this.#turnsInPlace = 0;
      this.#commit();
      if (this.#hasFailed()) return true;
      this.#size = size * growth(error);
    }
    return true;
  }

  /** What has been passed once stays passed. */
  #hasFailed(): boolean {
    const { acceleration, wheelTravel } = this.#peaks;
    if (this.#failsAboveG === null) return false;
    if (acceleration / standardGravity > this.#failsAboveG) return true;
    const { hardLimitMm, stop } = this.#setup;
    if (hardLimitMm !== null && wheelTravel > hardLimitMm) return true;
    return (
      this.#car.on[switches.fullStop] === 1 &&
      this.#car.compression(wheelTravel) > stop.usableCompressionMm
    );
  }

  /** Takes over the step tried last, and adds up its energies and peaks. */
  #commit(): void {
    const car = this.#car;
    const solver = this.#solver;
    const { column } = car;
    this.#damper += solver.quadrature(column.damperPower);
    this.#road += solver.quadrature(column.roadPower);
    if (car.on[switches.pressing] === 1) {
      const elastic = car.stopEnergyAtEnd(solver);
      let intoStop = elastic - this.#elastic;
      if (car.isLossy) intoStop += solver.quadrature(column.stopLossPower);
      this.#elastic = elastic;
      if (car.on[switches.compressing] === 1) {
        this.#energyIn += intoStop;
        this.#closingSpeed.takeStep(solver);
      } else this.#energyOut -= intoStop;
    }
    if (car.on[switches.grounded] === 0) this.#tyreOff += solver.size;
    this.#peaks.takePlace(car.wheelTravel(solver.next));
    this.#peaks.takeStep(solver, car);
    this.#tracer?.takeStep();
    solver.accept();
  }

  #turn(index: number): void {
    const car = this.#car;
    const { state, time } = this.#solver;
    car.turn(index, time, state);
    if (index === switches.pressing) {
      // Below 0 where the stop is met.
      const speed = partingSpeed(state);
      if (speed > this.#leaveSpeed) this.#leaveSpeed = speed;
      if (speed < 0) this.#closingSpeed.take(state);
    }
    this.#restart();
  }

  /**
   * Share of the step tried last at which a switch first must turn. `#crossed` is −1 where none does;
   * the end is then what was measured last.
   */
  #firstCrossing(): number {
    const solver = this.#solver;
    this.#crossed = -1;
    this.#car.measureEnd(solver);
    let upTo = 1;
    let disagreeing = this.#disagreeing();
    if (disagreeing === 0 && !this.#car.mayTurnWithin(solver)) return 1;
    solver.prepareInterpolation();
    if (disagreeing === 0) {
      upTo = 0.5;
      this.#measureAt(upTo);
      disagreeing = this.#disagreeing();
      if (disagreeing === 0) {
        this.#car.measureEnd(solver);
        return 1;
      }
    }
    let first = upTo;
    for (let index = 0; index < switchCount; index++) {
      if ((disagreeing & (1 << index)) === 0) continue;
      this.#watched = index;
      // One that still stands where another turns, turns later.
      if (this.#crossed >= 0 && this.#measure.standing(first) > 0) continue;
      const theta = turningPlace(this.#measure, first);
      if (this.#crossed < 0 || theta < first) {
        first = theta;
        this.#crossed = index;
      }
    }
    return first;
  }

  /** Bits of the switches that the place measured last disagrees with. */
  #disagreeing(): number {
    let bits = 0;
    for (let index = 0; index < switchCount; index++) {
      if (!this.#car.agrees(index)) bits |= 1 << index;
    }
    return bits;
  }

  #measureAt(theta: number): void {
    const solver = this.#solver;
    solver.interpolate(theta, this.#probe);
    this.#car.measure(solver.time + theta * solver.size, this.#probe);
  }

  #result(): EventResult {
    const peaks = this.#peaks;
    const limit = this.#setup.hardLimitMm;
    const compression = Math.max(0, this.#car.compression(peaks.wheelTravel));
    return {
      kind: this.#kind,
      peakWheelTravelMm: peaks.wheelTravel,
      peakCompressionMm: compression,
      peakStopForceN: peaks.stopForce,
      peakAccelerationG: peaks.acceleration / standardGravity,
      energyInJ: this.#energyIn,
      energyOutJ: this.#energyOut,
      leaveSpeedMmPerS: this.#leaveSpeed,
      closingSpeedMmPerS: this.#closingSpeed.greatest,
      tyreOffMs: 1000 * this.#tyreOff,
      bodyRiseMm: 1000 * peaks.bodyRise,
      fullStop: compression > this.#setup.stop.usableCompressionMm,
      hardContact: limit !== null && peaks.wheelTravel > limit,
    };
  }

  #failure(): Outcome<ImpactRun> {
    return this.#solver.state.every(Number.isFinite) && this.#solver.next.every(Number.isFinite)
      ? tooStiff
      : fail("impactNotFinite", [messages.impactCouldNotBeWorked]);
  }
}
