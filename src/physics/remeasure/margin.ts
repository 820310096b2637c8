import { figureCount, figureIn } from "../budget/cornerModel.ts";
import { type CornerBudget, travelBudget } from "../budget/travelBudget.ts";
import type { CornerAssessment, Fitment, Interval, UseRules } from "../fitment.ts";
import { paired } from "../paired.ts";
import { restingStop } from "../road/heldAtRide.ts";
import { isProgressive } from "../stop/stiffnessClass.ts";
import type { DrawnReading } from "../uncertainty/drawnReading.ts";
import { standardUncertainty } from "../uncertainty/drawnReading.ts";
import { firstOrderContributions } from "../uncertainty/firstOrder.ts";
import { meanOf } from "../uncertainty/readingMean.ts";
import { type RideInDoubt, rideInDoubt, WantedTravelModel } from "../uncertainty/wantedTravel.ts";
import type { OpenQuestion } from "./openQuestions.ts";

/** One reading's part in a margin. */
export interface MarginPart {
  readonly reading: DrawnReading;
  /** Repeats taken, ≥ 1. */
  readonly count: number;
  /** Change of the margin per unit of the reading, mm per its unit. */
  readonly slope: number;
}

/**
 * The figure that one question is decided by, less what it must reach, mm: reserve less the reserve
 * wanted (or less 0), or travel to contact less the free travel wanted (loaded, or unladen).
 */
export interface Margin {
  readonly question: OpenQuestion;
  readonly about: "reserve" | "freeTravel";
  /**
   * Middle of the drawn interval less what must be reached, mm: the bend of the formulas and the lesser
   * of several limits move it off the figure at the mean readings, and no line shows that.
   */
  readonly middle: number;
  readonly parts: readonly MarginPart[];
  /** 95 % interval of the figure from the draws, mm; null where the draws give none of this figure. */
  readonly interval: Interval | null;
  /** Probability of conformity from the draws; null where the assessment does not carry this one. */
  readonly probability: number | null;
  /** False: some ± reaches past what the suspension can do, so that no line describes it. */
  readonly inReach: boolean;
}

/**
 * The margin of a question about doubt. Null where the corner cannot be computed or the question is
 * not decided by a margin.
 *
 * @param level the lesser demand (reserve ≥ 0, unladen) for an unsure check, the wanted one for care
 */
export function marginOf(
  fitment: Fitment,
  assessed: CornerAssessment,
  question: OpenQuestion,
  level: "unsure" | "care",
  rules: UseRules,
): Margin | null {
  const corner = fitment.corners.find(({ side }) => side === question.side);
  if (corner === undefined) return null;
  const budget = travelBudget(fitment, corner, rules.reserveMm);
  if (!budget.ok) return null;
  const { check } = question;
  const probability = level === "care" ? (check.probability ?? null) : null;
  if (check.id === "clearance") {
    if (assessed.reserveMm === null) return null;
    const parts = geometryParts(budget.value, "reserve", assessed.reserveMm);
    return {
      question,
      about: "reserve",
      middle:
        middleOf(assessed.intervals.reserveMm, assessed.reserveMm) -
        (level === "care" ? rules.reserveMm : 0),
      ...parts,
      interval: assessed.intervals.reserveMm,
      probability,
    };
  }
  const wanted =
    level === "care" ? assessed.freeTravelNeededMm : assessed.freeTravelNeededUnladenMm;
  if (check.id !== "earlyContact" || wanted === null) return null;
  const contact = geometryParts(budget.value, "contact", assessed.wheelTravelToContactMm);
  const ride = rideParts(fitment, budget.value, rules, level === "care", wanted);
  return {
    question,
    about: "freeTravel",
    middle:
      middleOf(assessed.intervals.wheelTravelToContactMm, assessed.wheelTravelToContactMm) - wanted,
    parts: [...contact.parts, ...ride],
    inReach: contact.inReach,
    interval: ride.length === 0 ? assessed.intervals.wheelTravelToContactMm : null,
    probability,
  };
}

function middleOf(interval: Interval | null, atMeans: number): number {
  return interval === null ? atMeans : (interval[0] + interval[1]) / 2;
}

type Measured = Pick<MarginPart, "reading" | "count">;

function geometryParts(
  { model, places, means }: CornerBudget,
  name: "reserve" | "contact",
  atMeans: number,
): { readonly parts: readonly MarginPart[]; readonly inReach: boolean } {
  const measured = new Map<string, Measured>();
  for (const { id, drawn, reading } of places.all) {
    measured.set(id, { reading: drawn, count: reading?.values.length ?? 1 });
  }
  const all = [...measured.values()];
  const values = new Float64Array(means.length);
  const figures = new Float64Array(figureCount);
  let inReach = true;
  const contributions = firstOrderContributions(
    all.map(({ reading }) => reading),
    (index, value) => {
      values.set(means);
      const { id } = (all[index] as Measured).reading;
      for (const [place, filled] of places.all.entries()) {
        if (filled.id === id) values[place] = value;
      }
      if (model.evaluate(values, figures)) return figureIn(figures, name);
      inReach = false;
      return Number.NaN;
    },
    atMeans,
  );
  return { parts: partsOf(all, contributions), inReach };
}

/** Those with a part in the margin; one without doubt contributes nothing. */
function partsOf(all: readonly Measured[], contributions: Float64Array): MarginPart[] {
  return paired(all, contributions).flatMap(([{ reading, count }, contribution]) =>
    contribution === 0
      ? []
      : [{ reading, count, slope: contribution / standardUncertainty(reading) }],
  );
}

/** More free travel wanted is less margin, so that the slopes are those of the wanted travel negated. */
function rideParts(
  fitment: Fitment,
  { corner, kinematics }: CornerBudget,
  rules: UseRules,
  laden: boolean,
  atMeans: number,
): MarginPart[] {
  const inDoubt = rideInDoubt(fitment);
  const resting = restingStop(fitment, corner, kinematics);
  if (!resting.ok) return [];
  const { stop, heldAtRideN } = resting.value;
  const { cornerMassKg } = corner;
  const model = () =>
    new WantedTravelModel(
      {
        heldAtRideN,
        progressive: isProgressive(stop),
        cornerMassKg: cornerMassKg === undefined ? null : meanOf(cornerMassKg),
      },
      fitment.ride ?? {},
      rules,
    );
  const contributions = firstOrderContributions(
    inDoubt,
    (index, value) => {
      const changed = model();
      changed.set((inDoubt[index] as RideInDoubt).place, value);
      return laden ? changed.laden() : changed.unladen();
    },
    atMeans,
  );
  return partsOf(
    inDoubt.map((reading) => ({ reading, count: 1 })),
    contributions.map((contribution) => -contribution),
  );
}
