import type { Assessment, Check, CornerAssessment, Interval } from "../../physics/fitment.ts";
import type { FieldPath } from "../../physics/outcome.ts";
import { leastStopHeightMm } from "../../physics/prescription/index.ts";
import { limitTouches, readingName } from "../../physics/readingNames.ts";
import { limitOf, parseReadingId } from "../../physics/readings/index.ts";
import {
  capital,
  length,
  type Message,
  margin,
  marginRange,
  range95,
  type Sentence,
} from "../../physics/sentence.ts";
import { meanOf } from "../../physics/uncertainty/index.ts";
import { sureEnough, unlikelyEnough } from "../../physics/verdict/index.ts";
import * as messages from "../../words/compiled/records/quickCheck.ts";
import type { CheckRecord } from "../check/checkRecord.ts";
import type { DoubtedReading } from "./quickCheckDoubts.ts";
import type { MeasuredName } from "./quickCheckQuestion.ts";
import type { QuickCheckRecord } from "./quickCheckRecord.ts";

export interface QuickCheckAnswer {
  readonly answer: "yes" | "no" | "cantTell";
  /** Extra height of a stop of the same build, mm, with its 95 % range; negative = height to spare. */
  readonly tallerMm: number | null;
  readonly rangeMm: Interval | null;
  readonly spacerMm: number | null;
  readonly spacerRangeMm: Interval | null;
  /** False: a taller stop is wanted, but would be met too early. Null: not known. */
  readonly heightFits: boolean | null;
  /** One to four sentences: the answer's reasons in order. */
  readonly why: readonly Sentence[];
  /** The reading that would settle it, and how; null where the answer is sure. */
  readonly settle: { readonly reading: FieldPath; readonly sentence: Sentence } | null;
  /** Which cautions go with it, as in the guided check. */
  readonly cautionsFor: "level" | "raised";
  /** What the record takes from the platform or assumes, in plain words. */
  readonly assumed: readonly Sentence[];
  /** What was measured on the vehicle itself; the rest is the pack's. */
  readonly measured: readonly MeasuredName[];
}

/**
 * The answer from the static or complete assessment of that record. Yes where the wanted reserve is
 * kept with a probability of 0.05 at most, no where with 0.95 at least (JCGM 106:2012), can't tell in
 * between, without a hard limit, where a reading is not believed, where nothing was measured, and where a
 * raised vehicle's clearance was not.
 */
export function quickCheckAnswer(
  { record, assumed, measured, doubted }: QuickCheckRecord,
  { corners }: Assessment,
): QuickCheckAnswer {
  const cautionsFor = record.vehicle.liftMm > 0 ? "raised" : "level";
  const common = { cautionsFor, assumed, measured } as const;
  const corner = corners[0];
  const open = corner && (doubted ?? notMeasured(record, measured, corner));
  if (corner === undefined || open) {
    const why: readonly Sentence[] = [open?.sentence ?? [messages.noCornerWasMeasured]];
    const settle = open && { reading: open.reading, sentence: measureIt(record, open.reading) };
    return { ...nothingKnown, ...common, why, settle: settle ?? null };
  }
  const answer = decided(corner);
  const heightFits = fitsBelow(corner, gapOf(record));
  // No number is shown of what is not believed.
  const believed = !isOdd(corner);
  return {
    answer,
    tallerMm: believed ? corner.tallerMm : null,
    rangeMm: believed ? corner.intervals.tallerMm : null,
    spacerMm: believed ? corner.spacerMm : null,
    spacerRangeMm: believed ? corner.intervals.spacerMm : null,
    heightFits,
    why: reasons(answer, record, corner, heightFits).slice(0, 4),
    settle: answer === "cantTell" ? settling(record, corner) : null,
    ...common,
  };
}

/** What must be measured on the vehicle itself before anything is said; null where it was. */
function notMeasured(
  record: CheckRecord,
  measured: readonly MeasuredName[],
  { side }: CornerAssessment,
): DoubtedReading | null {
  if (measured.length === 0) {
    return {
      reading: `${side}.gap`,
      sentence: [messages.nothingWasMeasuredOn],
    };
  }
  const { liftMm } = record.vehicle;
  const place = record.corners[0]?.limits.findIndex(({ reading }) => reading.source === "pack");
  if (liftMm < leastLiftMm || measured.includes("clearance") || place === undefined) return null;
  return {
    reading: `${side}.limits.${Math.max(0, place)}`,
    sentence: [messages.itStandsHigherThan({ liftMm: length(liftMm) })],
  };
}

/** From here on a vehicle counts as raised, mm. Common practice. */
const leastLiftMm = 5;

