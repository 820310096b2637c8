import type { Linkage } from "../fitment.ts";

/**
 * What a planar model itself may be off, as the standard deviation of a factor m on every z. Found on
 * published geometries solved in three dimensions; provisional.
 */
export const modelDoubt: Readonly<Record<Linkage, number>> = {
  carriesWheel: 0.02,
  fourBar: 0.02,
  instantCentre: 0.02,
  typed: 0.02,
  prior: 0.02,
  strutArm: 0.02,
  axle: 0.03,
  straight: 0.04,
};
