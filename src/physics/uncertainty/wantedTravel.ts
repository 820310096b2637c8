import type { Fitment, Ride, RideQuantity, UseRules } from "../fitment.ts";
import { levelPassedPerKm, zeroUpcrossingsPerSecond } from "../road/levelCrossings.ts";
import { restPosition, standardGravity } from "../road/restPosition.ts";
import { travelVariance } from "../road/roadResponse.ts";
import { progressiveContactFactor, type RoadCorner, type RoadTravel } from "../road/roadTravel.ts";
import { roadVelocityIntensity } from "../road/roughness.ts";
import type { StopCurve } from "../stop/stopCurve.ts";
import type { SharedDraws } from "./cornerDraws.ts";
import type { DrawnReading } from "./drawnReading.ts";

/** Every ride quantity, in the order in which it is listed. */
export const rideQuantities: readonly RideQuantity[] = [
  "unsprungMassKg",
  "wheelRateNPerMm",
  "tyreRateNPerMm",
  "damperBumpNsPerMm",
  "damperReboundNsPerMm",
  "payloadPerCornerKg",
];

/** Ride values that were estimated with a tolerance, as rectangular quantities. */
export function rideInDoubt(fitment: Fitment): readonly (DrawnReading & { name: RideQuantity })[] {
  const { ride } = fitment;
  const drawn: (DrawnReading & { name: RideQuantity })[] = [];
  for (const name of rideQuantities) {
    const mean = ride?.[name];
    const halfWidth = ride?.tolerances?.[name];
    if (mean === undefined || halfWidth === undefined) continue;
    if (halfWidth === 0) continue;
    drawn.push({ id: `ride.${name}`, name, mean, halfWidth, standardError: 0 });
  }
  return drawn;
}

/** A corner on the road, with the stop's whole curve. */
export type RoadCornerWithCurve = RoadCorner & { readonly stop: StopCurve };

/**
 * Free travel wanted z_need, mm, unladen and laden, as a function of the ride values alone, for draws
 * and differences where those were estimated; the geometry stays at its means (model.md, sections 4
 * and 6). NaN where a value is not above 0 or the payload is out of the layout's reach.
 */
export class WantedTravelModel {
  readonly #corner: RoadCornerWithCurve;
  readonly #speed: number;
  readonly #intensity: number;
  readonly #allowed: number;
  readonly #values: Record<RideQuantity, number>;
  readonly #closing = new Float64Array(3);

  constructor(corner: RoadCornerWithCurve, ride: Ride, rules: UseRules) {
    this.#corner = corner;
    this.#speed = rules.speedKmPerH / 3.6;
    this.#intensity = roadVelocityIntensity(rules.roadClass, this.#speed);
    this.#allowed =
      rules.allowedContactsPerKm * (corner.progressive ? progressiveContactFactor : 1);
    const value = (name: RideQuantity) => ride[name] ?? Number.NaN;
    this.#values = {
      unsprungMassKg: value("unsprungMassKg"),
      wheelRateNPerMm: value("wheelRateNPerMm"),
      tyreRateNPerMm: value("tyreRateNPerMm"),
      damperBumpNsPerMm: value("damperBumpNsPerMm"),
      damperReboundNsPerMm: value("damperReboundNsPerMm"),
      payloadPerCornerKg: value("payloadPerCornerKg"),
    };
  }

  set(name: RideQuantity, value: number): void {
    this.#values[name] = value;
  }

  unladen(): number {
    return this.#wanted(0);
  }

  laden(): number {
    const payload = this.#values.payloadPerCornerKg;
    return payload >= 0 ? this.#wanted(payload) : Number.NaN;
  }

  #wanted(payload: number): number {
    const mass = (this.#corner.cornerMassKg ?? Number.NaN) + payload;
    const { tyreRateNPerMm, damperBumpNsPerMm, damperReboundNsPerMm } = this.#values;
    const damping = 500 * (damperBumpNsPerMm + damperReboundNsPerMm);
    if (!(mass > 0 && tyreRateNPerMm > 0 && damping > 0)) return Number.NaN;
    const sigma = 1000 * Math.sqrt(travelVariance(this.#intensity, mass, damping));
    const upcrossings = zeroUpcrossingsPerSecond(1000 * tyreRateNPerMm, mass);
    const sag = payload === 0 ? 0 : this.#sag(payload);
    return sag + levelPassedPerKm(this.#allowed, sigma, upcrossings, this.#speed);
  }

  /** Newton's method from the spring alone; whatever does not settle goes to the bracketing solver. */
  #sag(payload: number): number {
    const { wheelRateNPerMm } = this.#values;
    if (!(wheelRateNPerMm > 0)) return Number.NaN;
    const { kinematics, stop, gapMm, travelToContactMm } = this.#corner;
    const load = payload * standardGravity;
    let z = load / wheelRateNPerMm;
    if (z <= travelToContactMm && z <= kinematics.range[1]) return z;
    const closing = this.#closing;
    for (let step = 0; step < 30; step++) {
      kinematics.evaluate(z, closing);
      const compression = (closing[0] as number) - gapMm;
      const ratio = closing[1] as number;
      const force = stop.force(compression);
      const rate =
        wheelRateNPerMm + stop.slope(compression) * ratio * ratio + force * (closing[2] as number);
      const change = (wheelRateNPerMm * z + force * ratio - load) / rate;
      z -= change;
      if (!(rate > 0) || z <= travelToContactMm) break;
      if (Math.abs(change) < 1e-9) return z;
    }
    const rest = restPosition({ kinematics, stop, gapMm, wheelRateNPerMm }, payload);
    return rest.ok ? rest.value : Number.NaN;
  }
}

/** Free travel wanted by one corner: a number each, or a number a draw; null where not known. */
export interface WantedTravels {
  readonly laden: number | Float64Array | null;
  readonly unladen: number | Float64Array | null;
}

/**
 * z_need of a corner for the draws: at the mean readings where no ride value carries a tolerance
 * (model.md, section 6), else drawn with those that do.
 */
export function wantedTravels(
  fitment: Fitment,
  corner: RoadCornerWithCurve,
  road: RoadTravel,
  rules: UseRules,
  draws: SharedDraws,
): WantedTravels {
  const laden = road.freeTravelNeededMm;
  const unladen = road.freeTravelNeededUnladenMm;
  const inDoubt = rideInDoubt(fitment);
  if (fitment.ride === undefined || inDoubt.length === 0) return { laden, unladen };
  const model = new WantedTravelModel(corner, fitment.ride, rules);
  const columns = inDoubt.map((quantity) => draws.column(quantity));
  const ladenDraws = laden === null ? null : new Float64Array(draws.samples);
  const unladenDraws = unladen === null ? null : new Float64Array(draws.samples);
  for (let draw = 0; draw < draws.samples; draw++) {
    for (let index = 0; index < inDoubt.length; index++) {
      const { name } = inDoubt[index] as { name: RideQuantity };
      model.set(name, (columns[index] as Float64Array)[draw] as number);
    }
    if (ladenDraws !== null) ladenDraws[draw] = model.laden();
    if (unladenDraws !== null) unladenDraws[draw] = model.unladen();
  }
  return { laden: ladenDraws, unladen: unladenDraws };
}
