import * as messages from "../../words/compiled/physics/impact.ts";
import { type DormandPrince, stageCount } from "./dormandPrince.ts";
import { greatestInside } from "./greatestInside.ts";
import type { QuarterCar } from "./quarterCar.ts";
import type { RowColumns } from "./rowColumns.ts";

/** Looks at the step of a stop that loses energy, whose force may be greatest anywhere in it. */
const lossy = 9;
/**
 * Distance of the three looks round a top of the acceleration, as a share of the step: as far as such a
 * top stands from an end at least.
 */
const lookApart = 0.05;
/** A force at least this near to the greatest so far makes a step worth looking into. */
const nearlyGreatest = 0.98;
/** Places of the sprung mass's height and speed in the state. */
const sprungHeight = 0;
const sprungSpeed = 2;

type ForceColumns = Pick<RowColumns, "sprungAcceleration" | "stopForce">;

/** What of the quarter car is looked at along a step. */
type LookedAt = Pick<QuarterCar, "isLossy" | "derivative">;
type Rows = Pick<QuarterCar, "stateCount" | "rowLength"> & { readonly column: ForceColumns };

export const peakFormulas = {
  peakWheelTravelMm: messages.greatestZZuZs,
  peakStopForceN: messages.greatestFMax0,
  peakAccelerationG: messages.greatestZSUpward,
  bodyRiseMm: messages.greatestZsAboveIts,
} as const;

/** Greatest wheel travel, stop force, upward sprung acceleration and rise of the body of a run. */
export class ImpactPeaks {
  /** mm */
  wheelTravel = Number.NEGATIVE_INFINITY;
  /** N */
  stopForce = 0;
  /** m/s² */
  acceleration = 0;
  /** Above rest, m. */
  bodyRise = 0;
  readonly #column: ForceColumns;
  readonly #rowLength: number;
  readonly #state: Float64Array;
  readonly #row: Float64Array;
  readonly #forces = new Float64Array(lossy);
  readonly #accelerations = new Float64Array(lossy);

  constructor({ stateCount, rowLength, column }: Rows) {
    this.#column = column;
    this.#rowLength = rowLength;
    this.#state = new Float64Array(stateCount);
    this.#row = new Float64Array(rowLength);
  }

  /** Begins anew, for a car of as many states. */
  begin(): void {
    this.wheelTravel = Number.NEGATIVE_INFINITY;
    this.stopForce = 0;
    this.acceleration = 0;
    this.bodyRise = 0;
  }

  /** Travel is greatest where a step ends, since steps end where the wheel turns. */
  takePlace(wheelTravel: number): void {
    if (wheelTravel > this.wheelTravel) this.wheelTravel = wheelTravel;
  }

  /** Forces at the start of a step, just after a switch has turned. */
  takeRow(rows: Float64Array): void {
    this.#take(rows, 0);
  }

  /**
   * Forces over the step tried last. Where one may be greatest inside the step it is looked at along the
   * continuous extension, and the top of the parabola through three looks is taken. The force of an
   * stop without loss is greatest where the wheel turns, which ends a step.
   */
  takeStep(solver: DormandPrince, car: LookedAt): void {
    const { rows } = solver;
    const column = this.#column;
    const end = (stageCount - 1) * this.#rowLength;
    const atStart = rows[column.sprungAcceleration];
    const atEnd = rows[end + column.sprungAcceleration];
    this.#take(rows, end);
    this.#takeBody(solver);
    if (this.#isNear(rows, column.sprungAcceleration, this.acceleration)) {
      const top = solver.topOfSlope(sprungSpeed);
      if (solver.slopeAt(sprungSpeed, top) > Math.max(atStart, atEnd)) {
        this.#look(solver, car, top - lookApart, lookApart, 3);
      }
    }
    if (
      car.isLossy &&
      this.#isNear(rows, column.stopForce, this.stopForce) &&
      this.#hasTop(rows, column.stopForce)
    ) {
      this.#look(solver, car, 0, 1 / (lossy - 1), lossy);
    }
  }

  /** The body is highest at an end of a step, or where it turns within. */
  #takeBody(solver: DormandPrince): void {
    const { state, next } = solver;
    this.bodyRise = Math.max(this.bodyRise, next[sprungHeight]);
    if (!(state[sprungSpeed] > 0 && next[sprungSpeed] < 0)) return;
    solver.prepareInterpolation();
    solver.interpolate(solver.turnOf(sprungHeight), this.#state);
    this.bodyRise = Math.max(this.bodyRise, this.#state[sprungHeight]);
  }

  /** Equal looks along the step tried last, the parabola's top where one stands highest. */
  #look(solver: DormandPrince, car: LookedAt, from: number, apart: number, count: number): void {
    const column = this.#column;
    const row = this.#row;
    const forces = this.#forces;
    const accelerations = this.#accelerations;
    solver.prepareInterpolation();
    for (let look = 0; look < count; look++) {
      const theta = from + look * apart;
      solver.interpolate(theta, this.#state);
      car.derivative(solver.time + theta * solver.size, this.#state, row, 0);
      this.#take(row, 0);
      forces[look] = row[column.stopForce];
      accelerations[look] = row[column.sprungAcceleration];
    }
    this.stopForce = Math.max(this.stopForce, greatestInside(forces, count));
    this.acceleration = Math.max(this.acceleration, greatestInside(accelerations, count));
  }

  #take(rows: Float64Array, offset: number): void {
    const column = this.#column;
    const force = rows[offset + column.stopForce];
    const acceleration = rows[offset + column.sprungAcceleration];
    if (force > this.stopForce) this.stopForce = force;
    if (acceleration > this.acceleration) this.acceleration = acceleration;
  }

  /**
   * True where a column rises and then falls from stage to stage: else it is greatest at an end. The stage
   * before the last stands at the end as well, but is less exact.
   */
  #hasTop(rows: Float64Array, at: number): boolean {
    let rose = false;
    let before = rows[at];
    for (let stage = 1; stage < stageCount; stage++) {
      if (stage === stageCount - 2) continue;
      const now = rows[stage * this.#rowLength + at];
      if (rose && now < before) return true;
      rose ||= now > before;
      before = now;
    }
    return false;
  }

  /** True where a stage shows a column above 0 and near to its greatest so far. */
  #isNear(rows: Float64Array, at: number, greatest: number): boolean {
    const near = nearlyGreatest * greatest;
    for (let stage = 1; stage < 6; stage++) {
      if (rows[stage * this.#rowLength + at] > near) return true;
    }
    return false;
  }
}
