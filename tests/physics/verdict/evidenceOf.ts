import { travelBudget } from "../../../src/physics/budget/travelBudget.ts";
import type { Check, Corner, Fitment } from "../../../src/physics/fitment.ts";
import type { RoadTravel } from "../../../src/physics/road/roadTravel.ts";
import { rulesOf } from "../../../src/physics/road/useRules.ts";
import type { CornerDraws } from "../../../src/physics/uncertainty/cornerDraws.ts";
import type { CornerEvidence } from "../../../src/physics/verdict/cornerEvidence.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";
import { unwrapped } from "../demoFitments.ts";

export interface EvidenceChange extends Partial<Omit<CornerEvidence, "draws" | "road">> {
  readonly draws?: Partial<CornerDraws>;
  readonly road?: Partial<RoadTravel>;
}

/** What is measured of the first corner, with what the draws and the road say of it made up. */
export function evidenceOf(
  fitment: Fitment,
  { draws, road, ...change }: EvidenceChange = {},
): CornerEvidence {
  const rules = rulesOf(fitment.use, fitment.rules);
  const none = { contact: null, fullStop: null, hardLimit: null, reserve: null };
  return {
    fitment,
    rules,
    corner: unwrapped(travelBudget(fitment, fitment.corners[0] as Corner, rules.reserveMm)),
    road: {
      roadTravelSigmaMm: null,
      zeroUpcrossingsPerS: null,
      contactsPerKm: null,
      freeTravelNeededUnladenMm: null,
      loadedSagMm: null,
      loadedTravelToContactMm: null,
      loadedTravelSigmaMm: null,
      loadedContactsPerKm: null,
      freeTravelNeededMm: null,
      mostExtraHeightMm: null,
      faults: [],
      ...road,
    },
    draws: {
      outsideShare: 0,
      intervals: { ...none, spacer: null, taller: null },
      reserveWanted: 0.5,
      reserveAboveZero: 0.99,
      contactBeyond: [],
      ...draws,
    },
    contactBeyond: { laden: null, unladen: null },
    doubt: { reserve: [], contact: [] },
    missing: [],
    loadedCompressionMm: null,
    estimatedCompressionMm: null,
    ...change,
  };
}

/** A check in one line. */
export function toldOf({ id, state, probability, reading, sentence }: Check): string {
  const kept = probability === undefined ? "" : ` P ${probability}`;
  return `${id} ${state}${kept} ${reading ?? "-"}: ${inModelUnits(sentence)}`;
}
