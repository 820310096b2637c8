import * as messages from "../../words/compiled/physics/road.ts";
import * as termNames from "../../words/compiled/physics/terms.ts";
import type { RoadClass, UseRules } from "../fitment.ts";
import { type Fault, type FieldPath, fail, type Outcome, succeed } from "../outcome.ts";
import type { Message } from "../sentence.ts";
import { levelPassedPerKm, upcrossingsPerKm, zeroUpcrossingsPerSecond } from "./levelCrossings.ts";
import { payloadForce, type RestCorner, restPosition, springRest } from "./restPosition.ts";
import { travelVariance } from "./roadResponse.ts";
import { roadVelocityIntensity } from "./roughness.ts";

/** A stop that comes in gently may be met this many times as often. Source: common practice. */
export const progressiveContactFactor = 10;

/** Free travel needed: the rest with nothing in the way, where there is one, and the level passed. */
export const neededFormulas = {
  even: "z_need = σ·√[2·ln(1/E)]",
  uneven: "z_need = σ·u/√3",
  evenFromRest: messages.zNeed2Ln({ springAlone: termNames.springAlone }),
  unevenFromRest: messages.zNeedU3({ springAlone: termNames.springAlone }),
} as const;

export function neededTravel(springAlone: number, level: number): number {
  return springAlone + level;
}

export const fromRestFormulas = {
  loaded: messages.zZCSag({ sag: termNames.sag }),
  unladen: messages.zZC({ restWithoutPayload: termNames.restWithoutPayload }),
} as const;

/** Wheel travel to contact from where the vehicle rests, mm. */
export function contactFromRest(contact: number, rest: number): number {
  return contact - rest;
}

export const extraHeightFormula = messages.mostExtraHeightG;

/** By how much the stop may grow along its axis before it is met too early, mm. */
export function extraHeight(gap: number, closingNeeded: number): number {
  return gap - closingNeeded;
}

/** One corner on a road; null = unknown, and what needs it is then null. */
export interface RoadCorner
  extends Pick<RestCorner, "kinematics" | "stop" | "gapMm" | "heldAtRideN"> {
  /** Wheel travel to contact z_c at the measured ride height, mm. */
  readonly travelToContactMm: number;
  readonly progressive: boolean;
  /** Mass on this wheel, sprung and unsprung together, kg. */
  readonly cornerMassKg: number | null;
  readonly wheelRateNPerMm: number | null;
  readonly tyreRateNPerMm: number | null;
  readonly damperBumpNsPerMm: number | null;
  readonly damperReboundNsPerMm: number | null;
  readonly payloadKg: number | null;
}

/** Lengths mm; a null figure lacks ride data or is told by `faults`. */
export interface RoadTravel {
  readonly roadTravelSigmaMm: number | null;
  readonly zeroUpcrossingsPerS: number | null;
  readonly contactsPerKm: number | null;
  readonly freeTravelNeededUnladenMm: number | null;
  readonly loadedSagMm: number | null;
  readonly loadedTravelToContactMm: number | null;
  readonly loadedTravelSigmaMm: number | null;
  readonly loadedContactsPerKm: number | null;
  readonly freeTravelNeededMm: number | null;
  /** The most by which the stop may grow before contact comes too early, loaded, mm along its axis. */
  readonly mostExtraHeightMm: number | null;
  /** Why a figure is null although its ride data are known. */
  readonly faults: readonly Fault[];
}

interface RoadState {
  readonly rest: number | null;
  readonly sigma: number | null;
  readonly zeroUpcrossings: number | null;
  readonly contactsPerKm: number | null;
  readonly travelNeeded: number | null;
}

/**
 * How often the wheel reaches the stop on the use's road, unladen and laden, and how much free travel
 * and stop height that leaves.
 *
 * Linear, one speed, one corner, bump and rebound damping averaged: a screening figure, to be called one
 * where it is shown. Source: ISO 8608:2016 (road), variance of travel as roadResponse.ts, crossings as
 * levelCrossings.ts.
 *
 * Errors: a value that is not above 0, or a payload the layout cannot carry, is in `faults`, and the
 * figures that need it are null.
 */
