import type { Advice, Assessment, Fitment } from "../../../physics/fitment.ts";
import { succeed } from "../../../physics/outcome.ts";
import { fitmentWithStop } from "../../../physics/prescription/fitmentWithStop.ts";
import { mm, quantity } from "../formulas/workedFigure.ts";
import { tallerStop } from "./tallerStop.ts";
import type { OtherStop } from "./useComparison.ts";

/**
 * What the answer proposes, as a stop that can be assessed on this vehicle: another height, or where
 * the height stays, another stiffness class. Null: it proposes neither.
 */
export function proposedStop(fitment: Fitment, assessment: Assessment): OtherStop | null {
  const proposes = (wanted: Advice["kind"]) =>
    assessment.corners.some(({ advice }) => advice.some(({ kind }) => kind === wanted));
  if (proposes("taller")) return otherHeight(fitment, assessment);
  return proposes("otherStiffness") ? otherClass(fitment, assessment) : null;
}

/**
 * One height for every side, by a taller stop of the same build or by a spacer, enough to be sure of
 * (the upper end of its range) where that is not met too early.
 */
function otherHeight(fitment: Fitment, { corners }: Assessment): OtherStop | null {
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

/** The class nearest to the fitted one of those that work on every side; heights and damping stay. */
function otherClass(fitment: Fitment, { corners }: Assessment): OtherStop | null {
  const [first, ...others] = corners;
  if (!first) return null;
  const rate = first.secantRateNPerMm;
  const distance = (stiffnessClass: number) => Math.abs(Math.log(stiffnessClass / rate));
  const [nearest] = (first.classesThatWork ?? [])
    .filter((one) => others.every(({ classesThatWork }) => classesThatWork?.includes(one)))
    .sort((a, b) => distance(a) - distance(b));
  if (nearest === undefined) return null;
  const curve = fitment.stop.curve.map(
    ([depth, force]) => [depth, (force * nearest) / rate] as const,
  );
  return {
    name: ["this stop in class ", quantity("stiffnessClass", nearest)],
    fitment: succeed({ ...fitment, stop: { ...fitment.stop, curve } }),
    assumed: ["The other class is this stop's curve scaled, its damping as it is."],
  };
}

function tallerByBuild(fitment: Fitment, heightMm: number): OtherStop {
  return {
    name: ["a stop taller by ", mm(heightMm)],
    fitment: fitmentWithStop(fitment, tallerStop(fitment.stop, heightMm)),
    assumed: [
      "The taller stop is of the same build and stiffness class.",
      ...(fitment.stop.testedAtSpeed ? ["It is not tested at speed: without damping."] : []),
    ],
  };
}

function withSpacer(fitment: Fitment, heightMm: number): OtherStop {
  return {
    name: ["a spacer of ", mm(heightMm)],
    fitment: fitmentWithStop(fitment, fitment.stop, heightMm),
    assumed: ["The spacer is rigid."],
  };
}
