import type { Fitment, UseRules } from "./fitment.ts";
import type { Fault } from "./outcome.ts";
import { readingName } from "./readingNames.ts";
import { rideQuantities } from "./readings/rideReadings.ts";
import { roughness } from "./road/roughness.ts";
import { capital } from "./sentence.ts";

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
      sentence: [
        "A check needs one or two corners, of different sides. Measure the left, the right or both.",
      ],
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
        sentence: [`${capital(readingName(id))} is not a usable number. Type it again.`],
        reading: id,
      };
    }
    if (tolerance !== undefined && !usable(tolerance)) {
      return {
        code: "rideOutOfRange",
        sentence: [`The ± of ${readingName(id)} is not a usable number. Type it again.`],
        reading: id,
      };
    }
  }
  return null;
}

function rulesFault(rules: UseRules): Fault | null {
  const demands: readonly [string, number, boolean][] = [
    ["The speed on the road", rules.speedKmPerH, true],
    ["The number of contacts allowed per km", rules.allowedContactsPerKm, true],
    ["The acceleration cap", rules.accelerationCapG, false],
    ["The reserve wanted", rules.reserveMm, false],
    ["The difference allowed left to right", rules.balanceMm, false],
  ];
  for (const [name, value, aboveZero] of demands) {
    if (usable(value) && !(aboveZero && value === 0)) continue;
    return {
      code: "rulesOutOfRange",
      sentence: [`${name} is not a usable number. Set it again, or go back to the default.`],
    };
  }
  return Object.hasOwn(roughness, rules.roadClass)
    ? null
    : { code: "rulesOutOfRange", sentence: ["The road class must be one of A to E."] };
}
