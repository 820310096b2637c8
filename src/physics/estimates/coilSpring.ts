import * as messages from "../../words/compiled/physics/estimates.ts";
import { fail, type Outcome, succeed } from "../outcome.ts";
import { length } from "../sentence.ts";
import { type Estimate, isPositive, powerTolerance, type Toleranced } from "./estimate.ts";

/** A round-wire helical compression spring. */
export interface CoilDimensions {
  /** Wire diameter d, mm. */
  readonly wire: Toleranced;
  /** Mean coil diameter D, mm: outside diameter less the wire's. */
  readonly meanCoil: Toleranced;
  /** Active coils Na: those free to twist. */
  readonly activeCoils: Toleranced;
  /** Shear modulus G, N/mm² (MPa). */
  readonly shearModulus: Toleranced;
}

/** Shear modulus of spring steel, N/mm². Source: Shigley, ch. 10 (11.5 Mpsi); recalled, adjustable. */
export const steelShearModulus: Toleranced = { value: 79_300, tol: 2_000 };

/**
 * Rate of a coil spring along its own axis, N/mm: k = G·d⁴/(8·D³·Na). Source: Shigley, Mechanical
 * Engineering Design, ch. 10. Valid for round wire and even pitch; a coil that touches its neighbour
 * is no longer active.
 *
 * Errors: "coilNotUsable" where a dimension is not above 0, or the wire is as thick as the coil.
 */
export function coilSpringRate(coil: CoilDimensions): Outcome<Estimate> {
  const { wire, meanCoil, activeCoils, shearModulus } = coil;
  if (![wire, meanCoil, activeCoils, shearModulus].every(isPositive)) {
    return fail("coilNotUsable", [messages.wireCoilDiameterNumber]);
  }
  if (wire.value >= meanCoil.value) {
    return fail("coilNotUsable", [messages.wireCannotBeAs]);
  }
  const value =
    (shearModulus.value * wire.value ** 4) / (8 * meanCoil.value ** 3 * activeCoils.value);
  return succeed({
    value,
    tol: powerTolerance(value, [
      [shearModulus, 1],
      [wire, 4],
      [meanCoil, -3],
      [activeCoils, -1],
    ]),
    how: messages.fromCoilWireMean({
      wire: length(wire.value),
      meanCoil: length(meanCoil.value),
      activeCoils: { kind: "count", value: activeCoils.value },
    }),
  });
}

/** Length of a coil spring pressed solid, mm: d·Nt, ends squared and ground. Source: Shigley, ch. 10. */
export function solidLength(wireMm: number, totalCoils: number): number {
  return wireMm * totalCoils;
}

/**
 * Rate of a coil spring at the wheel, N/mm: k/R², R = wheel travel per spring travel. Source: virtual
 * work, at ride height; the change of R along the travel is left out.
 *
 * Errors: those of the coil; "leverRatioNotUsable".
 */
export function wheelRateFromCoil(coil: CoilDimensions, leverRatio: Toleranced): Outcome<Estimate> {
  const rate = coilSpringRate(coil);
  if (!rate.ok) return rate;
  if (!isPositive(leverRatio)) {
    return fail("leverRatioNotUsable", [messages.springsLeverRatioWheel]);
  }
  const value = rate.value.value / leverRatio.value ** 2;
  return succeed({
    value,
    tol: powerTolerance(value, [
      [rate.value, 1],
      [leverRatio, -2],
    ]),
    how: messages.atLeverRatioOf({
      coil: rate.value.how,
      leverRatio: { kind: "ratio", value: leverRatio.value },
    }),
  });
}
