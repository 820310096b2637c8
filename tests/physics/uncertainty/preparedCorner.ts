import { type CornerBudget, travelBudget } from "../../../src/physics/budget/travelBudget.ts";
import type { Fitment, UseRules } from "../../../src/physics/fitment.ts";
import { type RoadTravel, roadTravel } from "../../../src/physics/road/roadTravel.ts";
import { rulesOf } from "../../../src/physics/road/useRules.ts";
import { stopCurve } from "../../../src/physics/stop/stopCurve.ts";
import { meanOf } from "../../../src/physics/uncertainty/readingMean.ts";
import type { RoadCornerWithCurve } from "../../../src/physics/uncertainty/wantedTravel.ts";
import { unwrapped } from "../demoFitments.ts";

export interface PreparedCorner {
  readonly rules: UseRules;
  readonly budget: CornerBudget;
  readonly road: { readonly corner: RoadCornerWithCurve; readonly travel: RoadTravel };
}

/** A corner of a fitment as far as the draws and the differences need it; its stop comes in hard. */
export function preparedCorner(fitment: Fitment, index = 0): PreparedCorner {
  const rules = rulesOf(fitment.use, fitment.rules);
  const corner = fitment.corners[index];
  if (corner === undefined) throw new Error("no such corner");
  const budget = unwrapped(travelBudget(fitment, corner, rules.reserveMm));
  const { ride } = fitment;
  const onRoad: RoadCornerWithCurve = {
    kinematics: budget.kinematics,
    stop: unwrapped(stopCurve(fitment.stop)),
    gapMm: budget.budget.gapMm,
    heldAtRideN: 0,
    travelToContactMm: budget.budget.contactMm,
    progressive: false,
    cornerMassKg: corner.cornerMassKg === undefined ? null : meanOf(corner.cornerMassKg),
    wheelRateNPerMm: ride?.wheelRateNPerMm ?? null,
    tyreRateNPerMm: ride?.tyreRateNPerMm ?? null,
    damperBumpNsPerMm: ride?.damperBumpNsPerMm ?? null,
    damperReboundNsPerMm: ride?.damperReboundNsPerMm ?? null,
    payloadKg: ride?.payloadPerCornerKg ?? null,
  };
  return { rules, budget, road: { corner: onRoad, travel: roadTravel(onRoad, rules) } };
}
