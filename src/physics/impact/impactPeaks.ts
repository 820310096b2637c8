import type { DormandPrince } from "./dormandPrince.ts";
import { column, type QuarterCar } from "./quarterCar.ts";

/** Places inside a step that are looked at where a force may be greatest there. */
const looks = 8;
/** A stage this near to the greatest value so far makes a step worth looking into. */
const nearlyGreatest = 0.98;

/** Greatest wheel travel, compression, stop force and upward sprung acceleration of a run. */
export class ImpactPeaks {
  wheelTravel = Number.NEGATIVE_INFINITY;
  compression = 0;
  stopForce = 0;
  /** m/s² */
  acceleration = 0;
  readonly #state = new Float64Array(4);
  readonly #row = new Float64Array(8);
  readonly #forces = new Float64Array(looks + 1);
  readonly #accelerations = new Float64Array(looks + 1);

  /** Travel is greatest where a step ends, since steps end where the wheel turns. */
  takePlace(car: QuarterCar): void {
    if (car.wheelTravel > this.wheelTravel) this.wheelTravel = car.wheelTravel;
    if (car.compression > this.compression) this.compression = car.compression;
  }

  /** Forces at the start of a step, just after a switch has turned. */
  takeRow(rows: Float64Array): void {
    this.#take(rows, 0);
  }

  /**
   * Forces over the step tried last. Its inside is searched where a stage comes near to the greatest so far:
   * equal looks along the continuous extension, then a parabola's top through the greatest three.
   */
  takeStep(solver: DormandPrince, car: QuarterCar): void {
    const { rows } = solver;
    const end = 6 * car.rowLength;
    this.#take(rows, end);
    const forceInside = this.#mayPeak(rows, car.rowLength, column.stopForce, this.stopForce);
    const accelerationInside = this.#mayPeak(
      rows,
      car.rowLength,
      column.sprungAcceleration,
      this.acceleration,
    );
    if (!(forceInside || accelerationInside)) return;
    solver.prepareInterpolation();
    const forces = this.#forces;
    const accelerations = this.#accelerations;
    forces[0] = rows[column.stopForce] as number;
    accelerations[0] = rows[column.sprungAcceleration] as number;
    for (let look = 1; look <= looks; look++) {
      const row = this.#look(solver, car, look / looks);
      forces[look] = row[column.stopForce] as number;
      accelerations[look] = row[column.sprungAcceleration] as number;
    }
    this.stopForce = Math.max(this.stopForce, greatestInside(forces));
    this.acceleration = Math.max(this.acceleration, greatestInside(accelerations));
  }

  #look(solver: DormandPrince, car: QuarterCar, theta: number): Float64Array {
    solver.interpolate(theta, this.#state);
    car.derivative(solver.time + theta * solver.size, this.#state, this.#row, 0);
    return this.#row;
  }

  #take(rows: Float64Array, offset: number): void {
    const force = rows[offset + column.stopForce] as number;
    const acceleration = rows[offset + column.sprungAcceleration] as number;
    if (force > this.stopForce) this.stopForce = force;
    if (acceleration > this.acceleration) this.acceleration = acceleration;
  }

  #mayPeak(rows: Float64Array, rowLength: number, at: number, least: number): boolean {
    const bound =
      nearlyGreatest * Math.max(least, rows[at] as number, rows[6 * rowLength + at] as number);
    for (let stage = 1; stage < 6; stage++) {
      if (bound > 0 && (rows[stage * rowLength + at] as number) > bound) return true;
    }
    return false;
  }
}

/** Greatest of equally spaced values, by the top of the parabola through it and its neighbours. */
function greatestInside(values: Float64Array): number {
  let greatest = 0;
  for (let place = 1; place < values.length - 1; place++) {
    const before = values[place - 1] as number;
    const middle = values[place] as number;
    const after = values[place + 1] as number;
    const bend = before - 2 * middle + after;
    if (!(middle >= before && middle >= after && bend < 0)) continue;
    const lean = (after - before) / 2;
    greatest = Math.max(greatest, middle - (lean * lean) / (2 * bend));
  }
  return greatest;
}
