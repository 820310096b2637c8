import type { MotionFault } from "./layoutMotion.ts";

/** A factor on the wheel's travel that can be computed with: far beyond what is seen on vehicles. */
export function isFactor(value: number): boolean {
  return value >= 1e-3 && value <= 1e3;
}

/** A factor on the wheel's travel as one number a draw, which stands among the readings. */
export class DrawnFactor {
  value = 1;
  readonly #place: number;

  constructor(place: number) {
    this.#place = place;
  }

  set(readings: Float64Array, from: number): MotionFault | null {
    this.value = readings[from + this.#place];
    return isFactor(this.value) ? null : "wheelDoesNotRise";
  }
}