export function roadTravel(corner: RoadCorner, rules: UseRules): RoadTravel {
  const faults: Fault[] = [];
  const keep: Keep = (outcome) => {
    if (outcome.ok) return outcome.value;
    if (!faults.some((fault) => fault.code === outcome.fault.code)) faults.push(outcome.fault);
    return null;
  };
  const unladen = roadState(corner, rules, 0, keep);
  const laden = corner.payloadKg === null ? null : roadState(corner, rules, corner.payloadKg, keep);
  const travelNeeded = laden?.travelNeeded ?? null;
  const closing = travelNeeded === null ? null : keep(corner.kinematics.closing(travelNeeded));
  return {
    roadTravelSigmaMm: unladen.sigma,
    zeroUpcrossingsPerS: unladen.zeroUpcrossings,
    contactsPerKm: unladen.contactsPerKm,
    freeTravelNeededUnladenMm: unladen.travelNeeded,
    loadedSagMm: laden?.rest ?? null,
    loadedTravelToContactMm:
      laden?.rest == null ? null : contactFromRest(corner.travelToContactMm, laden.rest),
    loadedTravelSigmaMm: laden?.sigma ?? null,
    loadedContactsPerKm: laden?.contactsPerKm ?? null,
    freeTravelNeededMm: travelNeeded,
    mostExtraHeightMm: closing === null ? null : extraHeight(corner.gapMm, closing),
    faults,
  };
}

/** What decides how far a loaded or unladen wheel moves on a road. */
export interface RoadStanding {
  /** Sprung and unsprung together, with the payload, kg. */
  readonly totalMassKg: number;
  readonly tyreRateNPerMm: number;
  readonly damperBumpNsPerMm: number;
  readonly damperReboundNsPerMm: number;
  readonly progressive: boolean;
}

/**
 * Travel above rest that is passed as often as the use allows a stop to be met, mm: the level with
 * E = V·N/(ν0·1000), N ten times as great for a progressive stop, and E at most 1/2. Errors: a mass,
 * rate, damping, speed or number of contacts that is not above 0.
 */
export function levelAboveRest(standing: RoadStanding, rules: UseRules): Outcome<number> {
  const speed = roadSpeed(rules);
  if (!speed.ok) return speed;
  const allowed = allowedContacts(rules, standing.progressive);
  if (!allowed.ok) return allowed;
  const sigma = travelSigma(standing, rules);
  if (!sigma.ok) return sigma;
  const zeroUpcrossings = upcrossings(standing);
  if (!zeroUpcrossings.ok) return zeroUpcrossings;
  return succeed(
    levelPassedPerKm(allowed.value, {
      sigma: sigma.value,
      zeroUpcrossings: zeroUpcrossings.value,
      speed: speed.value,
      kurtosis: rules.roadKurtosis,
    }),
  );
}

export const sigmaFormula = { text: "σ = √(π²·n0²·Gd·V·M / c)", unit: "m" } as const;

/**
 * Standard deviation σ of suspension travel, mm.
 *
 * @param speed V, m/s
 * @param totalMass M, kg
 * @param damping c, N·s/m, above 0
 */
export function roadSigma(
  roadClass: RoadClass,
  speed: number,
  totalMass: number,
  damping: number,
): number {
  const intensity = roadVelocityIntensity(roadClass, speed);
  return 1000 * Math.sqrt(travelVariance(intensity, totalMass, damping));
}

/** The same on the use's road. */
function travelSigma(
  standing: Pick<RoadStanding, "totalMassKg" | "damperBumpNsPerMm" | "damperReboundNsPerMm">,
  rules: UseRules,
): Outcome<number> {
  const speed = roadSpeed(rules);
  if (!speed.ok) return speed;
  const mass = positive(
    standing.totalMassKg,
    "cornerMass",
    messages.massOnThisWheel,
    "cornerMassKg",
  );
  if (!mass.ok) return mass;
  const damping = positive(
    (1000 * (standing.damperBumpNsPerMm + standing.damperReboundNsPerMm)) / 2,
    "damping",
    messages.dampingAtWheel,
    "ride.damperBumpNsPerMm",
  );
  if (!damping.ok) return damping;
  return succeed(roadSigma(rules.roadClass, speed.value, mass.value, damping.value));
}

