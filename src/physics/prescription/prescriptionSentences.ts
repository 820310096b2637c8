import * as messages from "../../words/compiled/physics/prescription.ts";
import type { Assessment, Check, Fitment, Side, Stop } from "../fitment.ts";
import { limitTouches, readingName } from "../readingNames.ts";
import {
  distinctWords,
  length,
  type Message,
  type Sentence,
  semicolonList,
  spacer,
  type Words,
} from "../sentence.ts";
import { secantRate, stiffnessClassOf } from "../stop/stiffnessClass.ts";
import { stopCurve } from "../stop/stopCurve.ts";
import { sided } from "../verdict/reason.ts";
import type { Combination } from "./candidates.ts";
import { pressedSides } from "./fitmentWithStop.ts";
import type { Blocked, Judgement } from "./judgement.ts";
import type { Decided, Trial } from "./trials.ts";
import type { Freed } from "./whatFrees.ts";

/** Said before anything else where a stop made for impacts is pressed with the vehicle standing. */
export function sitsOnStopSentence(fitment: Fitment): Sentence {
  const [worst] = fitment.stop.duty === "carry" ? [] : pressedSides(fitment);
  if (worst === undefined) return [];
  return [messages.itSitsOnIts({ pressedMm: length(worst.pressedMm), side: worst.side })];
}

/** What to do, in one sentence. */
export function combinationSentence(
  fitment: Fitment,
  combination: Combination,
  judgement: Pick<Judgement, "state" | "unknown">,
): Sentence {
  const where = fitment.corners.length > 1 ? messages.onBothSides : "";
  const { change, spacerMm } = combination;
  const missing = fitment.corners.some(({ seatToPad }) => seatToPad !== undefined);
  switch (change) {
    case "nothing":
      if (missing) return [messages.fitThisStopIts({ where })];
      return [
        judgement.unknown.length > 0
          ? messages.leaveHeightAsIt
          : judgement.state === "ok"
            ? messages.leaveItAsIt
            : messages.leaveItAsItIs,
      ];
    case "spacer":
      return [messages.putSpacerOfUnder({ spacerMm: spacer(spacerMm), where })];
    case "stop":
      return [
        messages.fitOnThisSide({
          stop: stopWords(fitment, combination),
          noWhere: where === "",
          where,
        }),
      ];
    case "both":
      return [
        messages.fitOnSpacerOf({
          stop: stopWords(fitment, combination),
          noWhere: where === "",
          where,
          spacerMm: spacer(spacerMm),
        }),
      ];
  }
}

/** "Tall firm (HL-3130, revision B)": as it is named and as it is ordered. */
function orderedWords({ name, partNumber, revision }: Stop): Words {
  if (partNumber === undefined) return name;
  return messages.ordered({ name, partNumber, hasRevision: revision !== undefined, revision });
}

/** A stop that can be ordered, or the fitted build in another stiffness class. */
export function stopWords(
  fitment: Fitment,
  { candidate }: Pick<Combination, "candidate">,
): Sentence {
  const { stop } = candidate;
  const rate = rateOf(stop);
  const own = rateOf(fitment.stop);
  const isNamed = stop.name !== fitment.stop.name || stop.partNumber !== undefined;
  if (isNamed || rate === null || own === null) return [orderedWords(stop)];
  return [
    messages.stifferStop({
      hasRate: rate > own,
      stiffnessClassOf: { kind: "stiffnessClass", value: stiffnessClassOf(rate) },
    }),
  ];
}

function rateOf(stop: Stop): number | null {
  const curve = stopCurve(stop);
  return curve.ok ? secantRate(curve.value) : null;
}

export function heightOnlySentence({ judgement }: Trial): Sentence {
  return judgement.unknown.includes("earlyContact")
    ? [messages.forHeightAloneHow]
    : [messages.forHeightAloneHowStiff];
}

/** Why the best there is needs care: the check's own sentence. */
export function whySentence({ assessment }: Trial): Sentence | null {
  for (const { checks, side } of assessment.corners) {
    const care = checks.find(
      ({ id, state }) => state === "care" && (id === "clearance" || id === "earlyContact"),
    );
    if (care) return assessment.corners.length > 1 ? sided(side, care) : care.sentence;
  }
  return null;
}

/**
 * Source: Government of South Australia, suspension modification (sa.gov.au): travel is not to be cut by more
 * than a third of what the vehicle's maker specified; others ask for the same.
 */
export const travelKeptSentence: Sentence = [messages.itLeavesLessThan];

export function oneSideSentence({ corners: [corner] }: Fitment): Sentence {
  const other = corner?.side === "left" ? "right" : "left";
  return [messages.onlyWasMeasuredMeasure({ side: corner?.side, other })];
}

/** Classes from which on the events do not decide the stiffness. Common practice. */
const manyClasses = 4;

/** Where many classes pass: that these events do not decide it. */
export function allWorkSentence({ assessment: { corners } }: Trial): Sentence | null {
  const [first, ...others] = corners.map(({ classesThatWork }) => classesThatWork ?? []);
  const both = (first ?? []).filter((each) => others.every((other) => other.includes(each)));
  const least = both[0];
  const greatest = both.at(-1);
  if (least === undefined || greatest === undefined || both.length < manyClasses) return null;
  return [
    messages.theseEventsDoNot({
      least: { kind: "stiffnessClass", value: least },
      greatest: { kind: "stiffnessClass", value: greatest },
    }),
  ];
}

