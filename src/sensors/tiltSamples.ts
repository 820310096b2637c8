import { medianOf, robustScatter } from "./median.ts";
import {
  degreesBetween,
  dot,
  meanUp,
  opposite,
  type Up,
  upFromAcceleration,
  upFromOrientation,
} from "./upDirection.ts";

/** Samples of this long make one reading. */
const windowMs = 1000;
/** Time between samples: 40 in a window. */
export const sampleEveryMs = 25;
/** A sensor that has said nothing for so long is not believed any more. */
const quietMs = 1500;
/** A window with fewer events than this may be one that the browser was too busy to tell of. */
const fewestEvents = 3;

/** Stillness: what the halves of a window may differ by, and the scatter, degrees. Common practice. */
const mostDrift = 0.3;
const mostTurning = 0.6;
const mostScatter = 0.5;

export type TiltSource = "orientation" | "motion";

interface Sample {
  readonly at: number;
  /** Null: moved too hard to tell where up is. */
  readonly up: Up | null;
}

/** What one window says of an angle. */
export interface TiltReading {
  /** Median, degrees, as the sensor has it: no offset taken off. */
  readonly degrees: number;
  /** 1.4826 × MAD of the samples, degrees. */
  readonly scatterDegrees: number;
  readonly up: Up;
  readonly source: TiltSource;
}

export type TiltState =
  /** Nothing has come from the sensor yet, or nothing any more. */
  | { readonly state: "silent" }
  | { readonly state: "moving"; readonly up: Up | null; readonly degrees: number | null }
  | { readonly state: "still"; readonly reading: TiltReading };

/**
 * Takes the sensor's events as they come and looks at them at even times. Orientation goes before
 * acceleration, which browsers round to 0.1 m/s² (0.6°). A browser sends no orientation event while
 * nothing changes, so the last one holds between them, as long as the acceleration, which comes all the
 * time, says that the sensor lives. Some browsers give the acceleration with its sign reversed: its sign is taken from
 * the orientation, wherever both are there. Times in ms, of any one clock.
 */
export class TiltSamples {
  #orientation: Up | null = null;
  #acceleration: Up | null = null;
  #accelerationSign: 1 | -1 = 1;
  #jolted = false;
  #lastEvent = Number.NEGATIVE_INFINITY;
  #events: number[] = [];
  #samples: Sample[] = [];

  /** True once a sensor has given a number: an event without any comes where there is none. */
  get heard(): boolean {
    return this.#lastEvent > Number.NEGATIVE_INFINITY;
  }

  get source(): TiltSource {
    return this.#orientation === null ? "motion" : "orientation";
  }

  orientation(at: number, beta: number | null, gamma: number | null): void {
    const up = upFromOrientation(beta, gamma);
    if (up === null) return;
    this.#orientation = up;
    this.#hear(at);
  }

  motion(at: number, x: number | null, y: number | null, z: number | null): void {
    if (x === null || y === null || z === null) return;
    const up = upFromAcceleration(x, y, z);
    this.#hear(at);
    this.#jolted = up === null;
    if (up === null) return;
    if (this.#orientation !== null) {
      const along = dot(up, this.#orientation);
      if (Math.abs(along) > 0.5) this.#accelerationSign = along > 0 ? 1 : -1;
    }
    this.#acceleration = this.#accelerationSign === 1 ? up : opposite(up);
  }

  #hear(at: number): void {
    this.#lastEvent = at;
    this.#events.push(at);
  }

  /** Looks at the sensor; to be called every `sampleEveryMs`. */
  sample(at: number): void {
    const up = this.#jolted ? null : (this.#orientation ?? this.#acceleration);
    this.#samples.push({ at, up });
    const begin = at - windowMs;
    let first = 0;
    while ((this.#samples[first]?.at ?? at) < begin) first++;
    if (first > 0) this.#samples = this.#samples.slice(first);
    this.#events = this.#events.filter((event) => event >= begin);
  }

  /** The last window as an angle. `since`: only what came after that time counts. */
  state(at: number, angleOf: (up: Up) => number, since = Number.NEGATIVE_INFINITY): TiltState {
    if (at - this.#lastEvent > quietMs) return { state: "silent" };
    const samples = this.#samples.filter((sample) => sample.at >= since);
    const ups = samples.flatMap(({ up }) => (up === null ? [] : [up]));
    const up = meanUp(ups.slice(-6));
    if (up === null) return { state: "moving", up: null, degrees: null };
    const angles = ups.map(angleOf);
    const degrees = medianOf(angles.slice(-6));
    const moving: TiltState = { state: "moving", up, degrees };
    const span = (samples.at(-1)?.at ?? 0) - (samples[0]?.at ?? 0);
    // A window is whole with nine tenths of its time and none of its samples lost to a knock.
    if (span < 0.9 * windowMs || ups.length < samples.length || ups.length < 10) return moving;
    if (this.#events.filter((event) => event >= since).length < fewestEvents) return moving;
    const half = angles.length >> 1;
    const drift = Math.abs(medianOf(angles.slice(0, half)) - medianOf(angles.slice(half)));
    const [early, late] = [meanUp(ups.slice(0, half)), meanUp(ups.slice(half))];
    const turning = early === null || late === null ? 180 : degreesBetween(early, late);
    const scatterDegrees = robustScatter(angles);
    if (drift > mostDrift || turning > mostTurning || scatterDegrees > mostScatter) return moving;
    return {
      state: "still",
      reading: {
        degrees: medianOf(angles),
        scatterDegrees,
        up: meanUp(ups) ?? up,
        source: this.source,
      },
    };
  }
}
