import type { Stop } from "../fitment.ts";
import { type StopAtSpeed, stopAtSpeed } from "./stopAtSpeed.ts";

/**
 * The other laws that a stop's test at speed allows, each in the shape of `stopAtSpeed`; those that cannot
 * be are left out. Empty where the stop was not tested at speed, or its test says nothing of its doubt.
 */
export function allowedLaws(stop: Stop): readonly StopAtSpeed[] {
  if (!stop.testedAtSpeed || stop.testDoubt === undefined) return [];
  const { restLoss: _rest, staticShare: _share, branches: _branches, ...bare } = stop;
  return stop.testDoubt.laws.flatMap((law) => {
    const parts = stopAtSpeed({ ...bare, ...law });
    return parts.ok ? [parts.value] : [];
  });
}

/** Relative standard deviation, over those laws, of the share of the curve that remains at rest. */
export function staticShareDoubt(stop: Stop): number {
  const laws = allowedLaws(stop);
  const share = stop.staticShare ?? 1;
  return laws.length === 0
    ? 0
    : Math.sqrt(
        laws.reduce((sum, { staticShare }) => sum + (staticShare / share - 1) ** 2, 0) /
          laws.length,
      );
}
