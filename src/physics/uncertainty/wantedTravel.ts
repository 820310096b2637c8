import { recordedGapOf } from "../budget/gap.ts";
import type { Corner, Fitment, Ride, UseRules } from "../fitment.ts";
import { rideQuantities } from "../readings/rideReadings.ts";
import { levelPassedPerKm, zeroUpcrossingsPerSecond } from "../road/levelCrossings.ts";
import { payloadForce } from "../road/restPosition.ts";
import { travelVariance } from "../road/roadResponse.ts";
import { type RoadCorner, type RoadTravel, wantedContacts } from "../road/roadTravel.ts";
import { roadVelocityIntensity } from "../road/roughness.ts";
import { staticShareDoubt } from "../stop/allowedLaws.ts";
import type { StopCurve } from "../stop/stopCurve.ts";
import type { WantedTravel } from "./cornerDraws.ts";
import type { DrawnReading } from "./drawnReading.ts";
import type { SharedDraws } from "./sharedDraws.ts";

/** A ride value that was estimated with a tolerance, and its place in `rideQuantities`. */
export type RideInDoubt = DrawnReading & { readonly place: number };

/**
 * The places, beside the ride quantities, of the factors on all forces of the stop that held the vehicle
 * up: one of a curve that is an estimate, one of the test that tells what remains at rest.
 */
const stopForces = rideQuantities.length;
const testedShare = stopForces + 1;

/**
 * The ride values that carry a tolerance, and, where the stop held the vehicle up as that was measured, the
 * forces of one whose curve is an estimate, as rectangular quantities; what its test leaves open of the force
 * at rest, as a normal one. None for a stop made to carry, whose early contact is judged without a
 * probability.
 */
export function rideInDoubt(fitment: Fitment): readonly RideInDoubt[] {
  const { ride, stop, recordedStop = stop } = fitment;
  if (stop.duty === "carry") return [];
  const halfWidth = recordedStop.estimated?.forceShare ?? 0;
  const standardError = staticShareDoubt(recordedStop);
  if (!fitment.corners.some((corner) => isHeldUp(fitment, corner))) return ridesInDoubt(ride);
  const factor = { mean: 1, halfWidth: 0, standardError: 0 };
  const forces = { ...factor, id: "stop.curve" as const, place: stopForces, halfWidth };
  const atRest = { ...factor, id: "stop.testDoubt" as const, place: testedShare, standardError };
  return [
    ...ridesInDoubt(ride),
    ...(halfWidth > 0 ? [forces] : []),
    ...(standardError > 0 ? [atRest] : []),
  ];
}

function isHeldUp(fitment: Fitment, corner: Corner): boolean {
  const gap = recordedGapOf(fitment, corner);
  return gap.ok && gap.value !== null && gap.value < 0;
}

function ridesInDoubt(ride: Ride | undefined): readonly RideInDoubt[] {
  return rideQuantities.flatMap((name, place) => {
    const mean = ride?.[name];
    const halfWidth = ride?.tolerances?.[name];
    return mean === undefined || halfWidth === undefined || halfWidth === 0
      ? []
      : [{ id: `ride.${name}` as const, place, mean, halfWidth, standardError: 0 }];
  });
}

/** A corner on the road, with the stop's whole curve. */
export type RoadCornerWithCurve = RoadCorner & { readonly stop: StopCurve };

const wheelRate = rideQuantities.indexOf("wheelRateNPerMm");
const tyreRate = rideQuantities.indexOf("tyreRateNPerMm");
const bumpDamping = rideQuantities.indexOf("damperBumpNsPerMm");
const reboundDamping = rideQuantities.indexOf("damperReboundNsPerMm");
const payload = rideQuantities.indexOf("payloadPerCornerKg");

/** What counts of a corner besides its ride values. */
type WantedCorner = Pick<RoadCorner, "heldAtRideN" | "progressive" | "cornerMassKg">;

/**
 * Free travel wanted z_need, mm, unladen and laden, as a function of the ride values alone, for draws
 * and differences where those were estimated; the geometry stays at its means. NaN where a value is not
 * above 0.
 */
export class WantedTravelModel {
  readonly #corner: WantedCorner;
  readonly #speed: number;
  readonly #intensity: number;
  readonly #allowed: number;
  /** By place in `rideQuantities`, NaN where not known; then the factors on the stop's forces. */
  readonly #values: Float64Array;
  readonly #kurtosis: UseRules["roadKurtosis"];

  constructor(corner: WantedCorner, ride: Ride, rules: UseRules) {
    this.#corner = corner;
    this.#speed = rules.speedKmPerH / 3.6;
    this.#kurtosis = rules.roadKurtosis;
    this.#intensity = roadVelocityIntensity(rules.roadClass, this.#speed);
    this.#allowed = wantedContacts(rules, corner.progressive);
    this.#values = Float64Array.of(...rideQuantities.map((name) => ride[name] ?? Number.NaN), 1, 1);
  }

  /** @param place of the quantity in `rideQuantities` */
  set(place: number, value: number): void {
    this.#values[place] = value;
  }

  unladen(): number {
    return this.#wanted(0);
  }

  laden(): number {
    const load = this.#values[payload];
    return load >= 0 ? this.#wanted(load) : Number.NaN;
  }

  #wanted(payloadKg: number): number {
    const values = this.#values;
    const mass = (this.#corner.cornerMassKg ?? Number.NaN) + payloadKg;
    const tyre = 1000 * values[tyreRate];
    const damping = 500 * (values[bumpDamping] + values[reboundDamping]);
    if (!(mass > 0 && tyre > 0 && damping > 0)) return Number.NaN;
    const sigma = 1000 * Math.sqrt(travelVariance(this.#intensity, mass, damping));
    const zeroUpcrossings = zeroUpcrossingsPerSecond(tyre, mass);
    const rate = values[wheelRate];
    const load = payloadForce(payloadKg) + this.#heldAtRide();
    if (load !== 0 && !(rate > 0)) return Number.NaN;
    const rest = load === 0 ? 0 : load / rate;
    return (
      rest +
      levelPassedPerKm(this.#allowed, {
        sigma,
        zeroUpcrossings,
        speed: this.#speed,
        kurtosis: this.#kurtosis,
      })
    );
  }

  #heldAtRide(): number {
    const factor = this.#values[stopForces] * this.#values[testedShare];
    return this.#corner.heldAtRideN * factor;
  }
}

/** Free travel wanted by one corner; null where not known. */
export interface WantedTravels {
  readonly laden: WantedTravel | null;
  readonly unladen: WantedTravel | null;
}

/**
 * z_need of a corner for the draws: at the mean readings where no ride value carries a tolerance,
 * else drawn with those that do.
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
  if (inDoubt.length === 0) return { laden, unladen };
  const model = new WantedTravelModel(corner, fitment.ride ?? {}, rules);
  const parts = inDoubt.map((quantity) => ({
    place: quantity.place,
    draws: draws.of(quantity),
  }));
  const drawn = (wanted: () => number) => (draw: number) => {
    for (const { place, draws } of parts) model.set(place, draws.at(draw));
    return wanted();
  };
  return {
    laden: laden === null ? null : drawn(() => model.laden()),
    unladen: unladen === null ? null : drawn(() => model.unladen()),
  };
}
