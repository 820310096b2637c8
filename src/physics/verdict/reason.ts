import * as messages from "../../words/compiled/physics/verdict.ts";
import { isQuantity } from "../../words/message.ts";
import type { Check, CheckId, CornerAssessment, State } from "../fitment.ts";
import { limitTouches } from "../readingNames.ts";
import { length, type Sentence, small } from "../sentence.ts";
import { worstState } from "./decisions.ts";

const importance: readonly CheckId[] = [
  "clearance",
  "earlyContact",
  "stiffness",
  "plausible",
  "balance",
];

/** The worst state of all checks of all corners. */
export function verdictOf(corners: readonly CornerAssessment[]): State {
  return worstState(corners.flatMap(({ checks }) => checks.map(({ state }) => state)));
}

/** A check of one corner. */
interface CheckOfCorner {
  readonly corner: CornerAssessment;
  readonly check: Check;
}

/**
 * The checks that the verdict comes from, the one that tells why first: the weightiest, of the corner where
 * it is least likely to be kept.
 */
export function decidingChecks(corners: readonly CornerAssessment[]): readonly CheckOfCorner[] {
  const verdict = verdictOf(corners);
  return corners
    .flatMap((corner) => corner.checks.map((check) => ({ corner, check })))
    .filter(({ check }) => check.state === verdict)
    .sort(
      (a, b) =>
        importance.indexOf(a.check.id) - importance.indexOf(b.check.id) ||
        (a.check.probability ?? 1) - (b.check.probability ?? 1) ||
        (a.corner.reserveMm ?? 0) - (b.corner.reserveMm ?? 0),
    );
}

/** One sentence why: that of the first deciding check; where all are ok, how much travel there is. */
export function reasonOf(corners: readonly CornerAssessment[]): Sentence {
  const [first] = corners;
  if (first === undefined) return [messages.noCornerWasMeasured];
  if (verdictOf(corners) === "ok") return allWell(corners, first);
  const [worst] = decidingChecks(corners) as [CheckOfCorner];
  return corners.length === 1 || worst.check.id === "balance"
    ? worst.check.sentence
    : sided(worst.corner.side, worst.check);
}

/** A check's sentence with its side before it. */
export function sided(side: CornerAssessment["side"], check: Check): Sentence {
  const [start, ...rest] = check.sentence;
  const name = side === "left" ? messages.leftStart : messages.rightStart;
  if (start === undefined || isQuantity(start)) return [name, ...check.sentence];
  return [name, small(start), ...rest];
}

function allWell(corners: readonly CornerAssessment[], first: CornerAssessment): Sentence {
  const tightest = corners.reduce(
    (least, corner) =>
      (corner.reserveMm ?? Number.POSITIVE_INFINITY) < (least.reserveMm ?? Number.POSITIVE_INFINITY)
        ? corner
        : least,
    first,
  );
  return [
    messages.stopTouchesAfterOf({
      wheelTravelToContactMm: length(tightest.wheelTravelToContactMm),
      reserveMm: length(tightest.reserveMm ?? 0),
      noHardLimit: tightest.hardLimit === null,
      hardLimit: tightest.hardLimit === null ? "" : limitTouches[tightest.hardLimit],
    }),
  ];
}