const blocks: Readonly<Record<Check["id"], Message>> = {
  clearance: messages.somethingHardTouchesBefore,
  earlyContact: messages.stopTouchesTooSoon,
  stiffness: messages.noneTakesHits,
  balance: messages.leftAndRightDiffer,
  plausible: messages.readingIsNotBelieved,
};

/** Which reading stands in the way; the check's own sentence says why. */
function notYet(
  { reading, sentence }: Pick<Check, "reading" | "sentence">,
  side: Side,
  fitment: Fitment,
): Sentence {
  if (reading === undefined) return [messages.nothingCanBePrescribed({ sentence })];
  const kind = fitment.corners
    .find((corner) => corner.side === side)
    ?.limits.find((_, index) => reading === `${side}.limits.${index}`)?.kind;
  const verb = reading.startsWith("ride.") ? "find" : "measure";
  const closer = kind === undefined && reading.includes(".limits.") ? "" : messages.orMoreClosely;
  return [
    messages.nothingCanBePrescribedYet({ verb, readingName: readingName(reading, kind), closer }),
  ];
}

/** The readings do not fit together: which to take again. Null where they do. */
export function notBelieved(
  fitment: Fitment,
  assessment: Assessment,
): {
  readonly blockedBy: readonly Blocked[];
  readonly sentence: Sentence;
} | null {
  const doubted = assessment.corners.flatMap(({ side, checks }) =>
    checks
      .filter(({ id, state }) => id === "plausible" && state === "unsure")
      .map((check) => ({ side, check })),
  );
  const [first] = doubted;
  if (first === undefined) return null;
  return {
    blockedBy: doubted.map(({ side }) => ({ side, check: "plausible" })),
    sentence: notYet(first.check, first.side, fitment),
  };
}

/** What blocks, on which side; where it is doubt alone, the reading to take again. */
export function blockedSentence(
  fitment: Fitment,
  nearest: Trial | null,
  blockedBy: readonly Blocked[],
): Sentence {
  if (nearest === null) {
    return [messages.noStopThatWas];
  }
  const [doubted] = nearest.assessment.corners.flatMap(({ side, checks }) =>
    checks
      .filter(
        ({ id, state }) =>
          state === "unsure" &&
          blockedBy.some((blocked) => blocked.side === side && blocked.check === id),
      )
      .map((check) => ({ side, check })),
  );
  if (doubted && nearest.judgement.state === "unsure") {
    return notYet(doubted.check, doubted.side, fitment);
  }
  const words = blockedBy.map((blocked) => blockWords(nearest, blocked));
  const where = ({ side }: Blocked, own: Message) => {
    if (fitment.corners.length < 2) return undefined;
    return words.filter(({ code }) => code === own.code).length > 1 ? "both" : side;
  };
  const told = blockedBy.map((blocked, index) => {
    const own = words[index] ?? blocks[blocked.check];
    return messages.onSides({ side: where(blocked, own), words: own });
  });
  return [messages.noStopAndSpacer({ join: semicolonList(distinctWords(told)) })];
}

function blockWords(nearest: Trial, { side, check }: Blocked): Message {
  const corner = nearest.assessment.corners.find((each) => each.side === side);
  return check === "clearance" && corner?.hardLimit
    ? messages.beforeStopIsFully({ hardLimit: limitTouches[corner.hardLimit] })
    : blocks[check];
}

/** What was changed of the vehicle, and what then fits. */
export function freedSentence(fitment: Fitment, { kind, amount, decided }: Freed): Sentence {
  const fits = decided.judgement.state === "ok" ? messages.thisFits : messages.thisFitsWithCare;
  return [...freedBy(kind, amount), fits, ...fitting(fitment, decided), "."];
}

export const tryingFreesSentence: Sentence = [messages.whatWouldMakeOne];

export const nothingFreesSentence: Sentence = [messages.moreRoomLessPayload];

function freedBy(kind: Freed["kind"], amount: number): Sentence {
  switch (kind) {
    case "otherClass":
      return [messages.withStopThatIs];
    case "room":
      return [messages.withMoreRoomFor({ amount: length(amount) })];
    case "payload":
      return amount === 0
        ? [messages.withNoPayload]
        : [messages.withNoMoreThan({ amount: { kind: "mass", value: amount } })];
    case "higher":
      return [messages.withBodyHigherBy({ amount: length(amount) })];
    case "stiffer":
      return [
        messages.withSpringOrHelper({
          amount: { kind: "share", value: amount - 1 },
        }),
      ];
    case "carry":
      return [messages.withStopThatSupports];
  }
}

function fitting(fitment: Fitment, { combination }: Decided): Sentence {
  const { change, spacerMm } = combination;
  const raised: Sentence = [messages.spacerOf({ spacerMm: spacer(spacerMm) })];
  const stop = stopWords(fitment, combination);
  if (change === "nothing") return [messages.stopAsItIs];
  if (change === "spacer") return raised;
  return change === "stop" ? stop : [messages.on2({ stop, raised })];
}
