import type { Assessment, Corner, Fitment } from "../../../physics/fitment.ts";
import { succeed } from "../../../physics/outcome.ts";
import { comparedFitment, shiftedGap, tallerStop } from "./comparedFitment.ts";
import type { OtherStop } from "./useComparison.ts";

/**
 * The height that the answer proposes, as a stop that can be assessed: by a taller stop of the same
 * build where that is not met too early, else by a spacer. One height for every side. Null: the answer
 * proposes no other height.
 */
export function proposedStop(fitment: Fitment, { corners }: Assessment): OtherStop | null {
  if (!corners.some(({ advice }) => advice.some(({ kind }) => kind === "taller"))) return null;
  const most = Math.min(...corners.map(({ mostExtraHeightMm: height }) => height ?? Infinity));
  const greatest = (heights: readonly (number | null | undefined)[]) =>
    Math.max(...heights.map((height) => height ?? 0));
  const taller = greatest(corners.map(({ tallerMm }) => tallerMm));
  if (taller > 0 && taller <= most) {
    return {
      name: "taller stop proposed",
      fitment: comparedFitment(fitment, tallerStop(fitment.stop, taller)),
      assumed: [
        "The taller stop is of the same build and stiffness class.",
        ...(fitment.stop.testedAtSpeed ? ["It is not tested at speed: without damping."] : []),
      ],
    };
  }
  const least = greatest(corners.map(({ spacerMm }) => spacerMm));
  const sure = greatest(corners.map(({ intervals }) => intervals.spacerMm?.[1]));
  const spacer = least > 0 ? least : sure;
  return spacer > 0 && spacer <= most
    ? {
        name: "with the spacer proposed",
        fitment: succeed(withSpacer(fitment, spacer)),
        assumed: ["The spacer is rigid."],
      }
    : null;
}

function withSpacer(fitment: Fitment, heightMm: number): Fitment {
  const raised = (corner: Corner): Corner => ({
    ...corner,
    gap: shiftedGap(corner.gap, heightMm, []),
  });
  return { ...fitment, corners: fitment.corners.map(raised) };
}
