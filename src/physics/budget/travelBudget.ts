import type { Corner, Fitment, LimitKind, Linkage } from "../fitment.ts";
import { type Kinematics, kinematicsOf } from "../kinematics/kinematics.ts";
import { fail, type Outcome, succeed } from "../outcome.ts";
import { readingName } from "../readingNames.ts";
import { capital, length } from "../sentence.ts";
import { CornerModel, figure } from "./cornerModel.ts";
import { type CornerPlace, cornerReadings, placeMeans } from "./cornerReadings.ts";
import { gapOf, gapReadingOf } from "./gap.ts";
import { travelToHardLimit } from "./hardLimit.ts";

/** A corner's travel budget at its mean readings. Lengths mm, wheel travel from the ride height. */
export interface TravelBudget {
  readonly gapMm: number;
  /** R at the measured ride height, wheel per stop. */
  readonly leverRatio: number;
  /** R where the stop is fully pressed. */
  readonly leverRatioAtFullStop: number;
  readonly contactMm: number;
  readonly fullStopMm: number;
  /** Null where no hard limit was measured. */
  readonly limit: {
    readonly kind: LimitKind;
    readonly index: number;
    readonly hardLimitMm: number;
    /** s(z_h): how far the stop would have closed at the hard limit. */
    readonly closingMm: number;
    /** z_c / min(z_u, z_h): the share of the travel before the stop is met; null where none is left. */
    readonly freeShare: number | null;
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
export interface CornerBudget {
  readonly corner: Corner;
  readonly kinematics: Kinematics;
  readonly linkage: Linkage;
  readonly places: readonly CornerPlace[];
  readonly model: CornerModel;
  readonly budget: TravelBudget;
}

/**
 * The travel budget of one corner.
 *
 * @param reserveWanted mm that must be left between full stop and hard limit, ≥ 0
 * Errors: those of `cornerReadings`, `kinematicsOf` and `travelToHardLimit`; `gapOutOfReach` and
 * `fullStopOutOfReach` where the layout cannot close the stop that far.
 */
export function travelBudget(
  fitment: Fitment,
  corner: Corner,
  reserveWanted: number,
): Outcome<CornerBudget> {
  const places = cornerReadings(fitment, corner);
  if (!places.ok) return places;
  const { layout, stop } = fitment;
  const kinematics = kinematicsOf(layout, corner);
  if (!kinematics.ok) return kinematics;
  const limit = travelToHardLimit(corner, kinematics.value);
  if (!limit.ok) return limit;
  const stands = gapReadingOf(corner);
  if (!stands.ok) return stands;
  const gapId = stands.value.id;
  const gap = gapOf(fitment, corner);
  if (!gap.ok) return gap;
  const gapMm = gap.value;
  const ratio = kinematics.value.ratio(0);
  if (!ratio.ok) return ratio;
  if (!kinematics.value.wheelTravel(gapMm).ok) {
    return fail(
      "gapOutOfReach",
      [
        `${capital(readingName(gapId))}, `,
        length(gapMm),
        ", is more than this suspension can close. Measure it and the arm's readings again.",
      ],
      gapId,
    );
  }
  if (!kinematics.value.wheelTravel(gapMm + stop.usableCompressionMm).ok) {
    return fail(
      "fullStopOutOfReach",
      [
        "This suspension cannot press the stop by its usable ",
        length(stop.usableCompressionMm),
        ` after ${readingName(gapId)} of `,
        length(gapMm),
        ". Measure the gap and the arm's readings again.",
      ],
      gapId,
    );
  }
  const model = new CornerModel(fitment, corner, reserveWanted);
  const figures = new Float64Array(6);
  if (!model.evaluate(placeMeans(places.value), figures)) {
    return fail(
      "limitOutOfReach",
      ["The hard limit lies where this suspension cannot reach. Measure it again."],
      `${corner.side}.limits.${limit.value?.index ?? 0}`,
    );
  }
  const atFullStop = kinematics.value.ratio(figures[figure.fullStop] as number);
  if (!atFullStop.ok) return atFullStop;
  const at = (name: keyof typeof figure): number => figures[figure[name]] as number;
  const one = oneWheelBudget(fitment, corner, gapMm);
  if (!one.ok) return one;
  const hardLimitMm = at("hardLimit");
  const closing = limit.value === null ? null : kinematics.value.closing(hardLimitMm);
  if (closing !== null && !closing.ok) return closing;
  return succeed({
    corner,
    kinematics: kinematics.value,
    linkage: kinematics.value.linkage,
    places: places.value,
    model,
    budget: {
      gapMm,
      leverRatio: ratio.value,
      leverRatioAtFullStop: atFullStop.value,
      contactMm: at("contact"),
      fullStopMm: at("fullStop"),
      limit:
        limit.value === null || closing === null
          ? null
          : {
              kind: limit.value.kind,
              index: limit.value.index,
              hardLimitMm,
              closingMm: closing.value,
              freeShare: freeShareOf(at("contact"), Math.min(at("fullStop"), hardLimitMm)),
              reserveMm: at("reserve"),
              spacerMm: at("spacer"),
              tallerMm: at("taller"),
            },
      oneWheel: one.value,
    },
  });
}

/** A share of no travel, or of next to none, is no number. */
function freeShareOf(contactMm: number, travelMm: number): number | null {
  const share = contactMm / travelMm;
  return Number.isFinite(share) ? share : null;
}

function oneWheelBudget(
  fitment: Fitment,
  corner: Corner,
  gapMm: number,
): Outcome<TravelBudget["oneWheel"]> {
  if (fitment.layout.kind !== "axle") return succeed(null);
  const kinematics = kinematicsOf(fitment.layout, corner, "one");
  if (!kinematics.ok) return kinematics;
  const ratio = kinematics.value.ratio(0);
  const contact = kinematics.value.wheelTravel(gapMm);
  const fullStop = kinematics.value.wheelTravel(gapMm + fitment.stop.usableCompressionMm);
  if (!ratio.ok) return ratio;
  if (!contact.ok) return contact;
  if (!fullStop.ok) return fullStop;
  return succeed({
    leverRatio: ratio.value,
    contactMm: contact.value,
    fullStopMm: fullStop.value,
  });
}
