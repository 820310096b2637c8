import { type CornerAtMeans, cornerAtMeans } from "../../../src/physics/budget/cornerAtMeans.ts";
import { type CornerBudget, travelBudget } from "../../../src/physics/budget/travelBudget.ts";
import type { Corner, Fitment } from "../../../src/physics/fitment.ts";
import type { Outcome } from "../../../src/physics/outcome.ts";
import { unwrapped } from "../demoFitments.ts";

/** The first corner of a fitment at its mean readings. */
export function atMeansOf(fitment: Fitment): Outcome<CornerAtMeans> {
  return cornerAtMeans(fitment, fitment.corners[0] as Corner);
}

/** The first corner of a fitment, made ready, with 5 mm of reserve wanted. */
export function budgetOf(fitment: Fitment): CornerBudget {
  return unwrapped(travelBudget(fitment, fitment.corners[0] as Corner, 5));
}

/** Ids of a corner's quantities, in order. */
export function idsOf({ places }: Pick<CornerAtMeans, "places">): readonly string[] {
  return places.all.map(({ id }) => id);
}

/** What is drawn of a quantity of a corner. */
export function drawnOf({ places }: Pick<CornerAtMeans, "places">, id: string) {
  return places.all.find((place) => place.id === id)?.drawn;
}
