import type { Corner, Fitment, RoadClass } from "../../../physics/fitment.ts";
import { kinematicsOf } from "../../../physics/kinematics/kinematics.ts";
import { type Outcome, succeed } from "../../../physics/outcome.ts";
import { restingStop } from "../../../physics/road/heldAtRide.ts";
import { type RoadCorner, roadTravel } from "../../../physics/road/roadTravel.ts";
import { roadClasses } from "../../../physics/road/roughness.ts";
import { rulesOf } from "../../../physics/road/useRules.ts";
import { isProgressive } from "../../../physics/stop/stiffnessClass.ts";
import { meanOf } from "../../../physics/uncertainty/readingMean.ts";

export interface RoadContacts {
  readonly roadClass: RoadClass;
  readonly unladenPerKm: number | null;
  readonly ladenPerKm: number | null;
}

/** Contacts per km of one corner on each road class, at the speed of the use. */
export function contactsByRoad(fitment: Fitment, corner: Corner): Outcome<readonly RoadContacts[]> {
  const kinematics = kinematicsOf(fitment.layout, corner);
  if (!kinematics.ok) return kinematics;
  const resting = restingStop(fitment, corner, kinematics.value);
  if (!resting.ok) return resting;
  const contact = kinematics.value.wheelTravel(resting.value.gapMm);
  if (!contact.ok) return contact;
  const { ride } = fitment;
  const road: RoadCorner = {
    kinematics: kinematics.value,
    ...resting.value,
    travelToContactMm: contact.value,
    progressive: isProgressive(resting.value.stop),
    cornerMassKg: corner.cornerMassKg ? meanOf(corner.cornerMassKg) : null,
    wheelRateNPerMm: ride?.wheelRateNPerMm ?? null,
    tyreRateNPerMm: ride?.tyreRateNPerMm ?? null,
    damperBumpNsPerMm: ride?.damperBumpNsPerMm ?? null,
    damperReboundNsPerMm: ride?.damperReboundNsPerMm ?? null,
    payloadKg: ride?.payloadPerCornerKg ?? null,
  };
  const rules = rulesOf(fitment.use, fitment.rules);
  return succeed(
    roadClasses.map((roadClass) => {
      const travel = roadTravel(road, { ...rules, roadClass });
      return {
        roadClass,
        unladenPerKm: travel.contactsPerKm,
        ladenPerKm: travel.loadedContactsPerKm,
      };
    }),
  );
}
