import type { DesignEvent } from "../fitment.ts";
import { fail, type Outcome, succeed } from "../outcome.ts";
import { standardGravity } from "../road/restPosition.ts";

/**
 * What one design event puts in: road height over time, and how the masses move at its start.
 * m, s; up positive.
 */
export interface RoadProfile {
  /** Half of the bump's height, m; 0 on flat ground. */
  readonly amplitude: number;
  /** 2πV/L of the bump, rad/s; 0 on flat ground. */
  readonly angularSpeed: number;
  /** Time on the bump, s; 0 on flat ground. */
  readonly bumpEndS: number;
  /** Length of the run, s. */
  readonly endS: number;
  /** Speed of both masses at the start, m/s; below 0 when they fall. */
  readonly startSpeed: number;
}

/** Time that a run goes on past the bump, s, and the length of a landing, s. Source: model section 5. */
const afterBumpS = 0.5;
const landingS = 0.6;

/**
 * Obstacle: road = H/2·(1 − cos(2πVt/L)) while Vt < L, then flat. Landing: both masses come down at
 * √(2gh) from their rest position. Source: model section 5 (common practice).
 *
 * Error: "eventNotUsable" where a height is negative or not a number, or a length or speed is not
 * above 0.
 */
export function roadProfile(event: DesignEvent): Outcome<RoadProfile> {
  const finite = (value: number) => Number.isFinite(value) && value <= 1e6;
  if (event.kind === "landing") {
    if (!(event.heightM >= 0 && finite(event.heightM))) {
      return fail("eventNotUsable", ["The height of the landing must be 0 or more. Correct it."]);
    }
    return succeed({
      amplitude: 0,
      angularSpeed: 0,
      bumpEndS: 0,
      endS: landingS,
      startSpeed: -Math.sqrt(2 * standardGravity * event.heightM),
    });
  }
  const speed = event.speedKmPerH / 3.6;
  const usable =
    event.heightM >= 0 &&
    event.lengthM > 0 &&
    speed > 0 &&
    finite(event.heightM) &&
    finite(event.lengthM) &&
    finite(speed) &&
    finite(event.lengthM / speed);
  if (!usable) {
    return fail("eventNotUsable", [
      "The bump needs a height of 0 or more, and a length and a speed above 0. Correct them.",
    ]);
  }
  const bumpEndS = event.lengthM / speed;
  return succeed({
    amplitude: event.heightM / 2,
    angularSpeed: (2 * Math.PI) / bumpEndS,
    bumpEndS,
    endS: bumpEndS + afterBumpS,
    startSpeed: 0,
  });
}
