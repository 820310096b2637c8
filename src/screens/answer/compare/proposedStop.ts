import type { Assessment, Corner, Fitment } from "../../../physics/fitment.ts";
import { succeed } from "../../../physics/outcome.ts";
import { mm } from "../formulas/workedFigure.ts";
import { comparedFitment, shiftedGap, tallerStop } from "./comparedFitment.ts";
import type { OtherStop } from "./useComparison.ts";

/**
 * The height that the answer proposes, as a stop that can be assessed: one height for every side, by a
 * taller stop of the same build or by a spacer, enough to be sure of (the upper end of its range)
 * where that is not met too early. Null: the answer proposes no other height.
 */
export function proposedStop(fitment: Fitment, { corners }: Assessment): OtherStop | null {
  if (!corners.some(({ advice }) => advice.some(({ kind }) => kind === "taller"))) return null;
  const most = Math.min(
    ...corners.map(({ mostExtraHeightMm }) => mostExtraHeightMm ?? Number.POSITIVE_INFINITY),
  );
  const fits = (height: number) => height > 0 && height <= most;
  const greatest = (heights: readonly (number | null | undefined)[]) =>
    Math.max(...heights.map((height) => height ?? 0));
  const taller = [
    greatest(corners.map(({ intervals }) => intervals.tallerMm?.[1])),
    greatest(corners.map(({ tallerMm }) => tallerMm)),
  ];
  const spacers = [
    greatest(corners.map(({ intervals }) => intervals.spacerMm?.[1])),
    greatest(corners.map(({ spacerMm }) => spacerMm)),
  ];
  for (const place of [0, 1]) {
    const height = taller[place] ?? 0;
    if (fits(height)) return tallerByBuild(fitment, height);
    const spacer = spacers[place] ?? 0;
    if (fits(spacer)) return withSpacer(fitment, spacer);
  }
  return null;
}

function tallerByBuild(fitment: Fitment, heightMm: number): OtherStop {
  return {
    name: ["a stop taller by ", mm(heightMm)],
    fitment: comparedFitment(fitment, tallerStop(fitment.stop, heightMm)),
    assumed: [
      "The taller stop is of the same build and stiffness class.",
      ...(fitment.stop.testedAtSpeed ? ["It is not tested at speed: without damping."] : []),
    ],
  };
}

function withSpacer(fitment: Fitment, heightMm: number): OtherStop {
  const raised = (corner: Corner): Corner => ({
    ...corner,
    gap: shiftedGap(corner.gap, heightMm, []),
  });
  return {
    name: ["a spacer of ", mm(heightMm)],
    fitment: succeed({ ...fitment, corners: fitment.corners.map(raised) }),
    assumed: ["The spacer is rigid."],
  };
}