/** ν0, per second. */
function upcrossings(
  standing: Pick<RoadStanding, "totalMassKg" | "tyreRateNPerMm">,
): Outcome<number> {
  const mass = positive(
    standing.totalMassKg,
    "cornerMass",
    messages.massOnThisWheel,
    "cornerMassKg",
  );
  if (!mass.ok) return mass;
  const rate = positive(
    1000 * standing.tyreRateNPerMm,
    "tyreRate",
    messages.tiresRate,
    "ride.tyreRateNPerMm",
  );
  return rate.ok ? succeed(zeroUpcrossingsPerSecond(rate.value, mass.value)) : rate;
}

function roadSpeed(rules: UseRules): Outcome<number> {
  return positive(rules.speedKmPerH / 3.6, "speed", messages.speedOnRoad);
}

/** Contacts per km that a use allows its stop. */
export function wantedContacts(rules: UseRules, progressive: boolean): number {
  return rules.allowedContactsPerKm * (progressive ? progressiveContactFactor : 1);
}

function allowedContacts(rules: UseRules, progressive: boolean): Outcome<number> {
  const allowed = positive(
    rules.allowedContactsPerKm,
    "allowedContacts",
    messages.numberOfContactsAllowed,
  );
  return allowed.ok ? succeed(wantedContacts(rules, progressive)) : allowed;
}

type Keep = <Value>(outcome: Outcome<Value>) => Value | null;

function roadState(corner: RoadCorner, rules: UseRules, payloadKg: number, keep: Keep): RoadState {
  const { wheelRateNPerMm, tyreRateNPerMm, cornerMassKg } = corner;
  const { damperBumpNsPerMm, damperReboundNsPerMm, progressive } = corner;
  const totalMassKg = cornerMassKg === null ? null : cornerMassKg + payloadKg;
  const springOnly = corner.heldAtRideN === 0 && corner.gapMm >= 0;
  const rest =
    payloadKg === 0 && springOnly
      ? 0
      : wheelRateNPerMm === null
        ? null
        : keep(restPosition({ ...corner, wheelRateNPerMm }, payloadKg));
  const load = payloadForce(payloadKg);
  const isUnloaded = load + corner.heldAtRideN === 0;
  const nothingInTheWay = isUnloaded
    ? 0
    : wheelRateNPerMm === null
      ? null
      : springRest(load, corner.heldAtRideN, wheelRateNPerMm);
  const sigma =
    totalMassKg === null || damperBumpNsPerMm === null || damperReboundNsPerMm === null
      ? null
      : keep(travelSigma({ totalMassKg, damperBumpNsPerMm, damperReboundNsPerMm }, rules));
  const zeroUpcrossings =
    totalMassKg === null || tyreRateNPerMm === null
      ? null
      : keep(upcrossings({ totalMassKg, tyreRateNPerMm }));
  const speed = keep(roadSpeed(rules));
  const allowed = keep(allowedContacts(rules, progressive));
  if (sigma === null || zeroUpcrossings === null || rest === null || speed === null) {
    return { rest, sigma, zeroUpcrossings, contactsPerKm: null, travelNeeded: null };
  }
  const travel = { sigma, zeroUpcrossings, speed, kurtosis: rules.roadKurtosis };
  return {
    rest,
    sigma,
    zeroUpcrossings,
    contactsPerKm: upcrossingsPerKm(contactFromRest(corner.travelToContactMm, rest), travel),
    travelNeeded:
      allowed === null || nothingInTheWay === null
        ? null
        : neededTravel(nothingInTheWay, levelPassedPerKm(allowed, travel)),
  };
}

function positive(
  value: number,
  name: string,
  words: Message,
  reading?: FieldPath,
): Outcome<number> {
  return value > 0 && Number.isFinite(value)
    ? succeed(value)
    : fail(`${name}NotPositive`, [messages.mustBeAbove0({ words })], reading);
}
