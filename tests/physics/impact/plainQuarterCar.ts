import type { DesignEvent } from "../../../src/physics/fitment.ts";
import type { ImpactSetup } from "../../../src/physics/impact/impactSetup.ts";

/**
 * The quarter car written straight from model.md, section 5, with max() and ?: where the laws change:
 * what another author's solver is given. State: zs, zu, żs, żu (m, m/s), then energy into and out of
 * the stop, J.
 */
export interface PlainQuarterCar {
  readonly start: number[];
  readonly bumpEndS: number;
  readonly endS: number;
  derivative(t: number, y: readonly number[]): number[];
  /** Wheel travel mm, compression mm, stop force N, sprung acceleration m/s², travel speed m/s. */
  observe(t: number, y: readonly number[]): PlainObservation;
}

export interface PlainObservation {
  readonly wheelTravel: number;
  readonly compression: number;
  readonly stopForce: number;
  readonly acceleration: number;
  readonly travelSpeed: number;
}

export function plainQuarterCar(setup: ImpactSetup, event: DesignEvent): PlainQuarterCar {
  const g = 9.80665;
  const speed = event.kind === "obstacle" ? event.speedKmPerH / 3.6 : 0;
  const bumpEndS = event.kind === "obstacle" ? event.lengthM / speed : 0;
  const endS = event.kind === "obstacle" ? bumpEndS + 0.5 : 0.6;
  const road = (t: number) =>
    event.kind === "obstacle" && speed * t < event.lengthM
      ? (event.heightM / 2) * (1 - Math.cos((2 * Math.PI * speed * t) / event.lengthM))
      : 0;
  const closing = new Float64Array(3);
  const stopAt = (z: number, travelSpeed: number) => {
    setup.kinematics.evaluate(z, closing);
    const [s = 0, slope = 0] = closing;
    const x = s - setup.gapMm;
    const speedOfClosing = 1000 * slope * travelSpeed;
    const c = setup.damping?.coefficient(x, speedOfClosing) ?? 0;
    const force = x > 0 ? Math.max(0, setup.stop.force(x) + c * speedOfClosing) : 0;
    return { x, slope, force };
  };
  const rest = stopAt(setup.restTravelMm, 0);
  const weight = (setup.sprungMassKg + setup.unsprungMassKg) * g;
  const forces = (t: number, y: readonly number[]) => {
    const [zs = 0, zu = 0, vs = 0, vu = 0] = y;
    const travelSpeed = vu - vs;
    const fromRest = 1000 * (zu - zs);
    const z = fromRest + setup.restTravelMm;
    const stop = stopAt(z, travelSpeed);
    const c = travelSpeed > 0 ? setup.damperBumpNsPerMm : setup.damperReboundNsPerMm;
    const suspension =
      setup.wheelRateNPerMm * fromRest +
      c * 1000 * travelSpeed +
      stop.force * stop.slope -
      rest.force * rest.slope +
      2000 * Math.max(0, z - (setup.hardLimitMm ?? Number.POSITIVE_INFINITY));
    const tyre = Math.max(-weight, setup.tyreRateNPerMm * 1000 * (road(t) - zu));
    return { z, travelSpeed, stop, suspension, tyre };
  };
  const startSpeed = event.kind === "landing" ? -Math.sqrt(2 * g * event.heightM) : 0;
  return {
    start: [0, 0, startSpeed, startSpeed, 0, 0],
    bumpEndS,
    endS,
    derivative(t, y) {
      const { travelSpeed, stop, suspension, tyre } = forces(t, y);
      const power = stop.force * stop.slope * travelSpeed;
      return [
        y[2] as number,
        y[3] as number,
        suspension / setup.sprungMassKg,
        (tyre - suspension) / setup.unsprungMassKg,
        Math.max(0, power),
        Math.max(0, -power),
      ];
    },
    observe(t, y) {
      const { z, travelSpeed, stop, suspension } = forces(t, y);
      return {
        wheelTravel: z,
        compression: stop.x,
        stopForce: stop.force,
        acceleration: suspension / setup.sprungMassKg,
        travelSpeed,
      };
    },
  };
}
