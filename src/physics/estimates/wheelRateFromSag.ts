import { fail, type Outcome, succeed } from "../outcome.ts";
import { inModelUnits, length } from "../sentence.ts";
import { standardGravity } from "../standardGravity.ts";
import { type Estimate, isPositive, powerTolerance, type Toleranced } from "./estimate.ts";

/**
 * Rate of the ride spring at the wheel, N/mm, from how far a known load pulls this corner down:
 * kw = m·g/sag. Source: Hooke's law; holds while nothing but the spring carries the load, so the stop
 * must stay free.
 *
 * @param load carried by this corner, kg
 * @param sag fall of the ride height under it, mm
 * @param travelToContactMm wheel travel to the stop; null where not known
 * Errors: "loadNotUsable", "sagNotUsable", "stopTouched".
 */
export function wheelRateFromSag(
  load: Toleranced,
  sag: Toleranced,
  travelToContactMm: number | null,
): Outcome<Estimate> {
  if (!isPositive(load)) {
    return fail("loadNotUsable", ["The load on this corner must be above 0. Weigh it again."]);
  }
  if (!isPositive(sag)) {
    return fail("sagNotUsable", [
      "The ride height must fall under the load. Measure it without and with the load.",
    ]);
  }
  if (travelToContactMm !== null && sag.value >= travelToContactMm) {
    return fail("stopTouched", [
      "With ",
      length(sag.value),
      " of sag the stop already carries part of the load. Re-measure with a smaller load.",
    ]);
  }
  const value = (load.value * standardGravity) / sag.value;
  return succeed({
    value,
    tol: powerTolerance(value, [
      [load, 1],
      [sag, -1],
    ]),
    how: inModelUnits([
      "from ",
      length(sag.value),
      " of sag under ",
      { kind: "mass", value: load.value },
    ]),
  });
}
