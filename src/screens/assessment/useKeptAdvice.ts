import { useEffect } from "preact/hooks";
import { withAdvice } from "../../records/check/advised.ts";
import type { StoredCheck } from "../../records/check/storedCheck.ts";
import { adviceOf } from "../../records/filling/advised.ts";
import type { Pack } from "../../records/pack/pack.ts";
import { inModelUnits } from "../../saying/modelUnits.ts";
import type { Prescribing } from "./usePrescription.ts";

/** Keeps in the check what its answer prescribes, once all of it is shown. */
export function useKeptAdvice(
  stored: StoredCheck,
  prescribing: Prescribing,
  pack: Pack | null,
  onChange: (stored: StoredCheck) => void,
): void {
  useEffect(() => {
    if (pack === null || prescribing.state !== "found" || !prescribing.whole) return;
    const advice = adviceOf(prescribing.prescription, stored.record, pack, inModelUnits);
    const kept = withAdvice(stored, advice);
    if (kept !== stored) onChange(kept);
  }, [prescribing]);
}