function measureIt(record: CheckRecord, reading: FieldPath): Sentence {
  return [messages.measureOnYourOwn({ nameOf: nameOf(record, reading) })];
}

const nothingKnown: Omit<QuickCheckAnswer, "why" | "cautionsFor" | "assumed" | "measured"> = {
  answer: "cantTell",
  tallerMm: null,
  rangeMm: null,
  spacerMm: null,
  spacerRangeMm: null,
  heightFits: null,
  settle: null,
};

function checkOf(corner: CornerAssessment, id: Check["id"]): Check | undefined {
  return corner.checks.find((check) => check.id === id);
}

/** The stop is never met: the hard limit comes before the contact. That is an answer, no oddity. */
function neverMet({ wheelTravelToContactMm, wheelTravelToHardLimitMm }: CornerAssessment): boolean {
  return wheelTravelToHardLimitMm !== null && wheelTravelToContactMm >= wheelTravelToHardLimitMm;
}

function decided(corner: CornerAssessment): QuickCheckAnswer["answer"] {
  const probability = corner.clearanceProbability;
  if (probability === null || isOdd(corner)) return "cantTell";
  if (probability >= sureEnough) return "no";
  return probability <= unlikelyEnough ? "yes" : "cantTell";
}

/** A reading that cannot be right, or tolerances that reach past what the suspension can do. */
function isOdd(corner: CornerAssessment): boolean {
  if (checkOf(corner, "plausible")?.state === "unsure" && !neverMet(corner)) return true;
  const clearance = checkOf(corner, "clearance");
  const decidable =
    (corner.clearanceProbability ?? 0.5) >= sureEnough ||
    (corner.clearanceProbability ?? 0.5) <= unlikelyEnough;
  return decidable && clearance?.state === "unsure" && !neverMet(corner);
}

/** Extra height that presses the stop with the vehicle standing begins here, mm; a stop made to carry may be pressed. */
function gapOf({ stop, corners: [corner] }: CheckRecord): number {
  const { gap } = corner ?? {};
  return gap === undefined || stop.duty === "carry" ? Number.POSITIVE_INFINITY : meanOf(gap);
}

function fitsBelow(
  { tallerMm, spacerMm, mostExtraHeightMm }: CornerAssessment,
  gapMm: number,
): boolean | null {
  const least = Math.min(
    tallerMm ?? Number.POSITIVE_INFINITY,
    spacerMm ?? Number.POSITIVE_INFINITY,
  );
  if (!Number.isFinite(least)) return null;
  if (least > gapMm) return false;
  return mostExtraHeightMm === null ? null : least <= mostExtraHeightMm;
}

function reasons(
  answer: QuickCheckAnswer["answer"],
  record: CheckRecord,
  corner: CornerAssessment,
  heightFits: boolean | null,
): Sentence[] {
  const odd = checkOf(corner, "plausible");
  if (answer === "cantTell" && odd?.state === "unsure" && isOdd(corner)) return [odd.sentence];
  if (corner.reserveMm === null || corner.hardLimit === null) {
    return [[messages.itIsNotKnown]];
  }
  const why: Sentence[] = [...firstReasons(answer, corner, corner.reserveMm)];
  if (answer !== "no") why.push(...heightReasons(answer, record, corner, heightFits));
  const early = checkOf(corner, "earlyContact");
  // Said with the height already, where no height fits for the same reason.
  const isSaid = heightFits === false && (corner.mostExtraHeightMm ?? 1) <= 0;
  if (!isSaid && (early?.state === "no" || early?.state === "care")) {
    why.push(earlyReason(early.state));
  }
  if (answer === "no" && corner.missing.length > 0) why.push(unknownEarly);
  return why;
}

function firstReasons(
  answer: QuickCheckAnswer["answer"],
  corner: CornerAssessment,
  reserveMm: number,
): Sentence[] {
  const touches = corner.hardLimit === null ? messages.hardContact : limitTouches[corner.hardLimit];
  const range = corner.intervals.reserveMm;
  const between = marginRange(range);
  // Told as how much it is short, the range turns round with the number.
  const short =
    range === null || range[1] > 0 ? between : range95(length(-range[1]), length(-range[0]));
  if (answer === "cantTell") {
    return [
      [messages.withinOfReadingsStop({ touches })],
      [messages.readingsSay({ margin: margin(reserveMm), between })],
    ];
  }
  if (neverMet(corner)) {
    return [[messages.stopIsNeverMet({ touches })]];
  }
  const compressed: Sentence =
    reserveMm >= 0
      ? [
          messages.stopIsFullyCompressed({
            reserveMm: length(reserveMm),
            touches,
            between,
            answer,
          }),
        ]
      : [
          messages.ofWheelTravelBefore({
            touches: capital(touches),
            reserveMm: length(-reserveMm),
            short,
          }),
        ];
  return [compressed];
}

