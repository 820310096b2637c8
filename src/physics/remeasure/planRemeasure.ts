import type { Assessment, CornerAssessment, Fitment, LimitKind } from "../fitment.ts";
import { paired } from "../paired.ts";
import type { ReadingId } from "../readings/readingId.ts";
import { rulesOf } from "../road/useRules.ts";
import type { Sentence } from "../sentence.ts";
import { standardUncertainty } from "../uncertainty/drawnReading.ts";
import { LinearDoubt, type RemeasureOutcome } from "./linearDoubt.ts";
import { type Margin, type MarginPart, marginOf } from "./margin.ts";
import {
  isOfStop,
  type OpenQuestion,
  type OpenReason,
  openQuestions,
  type RemeasureLevel,
} from "./openQuestions.ts";
import { isRead, otherRemedy } from "./otherWays.ts";
import { halfWidthAfter, outcomeByDraws } from "./outcomeByDraws.ts";
import { compareForecasts, leastTrouble, proposed } from "./proposed.ts";
import {
  type AfterReading,
  afterWay,
  type BetterTool,
  type RemeasureWay,
  waysFor,
} from "./readAgain.ts";
import type { OtherForecast, RemeasureForecast } from "./remeasureForecast.ts";
import {
  faultSentence,
  firstSentence,
  hopelessSentence,
  otherSentence,
  remeasureSentence,
} from "./remeasureSentences.ts";

export interface RemeasureItem {
  readonly reading: ReadingId;
  readonly why: OpenReason;
  /** Null for a reading that is missing or cannot be right: nothing can be decided without it. */
  readonly forecast: RemeasureForecast | null;
  readonly sentence: Sentence;
}

interface OtherItem {
  readonly forecast: OtherForecast;
  readonly sentence: Sentence;
}

/** Which readings to take again, in order, and how far that gets. */
export interface RemeasurePlan {
  /** Null: the verdict is settled. */
  readonly level: RemeasureLevel | null;
  readonly items: readonly RemeasureItem[];
  /** What else would narrow the doubt, the most first. */
  readonly others: readonly OtherItem[];
  /** Chance that the verdict is settled once all items about doubt are taken, 0 … 1. */
  readonly settlesAll: number;
  /** What would settle it, where taking readings again hardly can; null otherwise. */
  readonly otherwise: Sentence | null;
}

/** How many readings are gone through where each costs a dozen assessments: those with most of the doubt. */
const mostByDraws = 5;
/** Below this chance that all of them together settle it, something else is needed. */
const hardly = 0.05;

/** Tools at hand for each reading of a fitment, by its id. */
export type ToolsAtHand = { readonly [Id in ReadingId]?: readonly BetterTool[] };

/**
 * The plan of what to measure again for a completed assessment. First what cannot be right and what is
 * missing, since nothing is decided without it; then the readings behind the doubt, each taken again
 * in the best way at hand, in the order of the chance to settle the verdict, to settle a question, and
 * of the doubt removed. Yields between steps of longer work.
 *
 * @param passed readings not to propose again: taken in this walk, or passed over
 */
