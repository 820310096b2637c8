import { changes } from "../choices.ts";
import type {
  Assessment,
  Check,
  CheckId,
  CornerAssessment,
  EventResult,
  Fitment,
  Side,
  State,
} from "../fitment.ts";
import { rulesOf } from "../road/useRules.ts";
import { worstState } from "../verdict/decisions.ts";
import type { Combination } from "./candidates.ts";

/** The checks that another stop or spacer can change. */
const changeable: readonly CheckId[] = ["clearance", "earlyContact", "stiffness"];

/** A check of one side that stands in the way. */
export interface Blocked {
  readonly side: Side;
  readonly check: CheckId;
}

/** What one combination comes to on the vehicle, over both sides. */
export interface Judgement {
  /** The worst of the checks that a combination can change and that are known at all. */
  readonly state: State;
  /** What is worse than care. */
  readonly blocked: readonly Blocked[];
  /** Not known for want of ride data, so not counted. */
  readonly unknown: readonly CheckId[];
  /** The least of the probabilities of clearance and early contact; 1 where there is none. */
  readonly leastProbability: number;
  /** Hardest hit of the body over the events, g; 0 where they are not known. */
  readonly peakAccelerationG: number;
  /** Usable compression left in the deepest event, share of it; 1 where not known. */
  readonly compressionLeft: number;
  /** At least two thirds of the travel to contact that the vehicle was made with. */
  readonly keepsTravel: boolean;
  /** Stop and spacer together, mm. */
  readonly heightMm: number;
}

/** Two thirds: what several authorities' rules on changed suspensions ask to be kept. */
const travelKept = 2 / 3;

/** Probability from which combinations count as equally sure. Common practice. */
const equallySure = 0.99;

/** A check that a combination can change, of one side. */
export interface JudgedCheck extends Blocked {
  readonly state: State;
  /** Says nothing for want of ride data or design events, so it does not count. */
  readonly unknown: boolean;
}

/** A check that says nothing because ride data or design events are missing, which it would need. */
export function isUnknown(
  check: Check,
  { missing }: Pick<CornerAssessment, "missing">,
  hasEvents: boolean,
): boolean {
  if (check.state !== "unsure") return false;
  if (check.id === "stiffness") return missing.length > 0 || !hasEvents;
  const named = check.reading ?? "";
  return (
    check.id === "earlyContact" &&
    missing.some((name) => named === `ride.${name}` || named.endsWith(`.${name}`))
  );
}

/** What the checks of both sides come to. */
export function judgedState(
  checks: readonly JudgedCheck[],
): Pick<Judgement, "state" | "blocked" | "unknown"> {
  const known = checks.filter(({ unknown }) => !unknown);
  return {
    state: worstState(known.map(({ state }) => state)),
    blocked: known
      .filter(({ state }) => state === "no" || state === "unsure")
      .map(({ side, check }) => ({ side, check })),
    unknown: [...new Set(checks.filter(({ unknown }) => unknown).map(({ check }) => check))],
  };
}

/** The hardest of the events, laden, of all sides. */
export function judgedEvents(
  events: readonly Pick<EventResult, "peakAccelerationG" | "peakCompressionMm">[],
  { stop }: Pick<Fitment, "stop">,
): Pick<Judgement, "peakAccelerationG" | "compressionLeft"> {
  const deepest = Math.max(0, ...events.map((event) => event.peakCompressionMm));
  return {
    peakAccelerationG: Math.max(0, ...events.map((event) => event.peakAccelerationG)),
    compressionLeft: 1 - deepest / stop.usableCompressionMm,
  };
}

/** An assessed combination, over both sides. */
export function judge(
  assessment: Assessment,
  fitment: Fitment,
  place: Pick<Judgement, "keepsTravel" | "heightMm">,
): Judgement {
  const hasEvents = rulesOf(fitment.use, fitment.rules).events.length > 0;
  const checks = assessment.corners.flatMap((corner) =>
    corner.checks
      .filter(({ id }) => changeable.includes(id))
      .map((check) => ({
        side: corner.side,
        check: check.id,
        state: check.state,
        unknown: isUnknown(check, corner, hasEvents),
      })),
  );
  return {
    ...judgedState(checks),
    ...judgedEvents(
      assessment.corners.flatMap((corner) => corner.events ?? []),
      fitment,
    ),
    leastProbability: leastOf(
      assessment.corners.flatMap((corner) => [
        corner.clearanceProbability,
        corner.earlyContactProbability,
      ]),
    ),
    ...place,
  };
}

/** 1 where there is none. */
export function leastOf(probabilities: readonly (number | null)[]): number {
  return Math.min(1, ...probabilities.filter((each) => each !== null));
}

/** What two combinations of one state are put in order by. */
export interface Placed {
  readonly combination: Combination;
  readonly judgement: Pick<
    Judgement,
    "leastProbability" | "peakAccelerationG" | "compressionLeft" | "keepsTravel" | "heightMm"
  >;
}

/**
 * Which of two combinations of one state comes first, below 0: the first. Travel kept goes before the
 * fewest changes; then, where both are all probable (0.99), the gentler hit, more compression left and
 * less height; otherwise the surer one. Names decide last, so that no order is left to chance.
 */
export function comparePlaced(one: Placed, other: Placed): number {
  const a = one.judgement;
  const b = other.judgement;
  const sure = (probability: number) => Math.min(probability, equallySure);
  const bothSure = a.leastProbability >= equallySure && b.leastProbability >= equallySure;
  return (
    Number(b.keepsTravel) - Number(a.keepsTravel) ||
    changes.indexOf(one.combination.change) - changes.indexOf(other.combination.change) ||
    sure(b.leastProbability) - sure(a.leastProbability) ||
    (bothSure ? a.peakAccelerationG - b.peakAccelerationG : 0) ||
    (bothSure ? b.compressionLeft - a.compressionLeft : 0) ||
    a.heightMm - b.heightMm ||
    byText(one.combination.candidate.id, other.combination.candidate.id)
  );
}

function byText(one: string, other: string): number {
  return one === other ? 0 : one < other ? -1 : 1;
}

/** Does every side keep at least two thirds of the travel to contact that it was made with? */
export function keepsTravel(
  contact: readonly { readonly side: Side; readonly wheelTravelToContactMm: number }[],
  madeWith: readonly { readonly side: Side; readonly wheelTravelToContactMm: number }[],
): boolean {
  return contact.every(({ side, wheelTravelToContactMm }) => {
    const made = madeWith.find((each) => each.side === side)?.wheelTravelToContactMm ?? 0;
    return wheelTravelToContactMm >= travelKept * Math.max(0, made);
  });
}
