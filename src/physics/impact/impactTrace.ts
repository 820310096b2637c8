import { standardGravity } from "../standardGravity.ts";
import type { DormandPrince } from "./dormandPrince.ts";
import type { QuarterCar } from "./quarterCar.ts";

/** An event in time, at equal steps from its start to its end. */
export interface ImpactTrace {
  readonly timeS: Float64Array;
  /** From the measured ride height, mm, jounce positive. */
  readonly wheelTravelMm: Float64Array;
  readonly compressionMm: Float64Array;
  /** Along the stop's axis, N. */
  readonly stopForceN: Float64Array;
  /** Of the sprung mass, upward, g. */
  readonly accelerationG: Float64Array;
  /** Height of the body over where it stands at the measured ride height, mm, up positive. */
  readonly bodyMm: Float64Array;
  /** Height of the road under the wheel, mm, up positive. */
  readonly roadMm: Float64Array;
}

/** Points of a trace at most, so that a long event cannot fill the memory. */
const mostPoints = 20_000;

/** Fills a trace along the continuous extension of the solver's steps. */
export class ImpactTracer {
  readonly #car: QuarterCar;
  readonly #solver: DormandPrince;
  readonly #trace: ImpactTrace;
  readonly #restMm: number;
  readonly #state: Float64Array;
  readonly #row: Float64Array;
  #filled = 0;

  /** @param restMm wheel travel at rest, from the measured ride height, mm */
  constructor(endS: number, stepS: number, restMm: number, car: QuarterCar, solver: DormandPrince) {
    const points = Math.min(mostPoints, Math.max(2, Math.floor(endS / stepS) + 1));
    const step = endS / (points - 1);
    this.#car = car;
    this.#solver = solver;
    this.#restMm = restMm;
    this.#state = new Float64Array(car.stateCount);
    this.#row = new Float64Array(car.rowLength);
    this.#trace = {
      timeS: Float64Array.from({ length: points }, (_, point) => point * step),
      wheelTravelMm: new Float64Array(points),
      compressionMm: new Float64Array(points),
      stopForceN: new Float64Array(points),
      accelerationG: new Float64Array(points),
      bodyMm: new Float64Array(points),
      roadMm: new Float64Array(points),
    };
  }

  /** Points within the step tried last. */
  takeStep(): void {
    const { time, size } = this.#solver;
    const { timeS } = this.#trace;
    let prepared = false;
    while (this.#filled < timeS.length && timeS[this.#filled] <= time + size) {
      if (!prepared) this.#solver.prepareInterpolation();
      prepared = true;
      const at = timeS[this.#filled];
      this.#solver.interpolate((at - time) / size, this.#state);
      this.#fill(at);
    }
  }

  /** The last point may fall short of the last step by a rounding: it is then the last state. */
  finish(): ImpactTrace {
    this.#state.set(this.#solver.state);
    while (this.#filled < this.#trace.timeS.length) this.#fill(this.#solver.time);
    return this.#trace;
  }

  #fill(t: number): void {
    const trace = this.#trace;
    const point = this.#filled++;
    const wheelTravel = this.#car.wheelTravel(this.#state);
    const { column } = this.#car;
    this.#car.derivative(t, this.#state, this.#row, 0);
    trace.wheelTravelMm[point] = wheelTravel;
    trace.compressionMm[point] = this.#car.compression(wheelTravel);
    trace.stopForceN[point] = Math.max(0, this.#row[column.stopForce]);
    trace.accelerationG[point] = this.#row[column.sprungAcceleration] / standardGravity;
    trace.bodyMm[point] = 1000 * this.#state[0] - this.#restMm;
    trace.roadMm[point] = 1000 * this.#car.roadHeight(t);
  }
}
