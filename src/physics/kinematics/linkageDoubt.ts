import type { ArmRole, Linkage } from "../fitment.ts";
import { modelDoubt } from "./modelDoubt.ts";

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

/**
 * Relative standard uncertainty of a wheel travel that the linkage alone gives: the model's own, and of an
 * arm whose linkage was not measured κ's, rectangular (JCGM 100:2008, 4.3.7), added in squares (5.1.2).
 */
export function linkageUncertainty(linkage: Linkage, armRole?: ArmRole): number {
  const [mean, halfWidth] = usualRatio[armRole ?? "notSaid"];
  const ratio = linkage === "prior" ? halfWidth / mean / Math.sqrt(3) : 0;
  return Math.hypot(ratio, modelDoubt[linkage]);
}
