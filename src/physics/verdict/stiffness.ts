import type { Check, Side } from "../fitment.ts";
import type { Fault } from "../outcome.ts";
import { readingName } from "../readingNames.ts";
import type { Sentence } from "../sentence.ts";
import type { CornerDynamics } from "../stiffness/cornerDynamics.ts";
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

/**
 * Is the stop's class among those that work in every event of the use? Ok if so;
 * else no, with the side on which it lies, or that no class works at this height. Unsure where the
 * events could not be run: what is missing, or why.
 */
export function stiffnessCheck(
  stopClass: number,
  dynamics: CornerDynamics,
  missing: readonly MissingRideData[],
): Check {
  const works = dynamics.classesThatWork;
  if (works === null) {
    return missing.length > 0
      ? missingCheck("stiffness", cannotSay, dynamics.side, missing)
      : stiffnessFault(dynamics.side, dynamics.faults[0]);
  }
  if (works.includes(stopClass)) {
    return {
      id: "stiffness",
      state: "ok",
      sentence: [
        "Its stiffness class, ",
        { kind: "rate", value: stopClass },
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
        "No stiffness class works at this height: each one bottoms, reaches the hard limit or hits too hard.",
      ],
    };
  }
  const side = dynamics.stiffnessSide;
  const [least, greatest] = dynamics.classWindow ?? [works[0] ?? stopClass, works[0] ?? stopClass];
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
      { kind: "rate", value: stopClass },
      least === greatest ? "; only " : "; those from ",
      { kind: "rate", value: least },
      ...(least === greatest
        ? [" works."]
        : [" to ", { kind: "rate", value: greatest } as const, " work."]),
    ],
  };
}

function stiffnessFault(side: Side, fault: Fault | undefined): Check {
  return {
    id: "stiffness",
    state: "unsure",
    reading: fault?.reading ?? `${side}.gap`,
    sentence: [
      `It cannot be said ${cannotSay}. `,
      ...(fault?.sentence ?? [`Measure ${readingName(`${side}.gap`)} again.`]),
    ],
  };
}

function classList(classes: readonly number[]): Sentence {
  const least = classes[0] ?? 0;
  const greatest = classes.at(-1) ?? least;
  return least === greatest
    ? ["only ", { kind: "rate", value: least }]
    : [{ kind: "rate", value: least }, " to ", { kind: "rate", value: greatest }];
}
