import type { ListedCheck } from "../../records/check/listedCheck.ts";
import { placeInCheck, placeWords } from "../guide/placeInCheck.ts";
import { firstOpenStep, stepFor, stepsOf } from "../guide/steps.ts";

export interface ContinueLineProps {
  readonly stored: ListedCheck;
}

/** "Left side: 3 of 9": where a check was left. */
export function ContinueLine({ stored }: ContinueLineProps) {
  const { photos: _, ...record } = stored.record;
  const steps = stepsOf({ ...stored, record });
  const wanted = stepFor(stored.progress.step, steps) ?? firstOpenStep(steps);
  const place = placeInCheck(
    steps,
    steps.findIndex(({ id }) => id === wanted),
  );
  return place && <span>{placeWords(place)}</span>;
}
