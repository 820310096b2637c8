import type { Assessment, Check, CornerAssessment, Side } from "../fitment.ts";
import { isReadingId, type ReadingId } from "../readings/readingId.ts";
import { sureEnough, unlikelyEnough, worstState } from "../verdict/decisions.ts";
import { missingId } from "../verdict/missingRideData.ts";

/**
 * Why a check is not decided: a reading was never taken, one cannot be right, the doubt is too wide,
 * or a calculation could not be made with one.
 */
export type OpenReason = "missing" | "implausible" | "doubt" | "fault";

/** A check that is not decided and that the verdict hangs on. */
export interface OpenQuestion {
  readonly side: Side;
  readonly check: Check;
  readonly why: OpenReason;
  /** Readings to give or to take again; empty where the doubt says which. */
  readonly readings: readonly ReadingId[];
}

/** How far a walk through the readings goes: until the verdict is known at all, or until it is ok or not. */
export type RemeasureLevel = "unsure" | "care";

export interface OpenQuestions {
  /** Null: the verdict is settled, no reading taken again is expected to change it. */
  readonly level: RemeasureLevel | null;
  readonly questions: readonly OpenQuestion[];
}

/** Between the limits at which something is taken as so and as not so. Source: JCGM 106:2012, clause 8. */
export function isBetween(probability: number): boolean {
  return probability > unlikelyEnough && probability < sureEnough;
}

/**
 * What the verdict hangs on, by a complete assessment. The verdict is the worst of all checks, so
 * that nothing is open where one check fails for certain, but a reading that cannot be right, which
 * may be why it fails. Checks that are unsure come first; where there are none, checks that say "take
 * care" only because the probability of the wanted figure lies between the decisions' limits.
 */
export function openQuestions(assessment: Assessment): OpenQuestions {
  const all = assessment.corners.flatMap((corner) =>
    corner.checks.map((check) => ({ corner, check })),
  );
  const unsure = all
    .filter(({ check }) => check.state === "unsure")
    .map(({ corner, check }) => unsureQuestion(corner, check));
  if (all.some(({ check }) => check.state === "no")) {
    const implausible = unsure.filter(({ why }) => why === "implausible");
    return { level: implausible.length > 0 ? "unsure" : null, questions: implausible };
  }
  if (unsure.length > 0) return { level: "unsure", questions: unsure };
  const careful = all.filter(({ check }) => isOpenCare(check));
  const rest = all.filter(({ check }) => !isOpenCare(check)).map(({ check }) => check.state);
  if (careful.length === 0 || worstState(rest) !== "ok") return { level: null, questions: [] };
  return {
    level: "care",
    questions: careful.map(({ corner, check }) => ({
      side: corner.side,
      check,
      why: "doubt",
      readings: [],
    })),
  };
}

function isOpenCare({ state, probability }: Check): boolean {
  return state === "care" && probability !== undefined && isBetween(probability);
}

function unsureQuestion(corner: CornerAssessment, check: Check): OpenQuestion {
  const { side, missing } = corner;
  const named = [check.reading ?? ""].filter(isReadingId);
  if (check.id === "plausible") return { side, check, why: "implausible", readings: named };
  if (check.id === "clearance") {
    return corner.reserveMm === null
      ? { side, check, why: "missing", readings: [`${side}.limits.0`] }
      : { side, check, why: "doubt", readings: [] };
  }
  if (isOfStop(check.reading)) return { side, check, why: "fault", readings: named };
  if (missing.length > 0) {
    const readings = missing.map((name) => missingId(name, side));
    return { side, check, why: "missing", readings };
  }
  return check.id === "earlyContact" && corner.freeTravelNeededUnladenMm !== null
    ? { side, check, why: "doubt", readings: [] }
    : { side, check, why: "fault", readings: named };
}

/** What nobody reads off the vehicle: the stop has to be tested. */
export function isOfStop(id: string | undefined): boolean {
  return id === "stop.curve" || id === "stop.testDoubt";
}
