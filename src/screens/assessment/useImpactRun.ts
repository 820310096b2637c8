import { useEffect, useState } from "preact/hooks";
import type { Assessor } from "../../compute/assessor.ts";
import type { DesignEvent, Fitment, Side } from "../../physics/fitment.ts";
import type { ImpactRun } from "../../physics/impact/index.ts";
import type { Outcome } from "../../physics/outcome.ts";

/** One event in time; null while it is worked out, and where there is nothing to run. */
export function useImpactRun(
  assessor: Assessor,
  fitment: Fitment | null,
  side: Side,
  event: DesignEvent | null,
): Outcome<ImpactRun> | null {
  const [run, setRun] = useState<Outcome<ImpactRun> | null>(null);
  useEffect(() => {
    setRun(null);
    if (!fitment || !event) return;
    let left = false;
    assessor.run(fitment, side, event).then((outcome) => {
      if (!left) setRun(outcome);
    });
    return () => {
      left = true;
    };
  }, [assessor, fitment, side, event]);
  return run;
}
