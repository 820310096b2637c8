import type { Message } from "../sentence.ts";

/** A value known well enough to go on with: its ± half-width and how it was come by. */
export interface Estimate {
  readonly value: number;
  readonly tol: number;
  /** In plain words, for the record: "from 21.0 mm of sag under 60 kg". */
  readonly how: Message;
}

/** A measured or looked-up input and its ± half-width, both in the same unit. */
export interface Toleranced {
  readonly value: number;
  readonly tol: number;
}

/** True for a finite value above 0 with a finite tolerance of 0 or more. */
export function isPositive(input: Toleranced): boolean {
  return (
    input.value > 0 && Number.isFinite(input.value) && input.tol >= 0 && Number.isFinite(input.tol)
  );
}

/**
 * Half-width of value = const·Π inputᵢ^powerᵢ, by first-order propagation of independent inputs:
 * (tol/value)² = Σ (powerᵢ·tolᵢ/inputᵢ)². Source: JCGM 100:2008, 5.1.6.
 */
export function powerTolerance(
  value: number,
  inputs: readonly (readonly [input: Toleranced, power: number])[],
): number {
  const shares = inputs.map(([input, power]) => (power * input.tol) / input.value);
  return Math.abs(value) * Math.hypot(...shares);
}
