import * as messages from "../../words/compiled/physics/budget.ts";
import type { Corner, Fitment, LimitKind } from "../fitment.ts";
import { layoutRegistry } from "../layouts/geometryRegistry.ts";
import { fail, type Outcome, succeed } from "../outcome.ts";
import { readingName } from "../readingNames.ts";
import type { QuantityId } from "../readings/readingId.ts";
import { capital, length } from "../sentence.ts";
import { type CornerAtMeans, cornerAtMeans, motionToDraw } from "./cornerAtMeans.ts";
import { CornerModel, type FigureName, figureCount, figureIn } from "./cornerModel.ts";
import type { CornerPlace } from "./cornerPlaces.ts";

/** A corner's travel budget at its mean readings. Lengths mm, wheel travel from the ride height. */
export interface TravelBudget {
  readonly gapMm: number;
  /** R at the measured ride height, wheel per stop. */
  readonly leverRatio: number;
  /** R where the stop is fully pressed. */
  readonly leverRatioAtFullStop: number;
  readonly contactMm: number;
  readonly fullStopMm: number;
  /** z_c, not below 0, over z_u or z_h, whichever comes first; null where no travel is left. */
  readonly freeShare: number | null;
  /** Null where no hard limit was measured. */
  readonly limit: {
    readonly kind: LimitKind;
    /** Its reading. */
    readonly id: QuantityId;
    readonly hardLimitMm: number;
    /** s(z_h): how far the stop would have closed at the hard limit. */
    readonly closingMm: number;
    readonly reserveMm: number;
    readonly spacerMm: number;
    readonly tallerMm: number;
  } | null;
  /** Beam axle with one wheel up and the other on the ground. */
  readonly oneWheel: {
    readonly leverRatio: number;
    readonly contactMm: number;
    readonly fullStopMm: number;
  } | null;
}

/** A corner made ready: what the draws, the differences and the checks take further. */
export interface CornerBudget extends CornerAtMeans {
  readonly model: CornerModel;
  readonly budget: TravelBudget;
}

/**
 * The travel budget of one corner.
 *
 * @param reserveWanted mm that must be left between full stop and hard limit, ≥ 0
 * Errors: those of `cornerAtMeans`; `gapOutOfReach` and `fullStopOutOfReach` where the layout cannot
 * close the stop that far; `limitOutOfReach` where it cannot move to what is wanted before the limit.
 */
export function travelBudget(
  fitment: Fitment,
  corner: Corner,
  reserveWanted: number,
): Outcome<CornerBudget> {
  const atMeans = cornerAtMeans(fitment, corner);
  if (!atMeans.ok) return atMeans;
  const { kinematics, places, means, gapMm, limit } = atMeans.value;
  const motion = motionToDraw(fitment, corner);
  if (!motion.ok) return motion;
  const ratio = kinematics.ratio(0);
  if (!ratio.ok) return ratio;
  const model = new CornerModel(fitment, corner, motion.value, places, reserveWanted);
  const figures = new Float64Array(figureCount);
  if (!model.evaluate(means, figures)) {
    return outOfReach(fitment, atMeans.value, (places.all[places.stands] as CornerPlace).id);
  }
  const at = (name: FigureName): number => figureIn(figures, name);
  const atFullStop = kinematics.ratio(at("fullStop"));
  if (!atFullStop.ok) return atFullStop;
  const closing = limit === null ? null : kinematics.closing(at("hardLimit"));
  if (closing !== null && !closing.ok) return closing;
  const share = layoutRegistry[fitment.layout.kind].joinsWheels ? model.oneWheelShare(means) : null;
  const travelMm = limit === null ? at("fullStop") : Math.min(at("fullStop"), at("hardLimit"));
  return succeed({
    ...atMeans.value,
    model,
    budget: {
      gapMm,
      leverRatio: ratio.value,
      leverRatioAtFullStop: atFullStop.value,
      contactMm: at("contact"),
      fullStopMm: at("fullStop"),
      freeShare: freeShareOf(at("contact"), travelMm),
      limit:
        limit === null || closing === null
          ? null
          : {
              kind: limit.kind,
              id: limit.id,
              hardLimitMm: at("hardLimit"),
              closingMm: closing.value,
              reserveMm: at("reserve"),
              spacerMm: at("spacer"),
              tallerMm: at("taller"),
            },
      oneWheel:
        share === null
          ? null
          : {
              leverRatio: ratio.value / share,
              contactMm: at("contact") / share,
              fullStopMm: at("fullStop") / share,
            },
    },
  });
}

export const freeShareFormula = messages.freeShareZC;

/** A share of no travel, or of next to none, is no number. */
export function freeShareOf(contactMm: number, travelMm: number): number | null {
  const share = Math.max(0, contactMm) / travelMm;
  return travelMm > 0 && Number.isFinite(share) ? share : null;
}

function outOfReach(
  { stop }: Fitment,
  { kinematics, gapMm, limit }: CornerAtMeans,
  standsId: QuantityId,
): Outcome<never> {
  if (!kinematics.wheelTravel(gapMm).ok) {
    return fail(
      "gapOutOfReach",
      [
        messages.isMoreThanThisSuspension({
          readingName: capital(readingName(standsId)),
          gapMm: length(gapMm),
        }),
      ],
      standsId,
    );
  }
  if (!kinematics.wheelTravel(gapMm + stop.usableCompressionMm).ok) {
    return fail(
      "fullStopOutOfReach",
      [
        messages.thisSuspensionCannotPress({
          usableCompressionMm: length(stop.usableCompressionMm),
          readingName: readingName(standsId),
          gapMm: length(gapMm),
        }),
      ],
      standsId,
    );
  }
  return fail("limitOutOfReach", [messages.hardContactLiesWhere], limit?.id ?? standsId);
}