export function* planRemeasureSteps(
  fitment: Fitment,
  assessment: Assessment,
  tools: ToolsAtHand,
  passed: readonly ReadingId[] = [],
): Generator<void, RemeasurePlan, void> {
  const { level, questions } = openQuestions(assessment);
  if (level === null) return { level, items: [], others: [], settlesAll: 1, otherwise: null };
  const kindOf = limitKinds(fitment);
  const first = firstItems(questions, kindOf).filter(({ reading }) => !passed.includes(reading));
  const margins = marginsOf(fitment, assessment, questions, level);
  const blocked = questions.some(({ why }) => why !== "doubt");
  const linear = new LinearDoubt(margins, blocked);
  const bent = linear.margins.some((margin) => !margin.describes());
  const now = linear.margins.map((drawn): MarginNow => {
    const { margin } = drawn;
    const { interval } = margin;
    const halfWidthMm = interval === null ? drawn.halfWidth() : (interval[1] - interval[0]) / 2;
    return { margin, halfWidthMm };
  });
  const found: Found[] = [];
  const parts = distinctParts(margins)
    .filter(isOfReading)
    .filter(({ reading }) => !passed.includes(reading.id));
  for (const part of bent ? parts.slice(0, mostByDraws) : parts) {
    const { id } = part.reading;
    const ways = waysFor(part.reading, part.count, tools[id] ?? []);
    const tried: { readonly forecast: RemeasureForecast; readonly after: AfterReading }[] = [];
    for (const way of bent ? ways.slice(-1) : ways) {
      const after = afterWay(part.reading, part.count, way);
      const outcome = bent
        ? yield* outcomeByDraws(fitment, margins, level, blocked, part.reading, after)
        : linear.outcome(new Map([[id, after]]));
      const forecast = forecastOf(way, now, outcome);
      if (forecast !== undefined) tried.push({ forecast, after });
      yield;
    }
    const best = leastTrouble(tried);
    if (best !== null) found.push({ ...best, reading: part.reading });
  }
  found.sort((a, b) => compareForecasts(a.forecast, b.forecast));
  const together = (some: readonly Found[]) =>
    bent
      ? Math.max(0, ...some.map(({ forecast }) => forecast.settlesVerdict))
      : linear.outcome(new Map(some.map(({ reading, after }) => [reading.id, after]))).verdict;
  const { chosen, settlesAll } = proposed(found, together);
  const items: RemeasureItem[] = [];
  for (const each of chosen) {
    const { id } = each.reading;
    const forecast = bent ? each.forecast : withDrawnWidth(fitment, margins, each);
    items.push({
      reading: id,
      why: "doubt",
      forecast,
      sentence: remeasureSentence(id, kindOf(id), forecast, assessment.corners.length > 1),
    });
    yield;
  }
  return {
    level,
    items: [...first, ...items],
    others: bent ? [] : othersOf(fitment, assessment, linear, now),
    settlesAll,
    otherwise:
      first.length > 0 || settlesAll >= hardly
        ? null
        : otherwiseOf(questions, margins, assessment, items.length > 0),
  };
}

/** A way that takes less of the doubt than this is not worth its trouble. */
const worthTheTrouble = 0.05;

/** Told by the margin that each narrows most; linear, since each of them moves a factor or one length. */
function othersOf(
  fitment: Fitment,
  assessment: Assessment,
  linear: LinearDoubt,
  now: readonly MarginNow[],
): readonly OtherItem[] {
  const hasOtherArm = fitment.layout.armRole !== "underStrut";
  const found = distinctParts(now.map(({ margin }) => margin)).flatMap(({ reading }) => {
    const told = now.flatMap(({ margin, halfWidthMm: before }, index): OtherForecast[] => {
      const corner = cornerOf(assessment, margin.question);
      const travel =
        margin.about === "reserve" ? corner.wheelTravelToFullStopMm : corner.wheelTravelToContactMm;
      const remedy = otherRemedy(reading, travel, hasOtherArm);
      if (remedy === null) return [];
      const { halfWidths } = linear.outcome(new Map([[reading.id, remedy.after]]));
      const then = Math.min(before, halfWidths[index] ?? before);
      const { side } = margin.question;
      return then > (1 - worthTheTrouble) * before
        ? []
        : [
            {
              way: remedy.way,
              about: margin.about,
              side,
              halfWidthNowMm: before,
              halfWidthThenMm: then,
            },
          ];
    });
    return told.sort(byShareLeft).slice(0, 1);
  });
  return found.sort(byShareLeft).map((forecast) => ({
    forecast,
    sentence: otherSentence(forecast, assessment.corners.length > 1),
  }));
}

function byShareLeft(a: OtherForecast, b: OtherForecast): number {
  return a.halfWidthThenMm / a.halfWidthNowMm - b.halfWidthThenMm / b.halfWidthNowMm;
}

/** What can be taken again, beside what the model itself may be off. */
type PartOfReading = MarginPart & { readonly reading: { readonly id: ReadingId } };

function isOfReading(part: MarginPart): part is PartOfReading {
  return isRead(part.reading.id);
}

/** A margin with half its 95 % interval before anything is taken again. */
interface MarginNow {
  readonly margin: Margin;
  readonly halfWidthMm: number;
}

interface Found {
  readonly reading: PartOfReading["reading"];
  readonly forecast: RemeasureForecast;
  readonly after: AfterReading;
}

