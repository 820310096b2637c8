import * as messages from "../../words/compiled/physics/estimates.ts";
import { fail, type Outcome, succeed } from "../outcome.ts";
import { length } from "../sentence.ts";
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
    return fail("loadNotUsable", [messages.loadOnThisCorner]);
  }
  if (!isPositive(sag)) {
    return fail("sagNotUsable", [messages.rideHeightMustFall]);
  }
  if (travelToContactMm !== null && sag.value >= travelToContactMm) {
    return fail("stopTouched", [messages.withOfSagStop({ sag: length(sag.value) })]);
  }
  const value = (load.value * standardGravity) / sag.value;
  return succeed({
    value,
    tol: powerTolerance(value, [
      [load, 1],
      [sag, -1],
    ]),
    how: messages.fromOfSagUnder({
      sag: length(sag.value),
      load: { kind: "mass", value: load.value },
    }),
  });
}
