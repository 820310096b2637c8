import * as messages from "../words/compiled/physics.ts";
import type { Fitment, UseRules } from "./fitment.ts";
import type { Fault } from "./outcome.ts";
import { readingName } from "./readingNames.ts";
import { rideQuantities } from "./readings/rideReadings.ts";
import { roughness } from "./road/roughness.ts";
import { capital, type Message } from "./sentence.ts";

/** A quantity that can be computed with: 0, or of a size that neither vanishes nor overflows. */
function usable(value: number): boolean {
  return value === 0 || (value >= 1e-6 && value <= 1e6);
}

/**
 * What is wrong with a fitment as a whole, before any corner is looked at; null where nothing is.
 *
 * `cornersWrong`: other than one or two different sides; `rideOutOfRange`: a ride value or its ± that
 * is no number of 0 or 1e-6…1e6, naming it; `rulesOutOfRange`: the same for a demand of the use, where
 * speed and contacts allowed must be above 0.
 */
export function fitmentFault(fitment: Fitment, rules: UseRules): Fault | null {
  const sides = new Set(fitment.corners.map(({ side }) => side));
  if (fitment.corners.length === 0 || sides.size !== fitment.corners.length || sides.size > 2) {
    return {
      code: "cornersWrong",
      sentence: [messages.checkNeedsOneOr],
    };
  }
  return rideFault(fitment) ?? rulesFault(rules);
}

function rideFault({ ride }: Fitment): Fault | null {
  for (const name of rideQuantities) {
    const id = `ride.${name}`;
    const value = ride?.[name];
    const tolerance = ride?.tolerances?.[name];
    if (value !== undefined && !usable(value)) {
      return {
        code: "rideOutOfRange",
        sentence: [messages.isNotUsableNumber({ readingName: capital(readingName(id)) })],
        reading: id,
      };
    }
    if (tolerance !== undefined && !usable(tolerance)) {
      return {
        code: "rideOutOfRange",
        sentence: [messages.ofIsNotUsable({ readingName: readingName(id) })],
        reading: id,
      };
    }
  }
  return null;
}

function rulesFault(rules: UseRules): Fault | null {
  const demands: readonly [Message, number, boolean][] = [
    [messages.speedOnRoad, rules.speedKmPerH, true],
    [messages.numberOfContactsAllowed, rules.allowedContactsPerKm, true],
    [messages.accelerationCap, rules.accelerationCapG, false],
    [messages.reserveWanted, rules.reserveMm, false],
    [messages.differenceAllowedLeftTo, rules.balanceMm, false],
  ];
  for (const [name, value, aboveZero] of demands) {
    if (usable(value) && !(aboveZero && value === 0)) continue;
    return {
      code: "rulesOutOfRange",
      sentence: [messages.isNotUsableNumberSet({ name })],
    };
  }
  return Object.hasOwn(roughness, rules.roadClass)
    ? null
    : { code: "rulesOutOfRange", sentence: [messages.roadClassMustBe] };
}
