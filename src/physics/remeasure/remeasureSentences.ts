import type { CornerAssessment, LimitKind } from "../fitment.ts";
import { readingName } from "../readingNames.ts";
import { definitionOf } from "../readings/definitionOf.ts";
import type { ReadingId } from "../readings/readingId.ts";
import { capital, length, type Quantity, type Sentence } from "../sentence.ts";
import type { Margin } from "./margin.ts";
import type { OpenQuestion } from "./openQuestions.ts";
import type { OtherWay } from "./otherWays.ts";
import type { OtherForecast, RemeasureForecast } from "./remeasureForecast.ts";

/** "Left gap": a reading's name at the start of a line. */
function lineName(id: ReadingId, kind: LimitKind | undefined): string {
  return capital(readingName(id, kind).replace(/^the /, ""));
}

function aboutWords(
  { about, side }: Pick<RemeasureForecast, "about" | "side">,
  sided: boolean,
): string {
  const where = sided ? `${side} ` : "";
  return about === "reserve"
    ? `the ${where}reserve`
    : `the ${where}free travel against what is needed`;
}

/** A tool's ± in the unit of what it measures. */
function toolQuantity(id: ReadingId, halfWidth: number): Quantity {
  const kind = definitionOf(id)?.kind;
  return { kind: kind === "angle" || kind === "mass" ? kind : "length", value: halfWidth };
}

function wayWords(id: ReadingId, { way }: RemeasureForecast): Sentence {
  if (way.kind === "repeat") return [`, ${way.more} more repeats`];
  if (way.kind === "halve") return [", known twice as exactly"];
  return [`, again with ${way.tool.name} (±`, toolQuantity(id, way.tool.halfWidth), ")"];
}

/** "Left gap, again with a caliper (±0.2 mm): takes the margin of error of the reserve from ±6 mm to ±3 mm." */
export function remeasureSentence(
  id: ReadingId,
  kind: LimitKind | undefined,
  forecast: RemeasureForecast,
  sided: boolean,
): Sentence {
  return [
    lineName(id, kind),
    ...wayWords(id, forecast),
    `: takes the margin of error of ${aboutWords(forecast, sided)} from ±`,
    length(forecast.halfWidthNowMm),
    " to ±",
    length(forecast.halfWidthThenMm),
    ".",
  ];
}

const otherWords: Readonly<Record<OtherWay, string>> = {
  otherArm: "The other arm measured as well",
  byHand: "The whole travel found by hand with a block, by a qualified person",
  byHandToFullStop: "A block as high as the stop when fully pressed, in the check by hand",
  maker: "The usable compression known twice as exactly, from the stop's maker or a test",
};

/** "The other arm measured as well: takes the margin of error of the left reserve from ±6 mm to ±3 mm." */
export function otherSentence(forecast: OtherForecast, sided: boolean): Sentence {
  return [
    `${otherWords[forecast.way]}: takes the margin of error of ${aboutWords(forecast, sided)} from ±`,
    length(forecast.halfWidthNowMm),
    " to ±",
    length(forecast.halfWidthThenMm),
    ".",
  ];
}

/** Why a reading comes before all doubt: it cannot be right, or it is not there. */
export function firstSentence(
  id: ReadingId,
  kind: LimitKind | undefined,
  { why, check, side }: OpenQuestion,
): Sentence {
  if (why !== "missing") return check.sentence;
  if (check.id === "clearance") {
    return [
      `What could hit first on the ${side}: never measured. Without it the reserve is unknown.`,
    ];
  }
  return [
    `${lineName(id, kind)}: not known. Without it how often and how hard the stop touches is unknown.`,
  ];
}

/** What a calculation failed on, and what to do about it. */
export function faultSentence({ check }: OpenQuestion): Sentence {
  return check.sentence;
}

/** Nothing that can be measured again would settle it: says so, and what would. */
export function hopelessSentence(
  margin: Margin,
  corner: CornerAssessment,
  someHelp: boolean,
): Sentence {
  const start = someHelp
    ? "Even with every reading re-measured, it will most likely stay undecided: "
    : "Re-measuring with the tools at hand would not settle it: ";
  if (margin.about === "reserve") {
    const sure = corner.intervals.spacerMm?.[1] ?? null;
    const most = corner.mostExtraHeightMm;
    const canGrow = sure !== null && sure > 0 && (most === null || sure <= most);
    return [
      start,
      `the ${corner.side} reserve is too close to the limit. What would settle it: `,
      ...(canGrow ? ["a spacer of ", length(sure), ", or "] : []),
      "having a qualified person go through the whole travel by hand.",
    ];
  }
  return [
    start,
    `the free travel on the ${corner.side} is too close to what the use needs. What would settle it: measured damping and wheel rate, a shorter stop or less payload.`,
  ];
}
