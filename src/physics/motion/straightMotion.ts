import { DrawnFactor } from "./drawnFactor.ts";
import { LayoutMotion, type MotionFault } from "./layoutMotion.ts";
import type { MeasuredAngle, MeasuredLength } from "./measuredQuantity.ts";

/** A straight guide has no reach of its own; this bound only keeps every number finite, mm. */
const farthest = 1e6;

/** Which wheels of a beam axle rise. */
export type AxleMovement = "both" | "one";

/** Track T between the tires' middles and spacing S of the stops, mm. */
interface AxleWidths {
  readonly track: MeasuredLength;
  readonly stopSpacing: MeasuredLength;
}

export const straightFormulas = {
  ratio: "R = 1 / cos β",
  travel: "z = s / cos β",
  closing: "s = z·cos β",
} as const;

/** A beam axle with one wheel up turns about the other wheel's contact. */
export const oneWheelFormulas = {
  ratio: "R = 2·T / [(T + S)·cos β]",
  travel: "z = 2·T·s / [(T + S)·cos β]",
  closing: "s = z·cos β·(T + S)/(2·T)",
} as const;

/**
 * s in proportion to z: a strut by its lean alone, and a beam axle.
 *
 * Strut, and a beam axle with both wheels up together: s = z·cos β, the rise along the stop's axis. A beam
 * axle with one wheel up and the other on the ground: s = z·cos β·(T + S)/(2T), since it turns about
 * the other wheel's contact and the stop stands (T + S)/2 away from it. Every z found from s is
 * multiplied by m. A strut's wheel leans as it rises, which this leaves out: up to 5.4 mm at 85 mm on
 * published geometries.
 */
export class StraightMotion extends LayoutMotion {
  readonly #lean: MeasuredAngle;
  readonly #oneWheel: AxleWidths | null;
  readonly #scale: DrawnFactor;
  #stopPerWheel = 1;

  /** @param oneWheel widths of an axle with one wheel up; null for all others */
  constructor(lean: MeasuredAngle, oneWheel: AxleWidths | null, scalePlace: number) {
    super();
    this.#lean = lean;
    this.#oneWheel = oneWheel;
    this.#scale = new DrawnFactor(scalePlace);
  }

  set(readings: Float64Array, from = 0): MotionFault | null {
    const fault = this.#lean.set(readings, from);
    if (fault !== null) return fault;
    let share = 1;
    if (this.#oneWheel !== null) {
      const { track, stopSpacing } = this.#oneWheel;
      const widthFault = track.set(readings, from) ?? stopSpacing.set(readings, from);
      if (widthFault !== null) return widthFault;
      share = (track.value + stopSpacing.value) / (2 * track.value);
    }
    const scaleFault = this.#scale.set(readings, from);
    this.#stopPerWheel = (this.#lean.cos * share) / this.#scale.value;
    return scaleFault;
  }

  range(): readonly [number, number] {
    return [-farthest, farthest];
  }

  closingInto(out: Float64Array, place: number, z: number): boolean {
    out[place] = z * this.#stopPerWheel;
    return Math.abs(z) <= farthest;
  }

  wheelTravelInto(out: Float64Array, place: number, s: number): boolean {
    const z = s / this.#stopPerWheel;
    out[place] = z;
    return Math.abs(z) <= farthest;
  }

  evaluate(z: number, out: Float64Array): void {
    out[0] = z * this.#stopPerWheel;
    out[1] = this.#stopPerWheel;
    out[2] = 0;
  }

  armPointTravelInto(): boolean {
    return false;
  }

  standAt(): null {
    return null;
  }
}
