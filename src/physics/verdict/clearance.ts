import type { Check } from "../fitment.ts";
import { limitTouches } from "../readingNames.ts";
import { capital, length, margin, marginRange, type Sentence } from "../sentence.ts";
import {
  type CornerEvidence,
  mostDoubted,
  mostDoubtedCause,
  mostOutsideShare,
  remedyOf,
  takeAgain,
} from "./cornerEvidence.ts";
import { decide } from "./decisions.ts";

/**
 * Does anything harder touch before the stop has done its work? Decided by P(reserve ≥ 5 mm) and
 * P(reserve ≥ 0). Unsure where no limit was measured, or where more than
 * 5 % of the draws leave the layout's reach.
 */
export function clearanceCheck(evidence: CornerEvidence): Check {
  const { corner, draws, rules } = evidence;
  const { side } = corner.corner;
  const { limit } = corner.budget;
  if (limit === null || draws.reserveWanted === null || draws.reserveAboveZero === null) {
    return {
      id: "clearance",
      state: "unsure",
      reading: `${side}.limits.0`,
      sentence: [
        `No clearance was measured on the ${side}, so the answer can't say what touches first. Measure how far the wheel can rise before the tire, the shock, the spring or metal touches.`,
      ],
    };
  }
  const probability = draws.reserveWanted;
  if (draws.outsideShare > mostOutsideShare) {
    const reading = mostDoubted(evidence, "contact");
    return {
      id: "clearance",
      state: "unsure",
      probability,
      reading,
      sentence: outsideSentence(evidence),
    };
  }
  const state = decide(probability, draws.reserveAboveZero);
  const touches = limitTouches[limit.kind];
  const between = marginRange(draws.intervals.reserve);
  switch (state) {
    case "ok":
      return {
        id: "clearance",
        state,
        probability,
        sentence: [
          "The stop is fully compressed ",
          length(limit.reserveMm),
          ` of wheel travel before ${touches}.`,
        ],
      };
    case "care":
      return {
        id: "clearance",
        state,
        probability,
        reading: mostDoubted(evidence, "reserve"),
        sentence: [
          "The stop is fully compressed first, but you can't count on the ",
          length(rules.reserveMm),
          " wanted before ",
          `${touches}: there are `,
          length(limit.reserveMm),
          ...between,
          ".",
        ],
      };
    case "no":
      return {
        id: "clearance",
        state,
        probability,
        reading: mostDoubted(evidence, "reserve"),
        sentence: [
          `${capital(touches)} `,
          length(Math.max(0, -limit.reserveMm)),
          " of wheel travel before the stop is fully compressed.",
        ],
      };
    case "unsure":
      return {
        id: "clearance",
        state,
        probability,
        reading: mostDoubted(evidence, "reserve"),
        sentence: [
          `Can't tell whether the stop is fully compressed before ${touches}. The readings say `,
          ...margin(limit.reserveMm),
          ...between,
          ".",
          ...takeAgain(evidence, "reserve"),
        ],
      };
  }
}

/** Why nothing is decided where the tolerances reach past what the suspension can do. */
export function outsideSentence(evidence: CornerEvidence): Sentence {
  return [
    "Within their ± the readings also allow a suspension that can't move this far (",
    { kind: "share", value: evidence.draws.outsideShare },
    ` of the cases). So the answer can't tell. ${capital(remedyOf(evidence, mostDoubtedCause(evidence, "contact")).words)}.`,
  ];
}
