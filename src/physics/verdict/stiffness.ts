import * as messages from "../../words/compiled/physics/verdict.ts";
import type { Check, EstimatedCurve, Side } from "../fitment.ts";
import type { Fault } from "../outcome.ts";
import { readingName } from "../readingNames.ts";
import type { Sentence } from "../sentence.ts";
import type { CornerDynamics } from "../stiffness/cornerDynamics.ts";
import { stiffnessClasses, stiffnessClassOf } from "../stop/stiffnessClass.ts";
import { type MissingRideData, missingCheck } from "./missingRideData.ts";

const cannotSay = messages.whichStiffnessWorks;

/** Stiffness before the events have been run: not known, and the verdict no better for it. */
export function stiffnessNotComputed(side: Side, missing: readonly MissingRideData[]): Check {
  return missing.length > 0
    ? missingCheck("stiffness", cannotSay, side, missing)
    : {
        id: "stiffness",
        state: "unsure",
        sentence: [messages.whichStiffnessWorksHere],
      };
}

/** The stop's own class; for a curve that is estimated, all those within its ±, rising. */
export interface StopClasses {
  readonly own: number;
  readonly estimated: readonly number[] | null;
}

/** Classes of a secant rate in N/mm whose curve is known as well as `estimated` says. */
export function stopClasses(rate: number, estimated: EstimatedCurve | undefined): StopClasses {
  const own = stiffnessClassOf(rate);
  if (estimated === undefined) return { own, estimated: null };
  const least = stiffnessClassOf(Math.max(rate * (1 - estimated.forceShare), 1e-6));
  const greatest = stiffnessClassOf(rate * (1 + estimated.forceShare));
  return { own, estimated: stiffnessClasses.filter((each) => each >= least && each <= greatest) };
}

/**
 * Is the stop's class among those that work in every event of the use, and does the stop itself, unscaled,
 * pass them all (a secant may lie 26 % off its class)? Ok if so; else no, with the side on which it lies, or that no class works at this height. Unsure where the
 * events could not be run: what is missing, or why; where the curve is an estimate whose ± holds
 * classes that work beside others that do not; and where it works, but not with 95 % of what its test allows.
 */
export function stiffnessCheck(
  { own: stopClass, estimated }: StopClasses,
  dynamics: CornerDynamics,
  missing: readonly MissingRideData[],
): Check {
  const works = dynamics.classesThatWork;
  if (works === null) {
    return missing.length > 0
      ? missingCheck("stiffness", cannotSay, dynamics.side, missing)
      : stiffnessFault(dynamics.side, dynamics.faults[0]);
  }
  if (estimated !== null) {
    const working = estimated.filter((each) => works.includes(each));
    if (working.length > 0 && working.length < estimated.length)
      return estimateTooWide(estimated, working);
  }
  if (works.includes(stopClass) && dynamics.stopItselfPasses === false) {
    return itselfFails(stopClass, dynamics);
  }
  if (works.includes(stopClass)) {
    const passShare = dynamics.fromTest?.passShare ?? 1;
    if (passShare < surely) return testLeavesOpen(passShare);
    return {
      id: "stiffness",
      state: "ok",
      sentence: [
        messages.itsStiffnessClassIs({
          stopClass: { kind: "stiffnessClass", value: stopClass },
          classList: classList(works),
        }),
      ],
    };
  }
  const [least, greatest] = [works[0], works.at(-1)];
  if (least === undefined || greatest === undefined) {
    return {
      id: "stiffness",
      state: "no",
      sentence: [messages.noStiffnessClassWorks],
    };
  }
  const side = dynamics.stiffnessSide;
  return {
    id: "stiffness",
    state: "no",
    ...(side === null ? {} : { side }),
    sentence: [
      messages.stopIsTooSoft({
        side: side ?? undefined,
        stopClass: { kind: "stiffnessClass", value: stopClass },
        isLeast: least === greatest,
        least: { kind: "stiffnessClass", value: least },
        greatest: { kind: "stiffnessClass", value: greatest },
      }),
    ],
  };
}

/** Probability from which a conformity counts as sure (JCGM 106:2012), as everywhere in the verdict. */
const surely = 0.95;

/** It works as its test says, yet not with all that the test allows. */
function testLeavesOpen(passShare: number): Check {
  return {
    id: "stiffness",
    state: "unsure",
    probability: passShare,
    reading: "stop.testDoubt",
    sentence: [
      messages.thisStopWorksHere({
        passShare: { kind: "share", value: 1 - passShare },
      }),
    ],
  };
}

/** What a stop fails on in words, the gravest first. */
const failureWords = [
  ["hardContact", messages.reachesHardContact],
  ["fullStop", "bottoms"],
  ["acceleration", messages.hitsTooHard],
  ["notComputed", messages.cannotBeComputed],
] as const;

/** Its class works, it does not: for a stop of that number would be softer or stiffer than this one. */
function itselfFails(stopClass: number, { ownFailures, stiffnessSide }: CornerDynamics): Check {
  const worst = failureWords.find(([kind]) => ownFailures.some((failure) => failure.kind === kind));
  const failed = ownFailures.filter(({ kind }) => kind === worst?.[0]);
  const onlyUnladen = failed.every(({ laden }) => !laden);
  return {
    id: "stiffness",
    state: "no",
    ...(stiffnessSide === null ? {} : { side: stiffnessSide }),
    sentence: [
      messages.itsClassWouldWork({
        stopClass: { kind: "stiffnessClass", value: stopClass },
        worst: worst?.[1] ?? messages.doesNot,
        isOnlyUnladen: Boolean(onlyUnladen),
        stiffnessSide: stiffnessSide ?? undefined,
      }),
    ],
  };
}

function estimateTooWide(estimated: readonly number[], working: readonly number[]): Check {
  return {
    id: "stiffness",
    state: "unsure",
    reading: "stop.curve",
    sentence: [
      messages.stopsCurveIsEstimate({
        classList: classList(estimated),
        classList2: classList(working),
        working: working.length,
      }),
    ],
  };
}

function stiffnessFault(side: Side, fault: Fault | undefined): Check {
  return {
    id: "stiffness",
    state: "unsure",
    reading: fault?.reading ?? `${side}.gap`,
    sentence: [
      messages.cantTell({
        cannotSay,
        sentence: fault?.sentence ?? [
          messages.reMeasure({ readingName: readingName(`${side}.gap`) }),
        ],
      }),
    ],
  };
}

function classList(classes: readonly number[]): Sentence {
  const [least, greatest] = [classes[0], classes.at(-1)];
  if (least === undefined || greatest === undefined) return [];
  return least === greatest
    ? [messages.only({ least: { kind: "stiffnessClass", value: least } })]
    : [
        messages.to({
          least: { kind: "stiffnessClass", value: least },
          greatest: { kind: "stiffnessClass", value: greatest },
        }),
      ];
}
