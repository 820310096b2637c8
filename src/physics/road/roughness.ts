import type { RoadClass } from "../fitment.ts";

/** Reference spatial frequency n0 of ISO 8608, cycle/m. */
export const referenceFrequency = 0.1;

/**
 * Geometric mean displacement PSD Gd(n0) of each road class, m³, at n0 = 0.1 cycle/m.
 * Source: ISO 8608:2016, Table C.2 (waviness 2; class bounds are half and twice the mean).
 */
export const roughness: Readonly<Record<RoadClass, number>> = {
  A: 16e-6,
  B: 64e-6,
  C: 256e-6,
  D: 1024e-6,
  E: 4096e-6,
};

/** Displacement PSD Gd(n), m³, at spatial frequency n > 0, cycle/m. Source: ISO 8608:2016, 5.1.1. */
export function displacementPsd(roadClass: RoadClass, frequency: number): number {
  return roughness[roadClass] * (frequency / referenceFrequency) ** -2;
}

/**
 * Intensity D of the white road velocity seen by a wheel: E[w(t)w(t+τ)] = D·δ(τ), m²/s.
 *
 * With Gd(n) = Gd(n0)·(n/n0)^−2 and time frequency f = V·n, the one-sided PSD of road velocity is
 * (2πn)²·Gd(n)·V²/V = 4π²·n0²·Gd(n0)·V at every frequency; D is half of it (two-sided).
 *
 * @param speed V, m/s, at least 0
 */
export function roadVelocityIntensity(roadClass: RoadClass, speed: number): number {
  return 2 * Math.PI ** 2 * referenceFrequency ** 2 * roughness[roadClass] * speed;
}
