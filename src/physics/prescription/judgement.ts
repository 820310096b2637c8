import type {
  Assessment,
  Check,
  CheckId,
  CornerAssessment,
  Fitment,
  Side,
  State,
  UseRules,
} from "../fitment.ts";
import { rulesOf } from "../road/useRules.ts";
import { worstState } from "../verdict/decisions.ts";
import type { Combination } from "./candidates.ts";
import { changes } from "./candidates.ts";

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

/** A check that says nothing because ride data or design events are missing, which it would need. */
export function isUnknown(
  check: Check,
  { missing }: Pick<CornerAssessment, "missing">,
  rules: Pick<UseRules, "events">,
): boolean {
  if (check.state !== "unsure") return false;
  if (check.id === "stiffness") return missing.length > 0 || rules.events.length === 0;
  const named = check.reading ?? "";
  return (
    check.id === "earlyContact" &&
    missing.some((name) => named === `ride.${name}` || named.endsWith(`.${name}`))
  );
}

/** An assessed combination, over both sides. */
export function judge(
  assessment: Assessment,
  fitment: Fitment,
  place: Pick<Judgement, "keepsTravel" | "heightMm">,
): Judgement {
  const rules = rulesOf(fitment.use, fitment.rules);
  const blocked: Blocked[] = [];
  const unknown = new Set<CheckId>();
  const states: State[] = [];
  for (const corner of assessment.corners) {
    for (const check of corner.checks) {
      if (!changeable.includes(check.id)) continue;
      if (isUnknown(check, corner, rules)) {
        unknown.add(check.id);
        continue;
      }
      states.push(check.state);
      if (check.state === "no" || check.state === "unsure") {
        blocked.push({ side: corner.side, check: check.id });
      }
    }
  }
  const events = assessment.corners.flatMap((corner) => corner.events ?? []);
  const probabilities = assessment.corners.flatMap((corner) =>
    [corner.clearanceProbability, corner.earlyContactProbability].filter((each) => each !== null),
  );
  return {
    state: worstState(states),
    blocked,
    unknown: [...unknown],
    leastProbability: Math.min(1, ...probabilities),
    peakAccelerationG: Math.max(0, ...events.map((event) => event.peakAccelerationG)),
    compressionLeft:
      1 -
      Math.max(0, ...events.map((event) => event.peakCompressionMm)) /
        fitment.stop.usableCompressionMm,
    keepsTravel: place.keepsTravel,
    heightMm: place.heightMm,
  };
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
