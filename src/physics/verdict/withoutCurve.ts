import * as messages from "../../words/compiled/physics/verdict.ts";
import { travelBudget } from "../budget/travelBudget.ts";
import type { Fitment, Interval, LimitKind, Side, Stop } from "../fitment.ts";
import { type Outcome, succeed } from "../outcome.ts";
import { limitTouches } from "../readingNames.ts";
import { capital, length, range95, type Sentence } from "../sentence.ts";
import { drawCorners } from "../uncertainty/cornerDraws.ts";
import { SharedDraws } from "../uncertainty/sharedDraws.ts";

/** A fitment whose stop is known by its height alone. */
export type SheetlessFitment = Omit<Fitment, "stop"> & {
  readonly stop: Pick<Stop, "name" | "duty" | "freeHeight">;
};

/** What of one corner's travel needs neither usable compression nor forces of its stop. mm. */
export interface TravelWithoutCurve {
  readonly side: Side;
  /** Below 0: pressed in. */
  readonly gapMm: number;
  readonly contactMm: number;
  readonly contactRangeMm: Interval | null;
  readonly limit: {
    readonly kind: LimitKind;
    readonly travelMm: number;
    readonly rangeMm: Interval | null;
    /** By how much the stop may be pressed with the wanted reserve left: s(z_h − r) − g; below 0: not at all. */
    readonly compressionMm: number;
  } | null;
  /** The hard limit surely comes before the stop: within 95 % of the draws of both. */
  readonly neverMet: boolean;
}

/** So small that full compression is as good as contact; nothing that is told depends on it. */
const inertMm = 1e-3;

/**
 * z_c, its 95 % range, the first hard limit and the compression that there is room for, of every corner.
 * Errors: those of `travelBudget`.
 *
 * @param reserveMm wheel travel wanted before the limit
 */
export function travelWithoutCurve(
  { stop, ...rest }: SheetlessFitment,
  reserveMm: number,
): Outcome<readonly TravelWithoutCurve[]> {
  const fitment: Fitment = {
    ...rest,
    stop: {
      ...stop,
      usableCompressionMm: inertMm,
      usableTolMm: 0,
      curve: [[inertMm, 1]],
      damping: null,
      testedAtSpeed: false,
    },
  };
  const found: TravelWithoutCurve[] = [];
  for (const corner of fitment.corners) {
    const budgeted = travelBudget(fitment, corner, reserveMm);
    if (!budgeted.ok) return budgeted;
    const { budget } = budgeted.value;
    const draws = new SharedDraws();
    const [drawn] = drawCorners([{ corner: budgeted.value, wantedTravels: [] }], draws, reserveMm);
    const contactRangeMm = drawn?.intervals.contact ?? null;
    const rangeMm = drawn?.intervals.hardLimit ?? null;
    const { limit } = budget;
    found.push({
      side: corner.side,
      gapMm: budget.gapMm,
      contactMm: budget.contactMm,
      contactRangeMm,
      limit: limit && {
        kind: limit.kind,
        travelMm: limit.hardLimitMm,
        rangeMm,
        compressionMm: -limit.spacerMm,
      },
      neverMet: contactRangeMm !== null && rangeMm !== null && rangeMm[1] < contactRangeMm[0],
    });
  }
  return succeed(found);
}

/** What is known of a corner, in one to three sentences. */
export function withoutCurveSentences(corner: TravelWithoutCurve): readonly Sentence[] {
  const { contactMm, contactRangeMm, limit, gapMm } = corner;
  const range =
    contactRangeMm === null ? "" : range95(length(contactRangeMm[0]), length(contactRangeMm[1]));
  const contact: Sentence =
    gapMm < 0
      ? [messages.stopIsPressedBy({ gapMm: length(-gapMm) })]
      : [messages.stopTouchesAfterOfWheel({ contactMm: length(contactMm), range })];
  if (limit === null) {
    return [contact, [messages.noClearanceWasMeasuredSo]];
  }
  const touches = capital(limitTouches[limit.kind]);
  if (corner.neverMet) {
    return [contact, [messages.firstAfterStopIs({ touches, travelMm: length(limit.travelMm) })]];
  }
  return [
    contact,
    [messages.after({ touches, travelMm: length(limit.travelMm) })],
    limit.compressionMm > 0
      ? [messages.stopFitsThisTravel({ compressionMm: length(limit.compressionMm) })]
      : [messages.noCompressionOfStop],
  ];
}
