import type { Assessment, Check, Fitment, Side, Stop } from "../fitment.ts";
import { limitTouches, readingName } from "../readingNames.ts";
import { length, type Sentence, spacer } from "../sentence.ts";
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
  return [
    "It sits on its stop, pressed by ",
    length(worst.pressedMm),
    ` on the ${worst.side}: look at springs and load first.`,
  ];
}

/** What to do, in one sentence. */
export function combinationSentence(
  fitment: Fitment,
  combination: Combination,
  judgement: Pick<Judgement, "state" | "unknown">,
): Sentence {
  const where = fitment.corners.length > 1 ? " on both sides" : "";
  const { change, spacerMm } = combination;
  const missing = fitment.corners.some(({ seatToPad }) => seatToPad !== undefined);
  switch (change) {
    case "nothing":
      if (missing) return [`Fit this stop${where}: its height is right here.`];
      return [
        judgement.unknown.length > 0
          ? "Leave the height as it is."
          : judgement.state === "ok"
            ? "Leave it as it is: this stop fits at this height."
            : "Leave it as it is: nothing that was tried is better.",
      ];
    case "spacer":
      return ["Put a spacer of ", spacer(spacerMm), ` under the stop${where}.`];
    case "stop":
      return [
        "Fit ",
        ...stopWords(fitment, combination),
        where === "" ? " on this side." : `${where}.`,
      ];
    case "both":
      return [
        "Fit ",
        ...stopWords(fitment, combination),
        where === "" ? " on a spacer of " : `${where}, each on a spacer of `,
        spacer(spacerMm),
        ".",
      ];
  }
}

/** "Tall firm (HL-3130, revision B)": as it is named and as it is ordered. */
function orderedWords({ name, partNumber, revision }: Stop): string {
  if (partNumber === undefined) return name;
  return `${name} (${partNumber}${revision === undefined ? "" : `, revision ${revision}`})`;
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
    rate > own ? "a stiffer stop" : "a softer stop",
    " of the same build, class ",
    { kind: "stiffnessClass", value: stiffnessClassOf(rate) },
  ];
}

function rateOf(stop: Stop): number | null {
  const curve = stopCurve(stop);
  return curve.ok ? secantRate(curve.value) : null;
}

export function heightOnlySentence({ judgement }: Trial): Sentence {
  return judgement.unknown.includes("earlyContact")
    ? ["For height alone: how often it is met and how stiff it must be need the ride data."]
    : ["For height alone: how stiff it must be needs the ride data and a design event."];
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
export const travelKeptSentence: Sentence = [
  "It leaves less than two thirds of the free travel that the vehicle had. South Australia's rules on vehicle modification (sa.gov.au) ask for two thirds, as others do; local rules decide.",
];

export function oneSideSentence({ corners: [corner] }: Fitment): Sentence {
  const other = corner?.side === "left" ? "right" : "left";
  return [
    `Only the ${corner?.side ?? "one side"} was measured. Measure the ${other} before you fit it there.`,
  ];
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
    "These events do not decide the stiffness: all from ",
    { kind: "stiffnessClass", value: least },
    " to ",
    { kind: "stiffnessClass", value: greatest },
    " pass. A softer one is gentler and is pressed deeper, a stiffer one hits harder and keeps more in reserve.",
  ];
}

const blocks: Readonly<Record<Check["id"], string>> = {
  clearance: "something hard touches before the stop is fully compressed",
  earlyContact: "the stop touches too soon",
  stiffness: "none takes the hits",
  balance: "left and right differ",
  plausible: "a reading is not believed",
};

/** Which reading stands in the way; the check's own sentence says why. */
function notYet(
  { reading, sentence }: Pick<Check, "reading" | "sentence">,
  side: Side,
  fitment: Fitment,
): Sentence {
  if (reading === undefined) return ["Nothing can be prescribed yet. ", ...sentence];
  const kind = fitment.corners
    .find((corner) => corner.side === side)
    ?.limits.find((_, index) => reading === `${side}.limits.${index}`)?.kind;
  const verb = reading.startsWith("ride.") ? "find" : "measure";
  const closer = kind === undefined && reading.includes(".limits.") ? "" : ", or more closely";
  return [`Nothing can be prescribed yet: ${verb} ${readingName(reading, kind)} first${closer}.`];
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
    return [
      "No stop that was tried is short enough: each would be pressed with the vehicle standing.",
    ];
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
  const where = ({ side }: Blocked, index: number): string => {
    if (fitment.corners.length < 2) return "";
    const both = words.filter((each) => each === words[index]).length > 1;
    return both ? "on both sides " : `on the ${side} `;
  };
  const told = blockedBy.map((blocked, index) => `${where(blocked, index)}${words[index]}`);
  return [`No stop and spacer that was tried fits: ${[...new Set(told)].join("; ")}.`];
}

function blockWords(nearest: Trial, { side, check }: Blocked): string {
  const corner = nearest.assessment.corners.find((each) => each.side === side);
  return check === "clearance" && corner?.hardLimit
    ? `${limitTouches[corner.hardLimit]} before the stop is fully compressed`
    : blocks[check];
}

/** What was changed of the vehicle, and what then fits. */
export function freedSentence(fitment: Fitment, { kind, amount, decided }: Freed): Sentence {
  const fits = decided.judgement.state === "ok" ? ", this fits: " : ", this fits with care: ";
  return [...freedBy(kind, amount), fits, ...fitting(fitment, decided), "."];
}

export const tryingFreesSentence: Sentence = ["What would make one fit is being tried …"];

export const nothingFreesSentence: Sentence = [
  "More room, less payload, or a higher or stiffer spring was tried as well: none of them alone is enough.",
];

function freedBy(kind: Freed["kind"], amount: number): Sentence {
  switch (kind) {
    case "otherClass":
      return ["With a stop that is not among those to choose from"];
    case "room":
      return ["With ", length(amount), " more room for the wheel before anything hard touches"];
    case "payload":
      return amount === 0
        ? ["With no payload"]
        : ["With no more than ", { kind: "mass", value: amount }, " of payload on each corner"];
    case "higher":
      return ["With the body ", length(amount), " higher by its springs"];
    case "stiffer":
      return [
        "With a spring, or helper spring, ",
        { kind: "share", value: amount - 1 },
        " stiffer",
      ];
    case "carry":
      return ["With a stop made to carry, of this build"];
  }
}

function fitting(fitment: Fitment, { combination }: Decided): Sentence {
  const { change, spacerMm } = combination;
  const raised: Sentence = ["a spacer of ", spacer(spacerMm)];
  const stop = stopWords(fitment, combination);
  if (change === "nothing") return ["the stop as it is"];
  if (change === "spacer") return raised;
  return change === "stop" ? stop : [...stop, " on ", ...raised];
}
