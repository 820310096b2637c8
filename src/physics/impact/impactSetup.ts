import * as messages from "../../words/compiled/physics/impact.ts";
import { cornerAtMeans } from "../budget/cornerAtMeans.ts";
import type { Corner, Fitment, Ride, RideQuantity } from "../fitment.ts";
import type { Kinematics } from "../kinematics/kinematics.ts";
import { fail, type Outcome, succeed } from "../outcome.ts";
import { readingName } from "../readingNames.ts";
import { heldAtRide } from "../road/heldAtRide.ts";
import { restPosition } from "../road/restPosition.ts";
import { capital } from "../sentence.ts";
import { curveAtRest, type StopAtSpeed, staticOnly, stopAtSpeed } from "../stop/stopAtSpeed.ts";
import { type StopCurve, stopCurve } from "../stop/stopCurve.ts";
import { checkedMean } from "../uncertainty/checkedMean.ts";

/** One corner at its mean readings, ready to be put through design events. All at the wheel. */
export interface ImpactSetup {
  readonly kinematics: Kinematics;
  readonly stop: StopCurve;
  /** What tests at speed show of the stop; `staticOnly` where there are none. */
  readonly atSpeed: StopAtSpeed;
  /** Gap along the stop's axis at the measured ride height, mm; below 0 = pressed in. */
  readonly gapMm: number;
  /** What the stop held up when the ride height was measured, N at the wheel. */
  readonly heldAtRideN: number;
  /** Wheel travel to the first hard limit, mm; null where none was measured. */
  readonly hardLimitMm: number | null;
  /** With the payload. */
  readonly sprungMassKg: number;
  readonly unsprungMassKg: number;
  readonly payloadKg: number;
  readonly wheelRateNPerMm: number;
  readonly tyreRateNPerMm: number;
  readonly damperBumpNsPerMm: number;
  readonly damperReboundNsPerMm: number;
  /** Wheel travel at rest with this stop and payload, from the measured ride height, mm. */
  readonly restTravelMm: number;
}

export interface ImpactState {
  /** With the payload of the ride data. */
  readonly loaded: boolean;
  /** Added to the stop along its axis by a spacer, mm: closes the gap by as much. */
  readonly extraHeightMm?: number;
  /** Factor on the stop's static curve; its damping stays. */
  readonly stopScale?: number;
}

const needed = [
  "unsprungMassKg",
  "wheelRateNPerMm",
  "tyreRateNPerMm",
  "damperBumpNsPerMm",
  "damperReboundNsPerMm",
] as const satisfies readonly RideQuantity[];

type NeededRide = Required<Pick<Ride, (typeof needed)[number] | "payloadPerCornerKg">>;

/**
 * The quarter car of one corner at its mean readings. W and the sprung mass hold the
 * payload in the loaded state; rest is where spring and stop carry that payload.
 *
 * Errors: "rideUnknown" naming the ride value or corner weight that is missing; "rideNotUsable" where
 * one cannot be; "noSprungMass" where the unsprung mass leaves none of the corner's; and whatever the
 * kinematics, the stop or the rest position name.
 */
export function impactSetupOf(
  fitment: Fitment,
  corner: Corner,
  state: ImpactState,
): Outcome<ImpactSetup> {
  const atMeans = cornerAtMeans(fitment, corner);
  if (!atMeans.ok) return atMeans;
  const { kinematics, gapMm, limit } = atMeans.value;
  const curve = stopCurve(fitment.stop);
  if (!curve.ok) return curve;
  const atSpeed = stopAtSpeed(fitment.stop);
  if (!atSpeed.ok) return atSpeed;
  const held = heldAtRide(fitment, corner, kinematics);
  if (!held.ok) return held;
  if (corner.cornerMassKg === undefined) return unknown(`${corner.side}.cornerMassKg`);
  const mass = checkedMean(corner.cornerMassKg, `${corner.side}.cornerMassKg`, "mass");
  if (!mass.ok) return mass;
  const ride = neededRide(fitment.ride ?? {}, state.loaded);
  if (!ride.ok) return ride;
  const { unsprungMassKg, payloadPerCornerKg: payloadKg, ...rates } = ride.value;
  const sprungMassKg = mass.value - unsprungMassKg + payloadKg;
  if (!(sprungMassKg > 0)) {
    return fail("noSprungMass", [messages.cornerWeightMustBe], `${corner.side}.cornerMassKg`);
  }
  return settled(
    {
      kinematics,
      stop: curve.value,
      atSpeed: atSpeed.value,
      gapMm,
      hardLimitMm: limit?.travelMm ?? null,
      heldAtRideN: held.value,
      sprungMassKg,
      unsprungMassKg,
      payloadKg,
      ...rates,
      restTravelMm: 0,
    },
    state,
  );
}

/**
 * The same corner with the stop's curve scaled or its height changed, at rest anew. What the stop held up
 * as the vehicle was measured stays: the one that was measured held it.
 */
export function settled(
  setup: ImpactSetup,
  change: Pick<ImpactState, "extraHeightMm" | "stopScale">,
): Outcome<ImpactSetup> {
  const scale = change.stopScale ?? 1;
  const extra = change.extraHeightMm ?? 0;
  if (!(scale > 0 && Number.isFinite(scale) && Number.isFinite(extra))) {
    return fail("changeNotUsable", [messages.stiffnessOrHeightTo]);
  }
  const changed = {
    ...setup,
    stop: scale === 1 ? setup.stop : setup.stop.scaled(scale),
    gapMm: setup.gapMm - extra,
  };
  const rest = restPosition(
    { ...changed, stop: curveAtRest(changed.stop, changed.atSpeed) },
    setup.payloadKg,
  );
  return rest.ok ? succeed({ ...changed, restTravelMm: rest.value }) : rest;
}

/** The same corner without its payload, at rest anew. */
export function unladen(setup: ImpactSetup): Outcome<ImpactSetup> {
  const sprungMassKg = setup.sprungMassKg - setup.payloadKg;
  return settled({ ...setup, sprungMassKg, payloadKg: 0 }, {});
}

/**
 * The same corner with a stop of the same static curve that loses nothing, at rest anew: what a stop
 * tested at speed is shown beside.
 */
export function undampedTwin(setup: ImpactSetup): Outcome<ImpactSetup> {
  return settled({ ...setup, atSpeed: staticOnly }, {});
}

function unknown(id: string): Outcome<never> {
  return fail(
    "rideUnknown",
    [messages.impactsCannotBeWorked({ readingName: readingName(id) })],
    id,
  );
}

function neededRide(ride: Ride, loaded: boolean): Outcome<NeededRide> {
  const names: readonly RideQuantity[] = loaded ? [...needed, "payloadPerCornerKg"] : needed;
  for (const name of names) {
    const value = ride[name];
    const id = `ride.${name}`;
    if (value === undefined) return unknown(id);
    const mayBeZero = name === "payloadPerCornerKg" || name.startsWith("damper");
    if (!(value < 1e9 && (mayBeZero ? value >= 0 : value > 0))) {
      return fail(
        "rideNotUsable",
        [messages.cannotHaveThisValue({ readingName: capital(readingName(id)) })],
        id,
      );
    }
  }
  const known = ride as NeededRide;
  return succeed({ ...known, payloadPerCornerKg: loaded ? known.payloadPerCornerKg : 0 });
}
