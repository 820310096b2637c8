import { assessFitment } from "../../src/physics/assess.ts";
import type { CornerAssessment } from "../../src/physics/fitment.ts";
import { demoFitment, unwrapped } from "../physics/demoFitments.ts";
import { demoNames as names } from "../support/demoRecords.ts";
import {
  compareWithVectors,
  type RiddenVectorCorner,
  riddenVectorCorner,
  tolerances,
} from "../vectors/vectors.ts";
import { publishedSource } from "./support/published.ts";

/*
 * tests/vectors/examples.json: what the demo checks must give, from an independent implementation of
 * the same model: another language, other solvers, 12 000 draws.
 */

const figures = {
  leverRatio: "lever ratio",
  wheelTravelToContactMm: "wheel travel to contact",
  wheelTravelToFullStopMm: "wheel travel to full stop",
  wheelTravelToHardLimitMm: "wheel travel to the hard limit",
  freeShare: "free share of the travel",
  reserveMm: "reserve",
  spacerMm: "spacer wanted",
  tallerMm: "taller stop wanted",
  secantRateNPerMm: "secant rate",
  roadTravelSigmaMm: "road travel, one standard deviation",
  contactsPerKm: "contacts per km, unladen",
  loadedSagMm: "sag under the payload",
  loadedTravelToContactMm: "travel to contact, loaded",
  loadedContactsPerKm: "contacts per km, loaded",
  freeTravelNeededMm: "free travel needed, loaded",
  freeTravelNeededUnladenMm: "free travel needed, unladen",
  mostExtraHeightMm: "most extra height",
} as const;
type Figure = keyof typeof figures;

let answered: readonly (readonly [CornerAssessment, RiddenVectorCorner])[] | undefined;

/** Every corner of the demo checks with ride data beside the vectors' figures for it. */
function pairs() {
  answered ??= names
    .filter((name) => demoFitment(name).ride !== undefined)
    .flatMap((name) => {
      const fitment = demoFitment(name);
      const { corners } = unwrapped(assessFitment(fitment));
      return corners.map(
        (corner) => [corner, riddenVectorCorner(fitment.id, corner.side)] as const,
      );
    });
  return answered;
}

function shareOff(own: number, wanted: number): number {
  return own === wanted ? 0 : Math.abs(own / wanted - 1);
}

export const independentImplementation = publishedSource(
  "An independent implementation of the model (tests/vectors)",
  "met",
  (published) => {
    for (const [figure, words] of Object.entries(figures) as [Figure, string][]) {
      published(
        `${words}, every corner: greatest share off`,
        0,
        () =>
          Math.max(
            ...pairs().map(([corner, wanted]) =>
              shareOff(Number(corner[figure]), Number(wanted[figure])),
            ),
          ),
        tolerances.static,
      );
    }
    for (const figure of ["wheelTravelToContactMm", "reserveMm"] as const) {
      published(
        `${figures[figure]}, ends of the 95 % interval: greatest share of its width off`,
        0,
        () =>
          Math.max(
            ...pairs().flatMap(([corner, { intervals }]) => {
              const wanted = intervals[figure] ?? [];
              const width = Number(wanted[1]) - Number(wanted[0]);
              const own = corner.intervals[figure] ?? [Number.NaN, Number.NaN];
              return own.map((end, index) => Math.abs(end - Number(wanted[index])) / width);
            }),
          ),
        tolerances.interval,
      );
    }
    for (const name of names) {
      published(`${name}: figures and states that disagree, impacts among them`, 0, () => {
        const fitment = demoFitment(name);
        const { corners } = unwrapped(assessFitment(fitment));
        return compareWithVectors(
          fitment.id,
          corners.map((corner) => ({ ...corner })),
        ).disagreements.length;
      });
    }
  },
);