/** The forecast with the width that the draws then give, in place of the straight line's. */
function withDrawnWidth(
  fitment: Fitment,
  margins: readonly Margin[],
  { reading, forecast, after }: Found,
): RemeasureForecast {
  const margin = margins.find(
    ({ about, question }) => about === forecast.about && question.side === forecast.side,
  ) as Margin;
  const drawn = halfWidthAfter(fitment, margin, reading, after);
  if (drawn === null) return forecast;
  const then = Math.min(drawn, forecast.halfWidthNowMm);
  return { ...forecast, halfWidthThenMm: then, removed: 1 - then / forecast.halfWidthNowMm };
}

/** The same in one go. */
export function planRemeasure(
  fitment: Fitment,
  assessment: Assessment,
  tools: ToolsAtHand,
  passed: readonly ReadingId[] = [],
): RemeasurePlan {
  const steps = planRemeasureSteps(fitment, assessment, tools, passed);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

function limitKinds(fitment: Fitment): (id: ReadingId) => LimitKind | undefined {
  const kinds = new Map<ReadingId, LimitKind>();
  for (const { side, limits } of fitment.corners) {
    limits.forEach(({ kind }, index) => {
      kinds.set(`${side}.limits.${index}`, kind);
    });
  }
  return (id) => kinds.get(id);
}

/** Readings that cannot be right, then those never taken, then those a calculation failed on. */
function firstItems(
  questions: readonly OpenQuestion[],
  kindOf: (id: ReadingId) => LimitKind | undefined,
): readonly RemeasureItem[] {
  const order: readonly OpenReason[] = ["implausible", "missing", "fault"];
  const items = new Map<ReadingId, RemeasureItem>();
  for (const why of order) {
    for (const question of questions) {
      if (question.why !== why) continue;
      for (const reading of question.readings) {
        if (items.has(reading) || isOfStop(reading)) continue;
        items.set(reading, {
          reading,
          why,
          forecast: null,
          sentence: firstSentence(reading, kindOf(reading), question),
        });
      }
    }
  }
  return [...items.values()];
}

function marginsOf(
  fitment: Fitment,
  assessment: Assessment,
  questions: readonly OpenQuestion[],
  level: RemeasureLevel,
): readonly Margin[] {
  const rules = rulesOf(fitment.use, fitment.rules);
  return questions.flatMap((question) => {
    if (question.why !== "doubt") return [];
    const margin = marginOf(fitment, cornerOf(assessment, question), question, level, rules);
    return margin === null ? [] : [margin];
  });
}

/** Every reading behind some margin, those with the greatest part in one first. */
function distinctParts(margins: readonly Margin[]): readonly MarginPart[] {
  const weight = ({ reading, slope }: MarginPart) => Math.abs(slope) * standardUncertainty(reading);
  const all = margins.flatMap((margin) => margin.parts).sort((a, b) => weight(b) - weight(a));
  // A reading that comes again keeps its first place; but for the slope its parts are alike.
  return [...new Map(all.map((part) => [part.reading.id, part])).values()];
}

/** The outcome told by the question that this reading settles most, or whose doubt it narrows most. */
function forecastOf(
  way: RemeasureWay,
  now: readonly MarginNow[],
  { halfWidths, settled, verdict }: RemeasureOutcome,
): RemeasureForecast | undefined {
  const told = paired(paired(now, halfWidths), settled).map(
    ([[{ margin, halfWidthMm: before }, expected], settlesQuestion]): RemeasureForecast => {
      const then = Math.min(before, expected);
      return {
        way,
        about: margin.about,
        side: margin.question.side,
        halfWidthNowMm: before,
        halfWidthThenMm: then,
        removed: before > 0 ? 1 - then / before : 0,
        settlesQuestion,
        settlesVerdict: verdict,
      };
    },
  );
  return told.sort(compareForecasts)[0];
}

function otherwiseOf(
  questions: readonly OpenQuestion[],
  margins: readonly Margin[],
  assessment: Assessment,
  someHelp: boolean,
): Sentence | null {
  const fault = questions.find(({ why }) => why === "fault");
  if (fault !== undefined) return faultSentence(fault);
  const [margin] = margins;
  if (margin === undefined) return null;
  return hopelessSentence(margin, cornerOf(assessment, margin.question), someHelp);
}

/** The corner that a question was raised about. */
function cornerOf({ corners }: Assessment, question: OpenQuestion): CornerAssessment {
  return corners.find(({ side }) => side === question.side) as CornerAssessment;
}
