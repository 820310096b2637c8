import * as messages from "../../words/compiled/physics/estimates.ts";
import { fail, type Outcome, succeed } from "../outcome.ts";
import { type Estimate, isPositive, powerTolerance, type Toleranced } from "./estimate.ts";

/** Share of critical damping of a road vehicle's body on its springs. Common practice, adjustable. */
export const usualDampingShare: Toleranced = { value: 0.35, tol: 0.1 };
/** Rebound damping per bump damping. Common practice, adjustable. */
export const usualReboundPerBump = 2;

export interface DampingEstimate {
  readonly bump: Estimate;
  readonly rebound: Estimate;
}

/**
 * Damping at the wheel, N·s/mm, from a share ζ of critical: the mean c of bump and rebound is
 * ζ·2·√(kw·ms), split so that rebound = ratio × bump. Source: damping ratio of one mass on spring and
 * dashpot, any vibration text; the shares are common practice.
 *
 * @param share ζ, above 0; @param wheelRate kw, N/mm; @param sprungMass ms, kg
 * Errors: "dampingShareNotUsable" where an input is not above 0.
 */
export function dampingFromShare(
  share: Toleranced,
  wheelRate: Toleranced,
  sprungMass: Toleranced,
  reboundPerBump: number = usualReboundPerBump,
): Outcome<DampingEstimate> {
  const ratio = { value: reboundPerBump, tol: 0 };
  if (![share, wheelRate, sprungMass, ratio].every(isPositive)) {
    return fail("dampingShareNotUsable", [messages.shareOfCriticalDamping]);
  }
  const critical = (2 * Math.sqrt(1000 * wheelRate.value * sprungMass.value)) / 1000;
  const mean = share.value * critical;
  const how = messages.ofCriticalReboundBump({
    share: { kind: "share", value: share.value },
    reboundPerBump: { kind: "count", value: reboundPerBump },
  });
  const estimate = (value: number): Estimate => ({
    value,
    tol: powerTolerance(value, [
      [share, 1],
      [wheelRate, 0.5],
      [sprungMass, 0.5],
    ]),
    how,
  });
  const bump = (2 * mean) / (1 + reboundPerBump);
  return succeed({ bump: estimate(bump), rebound: estimate(reboundPerBump * bump) });
}
