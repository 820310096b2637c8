import * as messages from "../../words/compiled/physics/impact.ts";
import type { Kinematics } from "../kinematics/kinematics.ts";
import { type DormandPrince, stageCount } from "./dormandPrince.ts";
import type { QuarterCar } from "./quarterCar.ts";

export const closingSpeedFormula = messages.greatestAsStopIs;

/** The greatest speed at which a stop closes over a run, mm/s. */
export class ClosingSpeed {
  greatest = 0;
  readonly #kinematics: Kinematics;
  readonly #car: QuarterCar;
  readonly #closing = new Float64Array(3);
  readonly #within: Float64Array;

  constructor(kinematics: Kinematics, car: QuarterCar) {
    this.#kinematics = kinematics;
    this.#car = car;
    this.#within = new Float64Array(car.stateCount);
  }

  take(state: Float64Array): void {
    this.#kinematics.evaluate(this.#car.wheelTravel(state), this.#closing);
    const apart = state[3] - state[2];
    this.greatest = Math.max(this.greatest, 1000 * this.#closing[1] * apart);
  }

  /** At the end of a step, and at the top of the wheel's speed within: there its rise, straight from end to end, is 0. */
  takeStep(solver: DormandPrince): void {
    const { rows } = solver;
    const end = (stageCount - 1) * this.#car.rowLength;
    const riseAtStart = rows[3] - rows[2];
    const riseAtEnd = rows[end + 3] - rows[end + 2];
    this.greatest = Math.max(this.greatest, rows[end + this.#car.column.closingSpeed]);
    if (!(riseAtStart > 0 && riseAtEnd < 0)) return;
    solver.prepareInterpolation();
    solver.interpolate(riseAtStart / (riseAtStart - riseAtEnd), this.#within);
    this.take(this.#within);
  }
}

/** Speed at which body and wheel part, mm/s; below 0 they come closer. */
export function partingSpeed(state: Float64Array): number {
  return 1000 * (state[2] - state[3]);
}
