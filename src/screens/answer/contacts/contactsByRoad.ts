import { gapOf } from "../../../physics/budget/gap.ts";
import type { Corner, Fitment, RoadClass } from "../../../physics/fitment.ts";
import { kinematicsOf } from "../../../physics/kinematics/kinematics.ts";
import { type Outcome, succeed } from "../../../physics/outcome.ts";
import { type RoadCorner, roadTravel } from "../../../physics/road/roadTravel.ts";
import { roadClasses } from "../../../physics/road/roughness.ts";
import { rulesOf } from "../../../physics/road/useRules.ts";
import { isProgressive } from "../../../physics/stop/stiffnessClass.ts";
import { stopCurve } from "../../../physics/stop/stopCurve.ts";
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
  const stop = stopCurve(fitment.stop);
  if (!stop.ok) return stop;
  const gap = gapOf(fitment, corner);
  if (!gap.ok) return gap;
  const gapMm = gap.value;
  const contact = kinematics.value.wheelTravel(gapMm);
  if (!contact.ok) return contact;
  const { ride } = fitment;
  const road: RoadCorner = {
    kinematics: kinematics.value,
    stop: stop.value,
    gapMm,
    travelToContactMm: contact.value,
    progressive: isProgressive(stop.value),
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
