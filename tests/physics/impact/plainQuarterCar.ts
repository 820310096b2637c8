import type { DesignEvent } from "../../../src/physics/fitment.ts";
import type { ImpactSetup } from "../../../src/physics/impact/impactSetup.ts";

/**
 * The quarter car and the stop's force written straight from their laws, with max() and ?: where these
 * change: what another author's solver is given. State: zs, zu, żs, żu (m, m/s), energy into and out of
 * the stop, J, then the forces q of the stop's branches, N.
 */
export interface PlainQuarterCar {
  readonly start: number[];
  readonly bumpEndS: number;
  readonly endS: number;
  /** N */
  readonly weight: number;
  derivative(t: number, y: readonly number[]): number[];
  /** Wheel travel mm, compression mm, stop force N, sprung acceleration m/s², travel speed m/s. */
  observe(t: number, y: readonly number[]): PlainObservation;
  /** The state here of one in which a branch stands as the part of g·F∞ that it has forgotten. */
  stateOf(y: Float64Array): number[];
}

interface PlainObservation {
  readonly wheelTravel: number;
  readonly compression: number;
  readonly stopForce: number;
  /** Before it is held at 0 or above. */
  readonly wholeForce: number;
  /** Of the stop, mm/s. */
  readonly closingSpeed: number;
  readonly acceleration: number;
  readonly travelSpeed: number;
  /** About rest, N; the tyre bears nothing at less the weight. */
  readonly tyreForce: number;
}

export function plainQuarterCar(setup: ImpactSetup, event: DesignEvent): PlainQuarterCar {
  const g = 9.80665;
  const speed = event.kind === "landing" ? 0 : event.speedKmPerH / 3.6;
  const bumpEndS = event.kind === "landing" ? 0 : event.lengthM / speed;
  const endS = event.kind === "landing" ? 0.6 : bumpEndS + 0.5;
  const road = (t: number) => {
    if (event.kind === "landing" || speed * t >= event.lengthM) return 0;
    const { heightM, lengthM } = event;
    if (event.kind === "obstacle") {
      return (heightM / 2) * (1 - Math.cos((2 * Math.PI * speed * t) / lengthM));
    }
    const radius = lengthM ** 2 / (8 * heightM) + heightM / 2;
    return Math.sqrt(radius ** 2 - (speed * t - lengthM / 2) ** 2) - (radius - heightM);
  };
  const closing = new Float64Array(3);
  const { dashpot, restLoss, staticShare, branches } = setup.atSpeed;
  const stopAt = (z: number, travelSpeed: number, q: readonly number[]) => {
    setup.kinematics.evaluate(z, closing);
    const [s = 0, slope = 0] = closing;
    const x = s - setup.gapMm;
    const closingSpeed = 1000 * slope * travelSpeed;
    const c = dashpot?.coefficient(x, closingSpeed) ?? 0;
    const loss = restLoss * Math.min(1, Math.max(-1, closingSpeed / 5));
    const held = q.reduce((sum, each) => sum + each, 0);
    const wholeForce = setup.stop.force(x) * (staticShare + loss) + held + c * closingSpeed;
    const force = x > 0 ? Math.max(0, wholeForce) : 0;
    const faded = branches.map(({ tauS, share }, index) => {
      const strained = x > 0 ? share * setup.stop.slope(x) * closingSpeed : 0;
      return strained - (q[index] as number) / tauS;
    });
    return { x, slope, closingSpeed, force, wholeForce, faded };
  };
  const relaxed = branches.map(() => 0);
  const rest = stopAt(setup.restTravelMm, 0, relaxed);
  const weight = (setup.sprungMassKg + setup.unsprungMassKg) * g;
  const forces = (t: number, y: readonly number[]) => {
    const [zs = 0, zu = 0, vs = 0, vu = 0] = y;
    const travelSpeed = vu - vs;
    const fromRest = 1000 * (zu - zs);
    const z = fromRest + setup.restTravelMm;
    const stop = stopAt(z, travelSpeed, y.slice(6));
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
    start: [0, 0, startSpeed, startSpeed, 0, 0, ...relaxed],
    bumpEndS,
    endS,
    weight,
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
        ...stop.faded,
      ];
    },
    observe(t, y) {
      const { z, travelSpeed, stop, suspension, tyre } = forces(t, y);
      return {
        wheelTravel: z,
        compression: stop.x,
        stopForce: stop.force,
        wholeForce: stop.wholeForce,
        closingSpeed: stop.closingSpeed,
        acceleration: suspension / setup.sprungMassKg,
        travelSpeed,
        tyreForce: tyre,
      };
    },
    stateOf(y) {
      setup.kinematics.evaluate(
        1000 * ((y[1] as number) - (y[0] as number)) + setup.restTravelMm,
        closing,
      );
      const curveForce = setup.stop.force((closing[0] as number) - setup.gapMm);
      const held = branches.map(
        ({ share }, index) => share * curveForce - (y[4 + index] as number),
      );
      return [...y.slice(0, 4), 0, 0, ...held];
    },
  };
}
