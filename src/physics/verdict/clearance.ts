import * as messages from "../../words/compiled/physics/verdict.ts";
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
      sentence: [messages.noClearanceWasMeasured({ side })],
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
          messages.stopIsFullyCompressed({
            reserveMm: length(limit.reserveMm),
            touches,
          }),
        ],
      };
    case "care":
      return {
        id: "clearance",
        state,
        probability,
        reading: mostDoubted(evidence, "reserve"),
        sentence: [
          messages.stopIsFullyCompressedFirst({
            reserveMm: length(rules.reserveMm),
            touches,
            reserveMm2: length(limit.reserveMm),
            between,
          }),
        ],
      };
    case "no":
      return {
        id: "clearance",
        state,
        probability,
        reading: mostDoubted(evidence, "reserve"),
        sentence: [
          messages.ofWheelTravelBefore({
            touches: capital(touches),
            length: length(Math.max(0, -limit.reserveMm)),
          }),
        ],
      };
    case "unsure":
      return {
        id: "clearance",
        state,
        probability,
        reading: mostDoubted(evidence, "reserve"),
        sentence: [
          messages.cantTellWhetherStop({
            touches,
            margin: margin(limit.reserveMm),
            between,
            takeAgain: takeAgain(evidence, "reserve"),
          }),
        ],
      };
  }
}

/** Why nothing is decided where the tolerances reach past what the suspension can do. */
export function outsideSentence(evidence: CornerEvidence): Sentence {
  return [
    messages.withinTheirReadingsAlso({
      outsideShare: { kind: "share", value: evidence.draws.outsideShare },
      words: capital(remedyOf(evidence, mostDoubtedCause(evidence, "contact")).words),
    }),
  ];
}
