import type { ListedCheck } from "../../records/check/listedCheck.ts";
import { firstOpenStep, stepsOf } from "../guide/steps.ts";

export interface ContinueLineProps {
  readonly stored: ListedCheck;
}

/** "Step 7 of 24": where a check was left. */
export function ContinueLine({ stored }: ContinueLineProps) {
  const { photos: _, ...record } = stored.record;
  const steps = stepsOf({ ...stored, record });
  const wanted = stored.progress.step || firstOpenStep(steps);
  const at = steps.findIndex(({ id }) => id === wanted);
  return at < 0 ? null : <span>{`Step ${at + 1} of ${steps.length}`}</span>;
}
