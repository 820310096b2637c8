import * as messages from "../../words/compiled/physics/remeasure.ts";
import type { CornerAssessment, LimitKind } from "../fitment.ts";
import { bareReadingName } from "../readingNames.ts";
import { definitionOf } from "../readings/definitionOf.ts";
import type { ReadingId } from "../readings/readingId.ts";
import {
  capital,
  length,
  type Message,
  type Quantity,
  type Sentence,
  type Words,
} from "../sentence.ts";
import type { Margin } from "./margin.ts";
import type { OpenQuestion } from "./openQuestions.ts";
import type { OtherWay } from "./otherWays.ts";
import type { OtherForecast, RemeasureForecast } from "./remeasureForecast.ts";

/** "Left gap": a reading's name at the start of a line. */
function lineName(id: ReadingId, kind: LimitKind | undefined): Words {
  return capital(bareReadingName(id, kind));
}

function aboutWords(
  { about, side }: Pick<RemeasureForecast, "about" | "side">,
  sided: boolean,
): Words {
  const where = { side: sided ? side : undefined };
  return about === "reserve" ? messages.reserve(where) : messages.freeTravelAgainstWhat(where);
}

/** A tool's ± in the unit of what it measures. */
function toolQuantity(id: ReadingId, halfWidth: number): Quantity {
  const kind = definitionOf(id)?.kind;
  return { kind: kind === "angle" || kind === "mass" ? kind : "length", value: halfWidth };
}

function wayWords(id: ReadingId, { way }: RemeasureForecast): Sentence {
  if (way.kind === "repeat") return [messages.moreRepeats({ more: way.more })];
  if (way.kind === "halve") return [messages.knownTwiceAsExactly];
  return [
    messages.againWith({
      name: way.tool.name,
      toolQuantity: toolQuantity(id, way.tool.halfWidth),
    }),
  ];
}

/** "Left gap, again with a caliper (±0.2 mm): takes the margin of error of the reserve from ±6 mm to ±3 mm." */
export function remeasureSentence(
  id: ReadingId,
  kind: LimitKind | undefined,
  forecast: RemeasureForecast,
  sided: boolean,
): Sentence {
  return [
    messages.takesMarginOfError({
      lineName: lineName(id, kind),
      way: wayWords(id, forecast),
      about: aboutWords(forecast, sided),
      halfWidthNowMm: length(forecast.halfWidthNowMm),
      halfWidthThenMm: length(forecast.halfWidthThenMm),
    }),
  ];
}

const otherWords: Readonly<Record<OtherWay, Message>> = {
  otherArm: messages.otherArmMeasuredAs,
  byHand: messages.wholeTravelFoundBy,
  byHandToFullStop: messages.blockAsHighAs,
  maker: messages.usableCompressionKnownTwice,
};

/** "The other arm measured as well: takes the margin of error of the left reserve from ±6 mm to ±3 mm." */
export function otherSentence(forecast: OtherForecast, sided: boolean): Sentence {
  return [
    messages.takesMarginOfErrorOf({
      way: otherWords[forecast.way],
      about: aboutWords(forecast, sided),
      halfWidthNowMm: length(forecast.halfWidthNowMm),
      halfWidthThenMm: length(forecast.halfWidthThenMm),
    }),
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
    return [messages.whatCouldHitFirst({ side })];
  }
  return [messages.notKnownWithoutIt({ lineName: lineName(id, kind) })];
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
  const start = someHelp ? messages.evenWithEveryReading : messages.reMeasuringWithTools;
  if (margin.about === "reserve") {
    const sure = corner.intervals.spacerMm?.[1] ?? null;
    const most = corner.mostExtraHeightMm;
    const canGrow = sure !== null && sure > 0 && (most === null || sure <= most);
    return [
      messages.reserveIsTooClose({
        start,
        side: corner.side,
        canGrow: canGrow ? [messages.spacerOfOr({ sure: length(sure) })] : [],
      }),
    ];
  }
  return [start, messages.freeTravelOnIs({ side: corner.side })];
}
