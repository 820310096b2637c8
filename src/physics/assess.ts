import { type CornerBudget, travelBudget } from "./budget/travelBudget.ts";
import type {
  Assessment,
  Corner,
  CornerAssessment,
  Fitment,
  Interval,
  UseRules,
} from "./fitment.ts";
import { fitmentFault } from "./fitmentFault.ts";
import { type Outcome, succeed } from "./outcome.ts";
import { type RestingStop, restingStop } from "./road/heldAtRide.ts";
import { roadTravel } from "./road/roadTravel.ts";
import { rulesOf } from "./road/useRules.ts";
import { type CornerDynamics, cornerDynamics } from "./stiffness/cornerDynamics.ts";
import { isProgressive, secantRate, stiffnessClassOf } from "./stop/stiffnessClass.ts";
import { type StopCurve, stopCurve } from "./stop/stopCurve.ts";
import { checkedMean } from "./uncertainty/checkedMean.ts";
import { cornerDoubt } from "./uncertainty/cornerDoubt.ts";
import {
  type CornerDraws,
  type DrawRequest,
  drawCorners,
  type WantedTravel,
} from "./uncertainty/cornerDraws.ts";
import { SharedDraws } from "./uncertainty/sharedDraws.ts";
import { type RoadCornerWithCurve, wantedTravels } from "./uncertainty/wantedTravel.ts";
import { balanceCheck } from "./verdict/balance.ts";
import { clearanceCheck } from "./verdict/clearance.ts";
import type { CornerEvidence } from "./verdict/cornerEvidence.ts";
import { earlyContactCheck } from "./verdict/earlyContact.ts";
import { missingRideData } from "./verdict/missingRideData.ts";
import { plausibleCheck } from "./verdict/plausible.ts";
import { reasonOf, verdictOf } from "./verdict/reason.ts";
import { stiffnessCheck, stiffnessNotComputed, stopClasses } from "./verdict/stiffness.ts";

export interface AssessOptions {
  /** Monte Carlo draws, 20 000 unless given, 10 000 at least. */
  readonly samples?: number;
  /** Any integer; fixed unless given, so that phone and command line agree to the last digit. */
  readonly seed?: number;
}

/**
 * The static half of the answer: kinematics, travel budget, road
 * contacts, doubt and checks. Events are null, and stiffness is unsure until `completeAssessment`.
 *
 * Errors: those of `fitmentFault`, then the first reading, curve or geometry that cannot be computed
 * with, by its name.
 */
export function assessStatic(fitment: Fitment, options: AssessOptions = {}): Outcome<Assessment> {
  const ready = prepareFitment(fitment, options);
  if (!ready.ok) return ready;
  const { draws, rules } = ready.value;
  const drawn = drawCorners(drawRequestsOf(ready.value), draws, rules.reserveMm);
  return succeed(assessDrawn(fitment, ready.value, drawn));
}

/** What is to be drawn of a fitment, a request a corner. */
export function drawRequestsOf({ prepared }: PreparedFitment): readonly DrawRequest[] {
  return prepared.map(({ budget, wanted }) => ({
    corner: budget,
    wantedTravels: [wanted.laden, wanted.unladen].filter(
      (travel): travel is WantedTravel => travel !== null,
    ),
  }));
}

/** The static half of the answer from what was drawn of each of its corners. */
export function assessDrawn(
  fitment: Fitment,
  { prepared, curve, rules }: PreparedFitment,
  drawn: readonly CornerDraws[],
): Assessment {
  const corners = prepared.map((corner, index) =>
    assessCorner(fitment, corner, drawn[index] as CornerDraws, curve, rules),
  );
  return { verdict: verdictOf(corners), reason: reasonOf(corners), corners };
}

/** A fitment at its mean readings, before anything is drawn. */
export interface PreparedFitment {
  readonly prepared: readonly PreparedCorner[];
  readonly draws: SharedDraws;
  readonly curve: StopCurve;
  readonly rules: UseRules;
}

/** What `assessStatic` draws from; the same errors. */
export function prepareFitment(
  fitment: Fitment,
  options: AssessOptions = {},
): Outcome<PreparedFitment> {
  const rules = rulesOf(fitment.use, fitment.rules);
  const fault = fitmentFault(fitment, rules);
  if (fault !== null) return { ok: false, fault };
  const curve = stopCurve(fitment.stop);
  if (!curve.ok) return curve;
  const draws = new SharedDraws(options.samples, options.seed);
  const prepared: PreparedCorner[] = [];
  for (const corner of fitment.corners) {
    const budget = travelBudget(fitment, corner, rules.reserveMm);
    if (!budget.ok) return budget;
    const cornerMass = checkedCornerMass(corner);
    if (!cornerMass.ok) return cornerMass;
    const resting = restingStop(fitment, corner, budget.value.kinematics);
    if (!resting.ok) return resting;
    prepared.push(
      prepareCorner(fitment, budget.value, resting.value, cornerMass.value, rules, draws),
    );
  }
  return succeed({ prepared, draws, curve: curve.value, rules });
}

