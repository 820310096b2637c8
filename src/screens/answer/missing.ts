import type { CornerAssessment } from "../../physics/fitment.ts";

/** Is this reading one that was never given, rather than one to take again? */
export function isMissing(
  reading: string | undefined,
  missing: CornerAssessment["missing"],
): boolean {
  const name = reading?.split(".").at(-1);
  return missing.some((one) => one === name);
}
