import { figureCount, figureIn } from "../budget/cornerModel.ts";
import type { CornerBudget } from "../budget/travelBudget.ts";
import type { DoubtShare, Fitment, UseRules } from "../fitment.ts";
import type { RoadTravel } from "../road/roadTravel.ts";
import type { DrawnReading } from "./drawnReading.ts";
import { doubtShares, firstOrderContributions } from "./firstOrder.ts";
import {
  type RideInDoubt,
  type RoadCornerWithCurve,
  rideInDoubt,
  WantedTravelModel,
} from "./wantedTravel.ts";

/** Which readings the doubt about a corner comes from. */
export interface CornerDoubt {
  /** About the reserve; empty without limits. */
  readonly reserve: readonly DoubtShare[];
  /** About the travel to contact and, where ride values were estimated, the free travel wanted. */
  readonly contact: readonly DoubtShare[];
}

/** First-order shares of a corner's doubt; see `firstOrderContributions` for where they mislead. */
export function cornerDoubt(
  { model, places, means, budget }: CornerBudget,
  fitment: Fitment,
  road: { readonly corner: RoadCornerWithCurve; readonly travel: RoadTravel },
  rules: UseRules,
): CornerDoubt {
  const readings = new Map<string, DrawnReading>();
  for (const { drawn } of places.all) readings.set(drawn.id, drawn);
  const drawn = [...readings.values()];
  const values = new Float64Array(means.length);
  const figures = new Float64Array(figureCount);
  const contributions = (name: "reserve" | "contact", atMeans: number) =>
    firstOrderContributions(
      drawn,
      (index, value) => {
        values.set(means);
        const { id } = drawn[index] as DrawnReading;
        for (const [place, filled] of places.all.entries()) {
          if (filled.id === id) values[place] = value;
        }
        return model.evaluate(values, figures) ? figureIn(figures, name) : Number.NaN;
      },
      atMeans,
    );
  const ride = rideInDoubt(fitment);
  const wanted = wantedContributions(fitment, road, rules, ride);
  return {
    reserve:
      budget.limit === null
        ? []
        : doubtShares(drawn, contributions("reserve", budget.limit.reserveMm)),
    contact: doubtShares(
      [...drawn, ...ride],
      Float64Array.of(...contributions("contact", budget.contactMm), ...wanted),
    ),
  };
}

function wantedContributions(
  fitment: Fitment,
  road: { readonly corner: RoadCornerWithCurve; readonly travel: RoadTravel },
  rules: UseRules,
  ride: readonly RideInDoubt[],
): Float64Array {
  const laden = road.travel.freeTravelNeededMm;
  const atMeans = laden ?? road.travel.freeTravelNeededUnladenMm;
  if (atMeans === null) return new Float64Array(ride.length);
  return firstOrderContributions(
    ride,
    (index, value) => {
      const model = new WantedTravelModel(road.corner, fitment.ride ?? {}, rules);
      model.set((ride[index] as RideInDoubt).place, value);
      return laden === null ? model.unladen() : model.laden();
    },
    atMeans,
  );
}
