import type {
  Assessment,
  CheckId,
  CornerAssessment,
  EstimatedCurve,
  Fitment,
  Side,
  State,
  Stop,
  UseRules,
} from "../fitment.ts";
import type { Fault } from "../outcome.ts";
import type { Candidate } from "../prescription/candidates.ts";
import { comparePlaced, type Placed } from "../prescription/judgement.ts";
import type { Trial } from "../prescription/trials.ts";
import type { Sentence } from "../sentence.ts";
import { stiffnessClasses } from "../stop/stiffnessClass.ts";
import { carryShares } from "../verdict/decisions.ts";

/** What is left at the worst corner; null where not known. Negative = short by so much. */
interface Margins {
  /** Reserve beyond the wanted one, mm of wheel travel. */
  readonly reserveMm: number | null;
  /** Wheel travel to contact beyond what the use needs loaded, mm. Null for a stop made to carry. */
  readonly freeTravelMm: number | null;
  /** Below the acceleration cap in the hardest event, g. */
  readonly accelerationG: number | null;
  /** Usable compression left in the hardest event, share of δu. */
  readonly compressionShare: number | null;
}

/** What fails or is in doubt, on which side, and the check's own sentence. */
interface Shortcoming {
  readonly check: CheckId;
  readonly state: State;
  readonly side: Side;
  readonly sentence: Sentence;
}

type RankedGroup = "fits" | "mayFit" | "nearly" | "doesNotFit";

/** One stop, or one stop with a spacer, on the vehicle of the check. */
export interface RankedStop {
  readonly id: string;
  readonly name: string;
  /** Where its curve is an estimate. */
  readonly estimated?: EstimatedCurve;
  /** mm under the stop; 0 = none. */
  readonly spacerMm: number;
  /**
   * fits: every check of every side is ok, but for the balance left to right, which no stop changes.
   * mayFit: nothing fails, and something is care or unsure.
   * nearly: something fails, and all that fails fails by a little (`little`).
   * doesNotFit: more than that, or a fault.
   */
  readonly group: RankedGroup;
  readonly verdict: State;
  readonly margins: Margins;
  readonly shortcomings: readonly Shortcoming[];
  /** What it is put in order by; null beside a fault. */
  readonly placed: Placed | null;
  /** As assessed, for charts side by side; null where it could not be: see `fault`. */
  readonly fitment: Fitment | null;
  readonly assessment: Assessment | null;
  readonly fault: Fault | null;
}

type Tried = Pick<Trial, "combination" | "judgement" | "fitment" | "assessment">;

/** One assessed fitment as a row of the ranking. */
export function rankedStop(
  { combination, judgement, fitment, assessment }: Tried,
  rules: UseRules,
): RankedStop {
  const { candidate, spacerMm } = combination;
  const { id, stop } = candidate;
  const shortcomings = assessment.corners.flatMap(({ side, checks }) =>
    checks
      .filter(({ state }) => state !== "ok")
      .map((check) => ({ check: check.id, state: check.state, side, sentence: check.sentence })),
  );
  const margins = marginsOf(assessment, stop, rules);
  return {
    id,
    name: stop.name,
    ...(stop.estimated && { estimated: stop.estimated }),
    spacerMm,
    group: groupOf(shortcomings, (short) => failsByLittle(short, margins, assessment, stop)),
    verdict: assessment.verdict,
    margins,
    shortcomings,
    placed: { combination, judgement },
    fitment,
    assessment,
    fault: null,
  };
}

/** A stop that cannot be assessed on this vehicle, and why. */
export function faultyStop({ id, stop }: Candidate, fault: Fault): RankedStop {
  return {
    id,
    name: stop.name,
    ...(stop.estimated && { estimated: stop.estimated }),
    spacerMm: 0,
    group: "doesNotFit",
    verdict: fault.code === "stopPresses" ? "no" : "unsure",
    margins: { reserveMm: null, freeTravelMm: null, accelerationG: null, compressionShare: null },
    shortcomings: [],
    placed: null,
    fitment: null,
    assessment: null,
    fault,
  };
}