function heightReasons(
  answer: QuickCheckAnswer["answer"],
  record: CheckRecord,
  corner: CornerAssessment,
  heightFits: boolean | null,
): Sentence[] {
  const { tallerMm, intervals, mostExtraHeightMm: most } = corner;
  const why: Sentence[] = [];
  if (tallerMm !== null && intervals.tallerMm !== null) {
    const [least, greatest] = intervals.tallerMm;
    why.push(
      answer === "yes"
        ? [
            messages.itNeedsMoreHeight({
              tallerMm: length(tallerMm),
              least: length(least),
              greatest: length(greatest),
            }),
          ]
        : sameShape(least, greatest),
    );
  }
  const gapMm = gapOf(record);
  if (heightFits === false) return [...why, tooTall(record, gapMm, most)];
  if (most === null) return [...why, unknownEarly];
  const touches = most <= gapMm ? messages.beforeItTouchesToo : messages.beforeItTouchesWith;
  return [...why, [messages.itMayBeTaller({ most: length(Math.min(most, gapMm)), touches })]];
}

/** By how much a stop of the same build is too short, at least and at most; below 0 it is tall enough. */
function sameShape(least: number, greatest: number): Sentence {
  const stop = messages.stopOfSameShape;
  if (least >= 0) {
    return [
      messages.isToTooShort({
        stop,
        least: length(least),
        greatest: length(greatest),
      }),
    ];
  }
  return greatest > 0
    ? [
        messages.mayBeTooShort({
          stop,
          greatest: length(greatest),
          margin: margin(-least),
        }),
      ]
    : [messages.hasTo95({ stop, greatest: length(-greatest), margin: margin(-least) })];
}

/** Why no height fits: the road, or the gap itself. */
function tooTall({ stop }: CheckRecord, gapMm: number, most: number | null): Sentence {
  const alone = messages.soHeightAloneDoes;
  if (most === null || gapMm < most) {
    return [messages.butGapIsOnly({ gapMm: length(gapMm), alone })];
  }
  if (most > 0) {
    return [messages.butMoreThanMore({ most: length(most), alone })];
  }
  const early = messages.butItTouchesToo;
  return -most <= meanOf(stop.freeHeight) - leastStopHeightMm
    ? [messages.wouldHaveToBe({ early, most: length(-most), alone })]
    : [messages.noStopIsShort({ early, alone })];
}

const unknownEarly: Sentence = [messages.howOftenStopWould];

function earlyReason(state: "no" | "care"): Sentence {
  return [state === "no" ? messages.stopTouchesTooOften : messages.loadedStopTouchesMore];
}

/** The first reading that the customer can take again; where the geometry is to blame, a full check. */
function settling(
  record: CheckRecord,
  corner: CornerAssessment,
): NonNullable<QuickCheckAnswer["settle"]> {
  const odd = checkOf(corner, "plausible");
  const { side } = corner;
  if (corner.reserveMm === null) {
    return {
      reading: `${side}.limits.0`,
      sentence: [messages.measureClearanceOverTire],
    };
  }
  if (odd?.state === "unsure" && odd.reading !== undefined && isOdd(corner)) {
    return {
      reading: odd.reading,
      sentence: [messages.reMeasure({ nameOf: nameOf(record, odd.reading) })],
    };
  }
  const own = corner.doubt.reserve.find(({ reading }) => isCustomers(reading));
  const most = corner.doubt.reserve[0];
  if (own === undefined || (most !== undefined && own.share < most.share / 4)) {
    const reading = most?.reading ?? `${side}.gap`;
    return {
      reading,
      sentence: [
        messages.carryOnAsFull({
          nameOf: nameOf(record, reading),
          share: { kind: "share", value: most?.share ?? 1 },
        }),
      ],
    };
  }
  return {
    reading: own.reading,
    sentence: [
      messages.measureAsCloselyAs({
        nameOf: nameOf(record, own.reading),
        share: { kind: "share", value: own.share },
      }),
    ],
  };
}

function isCustomers(reading: FieldPath): boolean {
  const place = parseReadingId(reading);
  return (
    reading === "stop.freeHeight" ||
    (place?.of === "corner" && place.name === "gap") ||
    (place?.of === "limit" && place.name === "reading")
  );
}

function nameOf(record: CheckRecord, reading: FieldPath): Message {
  return readingName(reading, record.corners[0]?.limits[limitOf(reading)?.index ?? -1]?.kind);
}
