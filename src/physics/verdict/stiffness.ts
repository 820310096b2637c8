import type { Check, EstimatedCurve, Side } from "../fitment.ts";
import type { Fault } from "../outcome.ts";
import { readingName } from "../readingNames.ts";
import type { Sentence } from "../sentence.ts";
import type { CornerDynamics } from "../stiffness/cornerDynamics.ts";
import { stiffnessClasses, stiffnessClassOf } from "../stop/stiffnessClass.ts";
import { type MissingRideData, missingCheck } from "./missingRideData.ts";

const cannotSay = "which stiffness works";

/** Stiffness before the events have been run: not known, and the verdict no better for it. */
export function stiffnessNotComputed(side: Side, missing: readonly MissingRideData[]): Check {
  return missing.length > 0
    ? missingCheck("stiffness", cannotSay, side, missing)
    : {
        id: "stiffness",
        state: "unsure",
        sentence: ["Which stiffness works here is not computed yet."],
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
        "Its stiffness class, ",
        { kind: "stiffnessClass", value: stopClass },
        ", is among those that work here (",
        ...classList(works),
        ").",
      ],
    };
  }
  if (works.length === 0) {
    return {
      id: "stiffness",
      state: "no",
      sentence: [
        "No stiffness class works at this height: each one compresses fully, reaches hard contact or hits too hard.",
      ],
    };
  }
  const side = dynamics.stiffnessSide;
  const least = works[0] as number;
  const greatest = works.at(-1) as number;
  return {
    id: "stiffness",
    state: "no",
    ...(side === null ? {} : { side }),
    sentence: [
      side === "soft"
        ? "The stop is too soft: its class is "
        : side === "stiff"
          ? "The stop is too stiff: its class is "
          : "The stop's class does not work here: it is ",
      { kind: "stiffnessClass", value: stopClass },
      least === greatest ? "; only " : "; those from ",
      { kind: "stiffnessClass", value: least },
      ...(least === greatest
        ? [" works."]
        : [" to ", { kind: "stiffnessClass", value: greatest } as const, " work."]),
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
      "This stop works here as its test says, but that test's margin of error is too wide. With ",
      { kind: "share", value: 1 - passShare },
      " of what it allows the stop bottoms, reaches hard contact or hits too hard. Test it at more speeds and over more cycles.",
    ],
  };
}

/** What a stop fails on in words, the gravest first. */
const failureWords = [
  ["hardContact", "reaches hard contact"],
  ["fullStop", "bottoms"],
  ["acceleration", "hits too hard"],
  ["notComputed", "cannot be computed"],
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
      "Its class, ",
      { kind: "stiffnessClass", value: stopClass },
      `, would work here, but this stop itself ${worst?.[1] ?? "does not"}${onlyUnladen ? " as measured" : ""}: it is a little `,
      stiffnessSide === "stiff" ? "too stiff." : "too soft.",
    ],
  };
}

function estimateTooWide(estimated: readonly number[], working: readonly number[]): Check {
  return {
    id: "stiffness",
    state: "unsure",
    reading: "stop.curve",
    sentence: [
      "The stop's curve is an estimate. Within its ± its class is ",
      ...classList(estimated),
      ", and of these ",
      ...classList(working),
      working.length === 1 ? " works here." : " work here.",
      " Have the stop tested, or fit one that was.",
    ],
  };
}

function stiffnessFault(side: Side, fault: Fault | undefined): Check {
  return {
    id: "stiffness",
    state: "unsure",
    reading: fault?.reading ?? `${side}.gap`,
    sentence: [
      `Can't tell ${cannotSay}. `,
      ...(fault?.sentence ?? [`Re-measure ${readingName(`${side}.gap`)}.`]),
    ],
  };
}

function classList(classes: readonly number[]): Sentence {
  const least = classes[0] as number;
  const greatest = classes.at(-1) as number;
  return least === greatest
    ? ["only ", { kind: "stiffnessClass", value: least }]
    : [
        { kind: "stiffnessClass", value: least },
        " to ",
        { kind: "stiffnessClass", value: greatest },
      ];
}
