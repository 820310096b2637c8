import type { ArmRole, Linkage } from "../fitment.ts";
import { usualRatio } from "../layouts/onArm/usualRatio.ts";
import { modelDoubt } from "./modelDoubt.ts";

/**
 * Relative standard uncertainty of a wheel travel that the linkage alone gives: the model's own, and of an
 * arm whose linkage was not measured κ's, rectangular (JCGM 100:2008, 4.3.7), added in squares (5.1.2).
 */
export function linkageUncertainty(linkage: Linkage, armRole?: ArmRole): number {
  const [mean, halfWidth] = usualRatio[armRole ?? "notSaid"];
  const ratio = linkage === "prior" ? halfWidth / mean / Math.sqrt(3) : 0;
  return Math.hypot(ratio, modelDoubt[linkage]);
}
