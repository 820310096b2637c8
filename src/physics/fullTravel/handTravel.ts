import * as messages from "../../words/compiled/physics/fullTravel.ts";
import type { FullTravelCheck, FullTravelCorner, Reading } from "../fitment.ts";
import { fail, type Outcome, succeed } from "../outcome.ts";
import { checkedMean } from "../uncertainty/checkedMean.ts";
import { spreadOf, standardUncertainty } from "../uncertainty/drawnReading.ts";
import { type MetPart, partTouches, touchedParts } from "./fullTravelCheck.ts";

/** Wheel travel at one contact as found by hand, mm from the measured ride height. */
interface HandTravel {
  readonly part: MetPart;
  /** The mean as it was read: the travel itself, or the height from hub to fender. mm. */
  readonly readingMm: number;
  readonly travelMm: number;
  /** Of the reading taken at this contact alone, mm. */
  readonly ownUncertaintyMm: number;
}

export interface HandTravels {
  readonly travels: readonly HandTravel[];
  /** Of the height at ride, which all travels share where heights are measured; else 0. mm. */
  readonly sharedUncertaintyMm: number;
}

/**
 * Wheel travel at each contact: as read, or the height from hub to fender at ride less that at the
 * contact. u = √(tol²/3 + s²/n) of each reading (JCGM 100:2008, 4.3.7, 4.2.3).
 *
 * Errors, by the reading "fullTravel.<side>.<part>" or "fullTravel.<side>.atRide": those of
 * `checkedMean`; `heightMissing` where the height at ride was not measured; `heightNotLess` where a
 * height is not less than that at ride, so that the wheel would not have moved up.
 */
export function handTravels(
  check: FullTravelCheck,
  corner: FullTravelCorner,
): Outcome<HandTravels> {
  const place = `fullTravel.${corner.side}`;
  const heights = check.measure === "hubToArch";
  const { atRide } = corner;
  if (heights && atRide === undefined) {
    return fail(
      "heightMissing",
      [messages.heightFromHubTo({ side: corner.side })],
      `${place}.atRide`,
    );
  }
  const ride = heights ? checkedMean(atRide, `${place}.atRide`, "length") : succeed(0);
  if (!ride.ok) return ride;
  const travels: HandTravel[] = [];
  for (const [part, reading] of contactsOf(corner)) {
    const id = `${place}.${part}`;
    const mean = checkedMean(reading, id, heights ? "length" : "gap");
    if (!mean.ok) return mean;
    const travelMm = heights ? ride.value - mean.value : mean.value;
    if (travelMm < 0) {
      return fail(
        "heightNotLess",
        [messages.heightWhereIsMore({ part: partTouches[part], side: corner.side })],
        id,
      );
    }
    travels.push({
      part,
      readingMm: mean.value,
      travelMm,
      ownUncertaintyMm: standardUncertainty(spreadOf(reading)),
    });
  }
  return succeed({
    travels,
    sharedUncertaintyMm:
      heights && atRide !== undefined ? standardUncertainty(spreadOf(atRide)) : 0,
  });
}

/** Every contact of a side, the stop's and the block's first. */
export function contactsOf(corner: FullTravelCorner): readonly (readonly [MetPart, Reading])[] {
  const met = (part: MetPart) => (part === "block" ? corner.block?.reading : corner.contacts[part]);
  const parts: readonly MetPart[] = [
    "stop",
    "block",
    ...touchedParts.filter((part) => part !== "stop"),
  ];
  return parts.flatMap((part) => {
    const reading = met(part);
    return reading === undefined ? [] : [[part, reading] as const];
  });
}
