import * as messages from "../../words/compiled/physics/impact.ts";
import type { DesignEvent, HumpEvent, ObstacleEvent } from "../fitment.ts";
import { fail, type Outcome, succeed } from "../outcome.ts";
import { standardGravity } from "../standardGravity.ts";

export const startFormulas = {
  touchDown: { text: messages.speedAtTouchDown, unit: "m/s" },
  timeOver: messages.timeOverObstacleL,
} as const;

/** Under the wheel while Vt < L. */
export const roadFormulas = {
  obstacle: "road = H/2·(1 − cos 2πVt/L)",
  hump: "road = √(R² − (Vt − L/2)²) − (R − H), R = L²/(8H) + H/2",
} as const;

/** Speed of a fall from a height in m, m/s. */
export function touchDownSpeed(height: number): number {
  return Math.sqrt(2 * standardGravity * height);
}

/** Time on a bump, s. */
export function timeOver({
  lengthM,
  speedKmPerH,
}: Pick<ObstacleEvent, "lengthM" | "speedKmPerH">): number {
  return lengthM / (speedKmPerH / 3.6);
}

/** Road height over time while the wheel is on the bump. m, s; up positive. */
interface BumpProfile {
  /** m */
  height(t: number): number;
  /** Speed at which the road rises under the wheel, m/s. */
  speed(t: number): number;
  /** Greatest of these speeds, m/s. */
  readonly greatestSpeed: number;
  /** Time on the bump, s; 0 on flat ground. */
  readonly endS: number;
}

/** What one design event puts in: a bump, and how the masses move at its start. */
export interface RoadProfile {
  readonly bump: BumpProfile;
  /** Length of the run, s. */
  readonly endS: number;
  /** Speed of both masses at the start, m/s; below 0 when they fall. */
  readonly startSpeed: number;
}

/** Time that a run goes on past the bump, s, and the length of a landing, s. Source: common practice. */
const afterBumpS = 0.5;
const landingS = 0.6;

const flatGround: BumpProfile = { height: () => 0, speed: () => 0, greatestSpeed: 0, endS: 0 };

/** road = H/2·(1 − cos(2πVt/L)) while Vt < L. */
class RoundedBump implements BumpProfile {
  readonly greatestSpeed: number;
  readonly endS: number;
  readonly #amplitude: number;
  readonly #angularSpeed: number;

  constructor(event: ObstacleEvent) {
    this.endS = timeOver(event);
    this.#amplitude = event.heightM / 2;
    this.#angularSpeed = (2 * Math.PI) / this.endS;
    this.greatestSpeed = this.#amplitude * this.#angularSpeed;
  }

  height(t: number): number {
    return this.#amplitude * (1 - Math.cos(this.#angularSpeed * t));
  }

  speed(t: number): number {
    return this.greatestSpeed * Math.sin(this.#angularSpeed * t);
  }
}

/**
 * A circular segment, with u = Vt − L/2 and R = L²/(8H) + H/2:
 * road = √(R² − u²) − (R − H), written as H − u²/(R + √(R² − u²)) so that a low hump loses no digits.
 */
class CircularHump implements BumpProfile {
  readonly greatestSpeed: number;
  readonly endS: number;
  readonly #height: number;
  readonly #halfLength: number;
  readonly #speed: number;
  readonly #radius: number;

  constructor({ heightM, lengthM, speedKmPerH }: HumpEvent) {
    this.#speed = speedKmPerH / 3.6;
    this.endS = lengthM / this.#speed;
    this.#height = heightM;
    this.#halfLength = lengthM / 2;
    this.#radius = lengthM ** 2 / (8 * heightM) + heightM / 2;
    this.greatestSpeed = Math.abs(this.speed(0));
  }

  height(t: number): number {
    const along = this.#speed * t - this.#halfLength;
    return this.#height - along ** 2 / (this.#radius + this.#above(along));
  }

  speed(t: number): number {
    const along = this.#speed * t - this.#halfLength;
    return (-this.#speed * along) / this.#above(along);
  }

  /** Height above the circle's middle, m. */
  #above(along: number): number {
    return Math.sqrt(this.#radius ** 2 - along ** 2);
  }
}

/**
 * Obstacle: a rounded bump, then flat. Hump: a circular segment, as road humps of 3.7 m × 0.075 to
 * 0.10 m are built (United Kingdom regulations as reported in ITE and ASCE papers), then flat. Landing:
 * both masses come down at √(2gh) from their rest position. The obstacle and the landing are common
 * practice.
 *
 * Error: "eventNotUsable" where a height is negative or not a number, a length or speed is not above 0,
 * or a hump is half as high as long or more.
 */
export function roadProfile(event: DesignEvent): Outcome<RoadProfile> {
  const finite = (value: number) => Number.isFinite(value) && value <= 1e6;
  if (event.kind === "landing") {
    if (!(event.heightM >= 0 && finite(event.heightM))) {
      return fail("eventNotUsable", [messages.heightOfLandingMust]);
    }
    return succeed({
      bump: flatGround,
      endS: landingS,
      startSpeed: -touchDownSpeed(event.heightM),
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
    return fail("eventNotUsable", [messages.bumpNeedsHeightOf]);
  }
  if (event.kind === "hump" && !(2 * event.heightM < event.lengthM)) {
    return fail("eventNotUsable", [messages.speedBumpMustBe]);
  }
  const bump = event.kind === "hump" ? new CircularHump(event) : new RoundedBump(event);
  return succeed({ bump, endS: bump.endS + afterBumpS, startSpeed: 0 });
}