export interface PreparedCorner {
  readonly budget: CornerBudget;
  readonly road: {
    readonly corner: RoadCornerWithCurve;
    readonly travel: ReturnType<typeof roadTravel>;
  };
  readonly wanted: ReturnType<typeof wantedTravels>;
}

function checkedCornerMass(corner: Corner): Outcome<number | null> {
  return corner.cornerMassKg === undefined
    ? succeed(null)
    : checkedMean(corner.cornerMassKg, `${corner.side}.cornerMassKg`, "mass");
}

function prepareCorner(
  fitment: Fitment,
  budget: CornerBudget,
  resting: RestingStop,
  cornerMassKg: number | null,
  rules: UseRules,
  draws: SharedDraws,
): PreparedCorner {
  const { ride } = fitment;
  const corner: RoadCornerWithCurve = {
    kinematics: budget.kinematics,
    ...resting,
    travelToContactMm: budget.budget.contactMm,
    progressive: isProgressive(resting.stop),
    cornerMassKg,
    wheelRateNPerMm: ride?.wheelRateNPerMm ?? null,
    tyreRateNPerMm: ride?.tyreRateNPerMm ?? null,
    damperBumpNsPerMm: ride?.damperBumpNsPerMm ?? null,
    damperReboundNsPerMm: ride?.damperReboundNsPerMm ?? null,
    payloadKg: ride?.payloadPerCornerKg ?? null,
  };
  const travel = roadTravel(corner, rules);
  return {
    budget,
    road: { corner, travel },
    wanted: wantedTravels(fitment, corner, travel, rules, draws),
  };
}

function assessCorner(
  fitment: Fitment,
  { budget: corner, road, wanted }: PreparedCorner,
  draws: CornerDraws,
  curve: StopCurve,
  rules: UseRules,
): CornerAssessment {
  const { budget } = corner;
  const { travel } = road;
  const carries = fitment.stop.duty === "carry";
  const { loadedCompressionMm, estimatedCompressionMm } = carriedCompression(
    fitment,
    { budget: corner, road },
    rules,
  );
  const missing = missingRideData(corner.corner, fitment.ride);
  const laden = wanted.laden === null ? null : (draws.contactBeyond[0] ?? null);
  const unladen = wanted.unladen === null ? null : (draws.contactBeyond.at(-1) ?? null);
  const evidence: CornerEvidence = {
    fitment,
    rules,
    corner,
    road: travel,
    draws,
    contactBeyond: { laden, unladen },
    doubt: cornerDoubt(corner, fitment, road, rules),
    missing,
    loadedCompressionMm,
    estimatedCompressionMm,
  };
  const rate = secantRate(curve);
  const balance = balanceCheck(fitment, rules.balanceMm);
  const { limit } = budget;
  const atMean = (value: number): Interval => [value, value];
  return {
    side: corner.corner.side,
    linkage: corner.linkage,
    leverRatio: budget.leverRatio,
    leverRatioAtFullStop: budget.leverRatioAtFullStop,
    wheelTravelToContactMm: budget.contactMm,
    wheelTravelToFullStopMm: budget.fullStopMm,
    wheelTravelToHardLimitMm: limit?.hardLimitMm ?? null,
    hardLimit: limit?.kind ?? null,
    freeShare: budget.freeShare,
    reserveMm: limit?.reserveMm ?? null,
    spacerMm: limit?.spacerMm ?? null,
    tallerMm: limit?.tallerMm ?? null,
    secantRateNPerMm: rate,
    stopRateClass: stiffnessClassOf(rate),
    progressive: isProgressive(curve),
    ...(budget.oneWheel === null
      ? {}
      : {
          oneWheel: {
            leverRatio: budget.oneWheel.leverRatio,
            wheelTravelToContactMm: budget.oneWheel.contactMm,
            wheelTravelToFullStopMm: budget.oneWheel.fullStopMm,
          },
        }),
    roadTravelSigmaMm: travel.roadTravelSigmaMm,
    contactsPerKm: travel.contactsPerKm,
    loadedSagMm: travel.loadedSagMm,
    loadedTravelToContactMm: travel.loadedTravelToContactMm,
    loadedContactsPerKm: travel.loadedContactsPerKm,
    freeTravelNeededMm: travel.freeTravelNeededMm,
    freeTravelNeededUnladenMm: travel.freeTravelNeededUnladenMm,
    mostExtraHeightMm: travel.mostExtraHeightMm,
    events: null,
    undampedEvents: null,
    fromTest: null,
    stopItselfPasses: null,
    classesThatWork: null,
    classWindow: null,
    intervals: {
      wheelTravelToContactMm: draws.intervals.contact ?? atMean(budget.contactMm),
      wheelTravelToFullStopMm: draws.intervals.fullStop ?? atMean(budget.fullStopMm),
      wheelTravelToHardLimitMm: draws.intervals.hardLimit,
      reserveMm: draws.intervals.reserve,
      spacerMm: draws.intervals.spacer,
      tallerMm: draws.intervals.taller,
    },
    clearanceProbability: draws.reserveWanted,
    earlyContactProbability: carries ? null : laden,
    ...(loadedCompressionMm === null ? {} : { loadedCompressionMm }),
    checks: [
      clearanceCheck(evidence),
      earlyContactCheck(evidence),
      stiffnessNotComputed(corner.corner.side, missing),
      ...(balance === null ? [] : [balance]),
      plausibleCheck(evidence),
    ],
    doubt: evidence.doubt,
    missing,
  };
}