function groupOf(
  shortcomings: readonly Shortcoming[],
  byLittle: (short: Shortcoming) => boolean,
): RankedGroup {
  const ofTheStop = shortcomings.filter(({ check }) => check !== "balance");
  if (ofTheStop.length === 0) return "fits";
  const failing = ofTheStop.filter(({ state }) => state === "no");
  if (failing.length === 0) return "mayFit";
  return failing.every(byLittle) ? "nearly" : "doesNotFit";
}

/**
 * What still counts as failing by a little: 10 mm of wheel travel short of the wanted reserve or of the
 * free travel needed, one stiffness class (R5 step) beside one that works, a tenth of the usable
 * compression more under load than a stop made to carry may be pressed. Common practice, no source.
 */
export const little = { reserveMm: 10, freeTravelMm: 10, classSteps: 1, loadedShare: 0.1 } as const;

function failsByLittle(
  { check, side }: Shortcoming,
  { reserveMm, freeTravelMm }: Margins,
  { corners }: Assessment,
  stop: Stop,
): boolean {
  const corner = corners.find((each) => each.side === side) as CornerAssessment;
  switch (check) {
    case "clearance":
      return reserveMm !== null && reserveMm >= -little.reserveMm;
    case "earlyContact": {
      if (stop.duty !== "carry")
        return freeTravelMm !== null && freeTravelMm >= -little.freeTravelMm;
      const share = (corner.loadedCompressionMm ?? Number.NaN) / stop.usableCompressionMm;
      return share <= carryShares.care + little.loadedShare;
    }
    case "stiffness":
      return (corner.classesThatWork ?? []).some(
        (works) => classDistance(works, corner.stopRateClass) <= little.classSteps,
      );
    default:
      return false;
  }
}

function classDistance(one: number, other: number): number {
  return Math.abs(stiffnessClasses.indexOf(one) - stiffnessClasses.indexOf(other));
}

function marginsOf({ corners }: Assessment, stop: Stop, rules: UseRules): Margins {
  const least = (of: (corner: CornerAssessment) => number | null): number | null => {
    const known = corners.map(of).filter((margin) => margin !== null);
    return known.length === 0 ? null : Math.min(...known);
  };
  return {
    reserveMm: least(({ reserveMm }) => (reserveMm === null ? null : reserveMm - rules.reserveMm)),
    freeTravelMm:
      stop.duty === "carry"
        ? null
        : least(({ wheelTravelToContactMm, freeTravelNeededMm }) =>
            freeTravelNeededMm === null ? null : wheelTravelToContactMm - freeTravelNeededMm,
          ),
    accelerationG: least(({ events }) =>
      hardest(events?.map((event) => rules.accelerationCapG - event.peakAccelerationG)),
    ),
    compressionShare: least(({ events }) =>
      hardest(events?.map((event) => 1 - event.peakCompressionMm / stop.usableCompressionMm)),
    ),
  };
}

function hardest(margins: readonly number[] | undefined): number | null {
  return margins === undefined || margins.length === 0 ? null : Math.min(...margins);
}

const groupPlace: { readonly [Each in RankedGroup]: number } = {
  fits: 0,
  mayFit: 1,
  nearly: 2,
  doesNotFit: 3,
};
const verdictPlace: { readonly [Each in State]: number } = { ok: 0, care: 1, unsure: 2, no: 3 };

/**
 * Which of two comes first, below 0: the first. By group, then verdict, then no fault, then as the
 * prescription puts them in order, then name and id, so that no order is left to chance.
 */
export function compareRanked(one: RankedStop, other: RankedStop): number {
  return (
    groupPlace[one.group] - groupPlace[other.group] ||
    verdictPlace[one.verdict] - verdictPlace[other.verdict] ||
    Number(one.fault !== null) - Number(other.fault !== null) ||
    (one.placed && other.placed ? comparePlaced(one.placed, other.placed) : 0) ||
    one.spacerMm - other.spacerMm ||
    ascending(one.name, other.name) ||
    ascending(one.id, other.id)
  );
}

function ascending(one: string, other: string): number {
  return one === other ? 0 : one < other ? -1 : 1;
}
