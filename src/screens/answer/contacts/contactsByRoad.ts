import { cornerAtMeans } from "../../../physics/budget/index.ts";
import type { Corner, Fitment, RoadClass } from "../../../physics/fitment.ts";
import { type Outcome, succeed } from "../../../physics/outcome.ts";
import {
  type RoadCorner,
  restingStop,
  roadClasses,
  roadTravel,
  rulesOf,
} from "../../../physics/road/index.ts";
import { isProgressive } from "../../../physics/stop/index.ts";
import { meanOf } from "../../../physics/uncertainty/index.ts";

export interface RoadContacts {
  readonly roadClass: RoadClass;
  readonly unladenPerKm: number | null;
  readonly ladenPerKm: number | null;
}

/** Contacts per km of one corner on each road class, at the speed of the use. */
export function contactsByRoad(fitment: Fitment, corner: Corner): Outcome<readonly RoadContacts[]> {
  const atMeans = cornerAtMeans(fitment, corner);
  if (!atMeans.ok) return atMeans;
  const { kinematics } = atMeans.value;
  const resting = restingStop(fitment, corner, kinematics);
  if (!resting.ok) return resting;
  const contact = kinematics.wheelTravel(resting.value.gapMm);
  if (!contact.ok) return contact;
  const { ride } = fitment;
  const road: RoadCorner = {
    kinematics,
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