/** How far a stop made to carry is pressed under load, mm, and within the ± of an estimated curve. */
export function carriedCompression(
  fitment: Fitment,
  { budget, road }: Pick<PreparedCorner, "budget" | "road">,
  rules: UseRules,
): Pick<CornerEvidence, "loadedCompressionMm" | "estimatedCompressionMm"> {
  const carries = fitment.stop.duty === "carry";
  return {
    loadedCompressionMm: carries ? compressionAt(budget, road.travel.loadedSagMm) : null,
    estimatedCompressionMm: carries ? estimatedCompression(fitment, budget, road, rules) : null,
  };
}

/**
 * Least and greatest compression under load within the ± of an estimated curve, mm; where the softest
 * cannot hold the payload, the greatest that the layout can reach. Null: tested, or not known.
 */
function estimatedCompression(
  { stop, recordedStop }: Fitment,
  budget: CornerBudget,
  { corner }: PreparedCorner["road"],
  rules: UseRules,
): Interval | null {
  if (stop.estimated === undefined) return null;
  const { forceShare } = stop.estimated;
  const scaled = (factor: number) =>
    compressionAt(
      budget,
      roadTravel(
        {
          ...corner,
          stop: corner.stop.scaled(factor),
          // The same stop held the vehicle up as measured, by as much more or less.
          heldAtRideN: corner.heldAtRideN * (recordedStop === undefined ? factor : 1),
        },
        rules,
      ).loadedSagMm,
    );
  const least = scaled(1 + forceShare);
  const greatest =
    scaled(Math.max(1 - forceShare, 1e-6)) ?? compressionAt(budget, budget.kinematics.range[1]);
  return least === null || greatest === null ? null : [least, greatest];
}

/** x = max(0, s(sag) − g), mm; null where the sag is not known or out of reach. */
function compressionAt(corner: CornerBudget, sag: number | null): number | null {
  if (sag === null) return null;
  const closing = corner.kinematics.closing(sag);
  return closing.ok ? Math.max(0, closing.value - corner.budget.gapMm) : null;
}

/**
 * Joins the dynamic half to a static assessment of the same fitment: events,
 * classes that work, the stiffness check, and from them verdict and reason anew. A corner
 * without dynamics stays as it is.
 */
export function completeAssessment(
  fitment: Fitment,
  assessment: Assessment,
  dynamics: readonly CornerDynamics[],
): Assessment {
  const corners = assessment.corners.map((assessed): CornerAssessment => {
    const own = dynamics.find(({ side }) => side === assessed.side);
    if (own === undefined) return assessed;
    const stiffness = stiffnessCheck(
      stopClasses(assessed.secantRateNPerMm, fitment.stop.estimated),
      own,
      assessed.missing,
    );
    return {
      ...assessed,
      events: own.events,
      undampedEvents: own.undampedEvents,
      fromTest: own.fromTest,
      stopItselfPasses: own.stopItselfPasses,
      classesThatWork: own.classesThatWork,
      classWindow: own.classWindow,
      checks: assessed.checks.map((check) => (check.id === "stiffness" ? stiffness : check)),
    };
  });
  return { verdict: verdictOf(corners), reason: reasonOf(corners), corners };
}

/** The whole answer: `assessStatic`, with every design event and stiffness class run. Same errors. */
export function assessFitment(fitment: Fitment, options: AssessOptions = {}): Outcome<Assessment> {
  const assessed = assessStatic(fitment, options);
  if (!assessed.ok) return assessed;
  const dynamics = fitment.corners.map((corner) => cornerDynamics(fitment, corner));
  return succeed(completeAssessment(fitment, assessed.value, dynamics));
}
