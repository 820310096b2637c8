import type { ArmRole } from "../layoutSaid.ts";

/**
 * κ of an arm whose linkage was not measured, rectangular: [mean, ± half-width]. From 14 published
 * geometries; provisional.
 */
export const usualRatio: Readonly<Record<ArmRole | "notSaid", readonly [number, number]>> = {
  lower: [1.04, 0.06],
  upper: [1.09, 0.09],
  underStrut: [1.01, 0.03],
  carriesWheel: [1, 0],
  notSaid: [1.05, 0.1],
};
