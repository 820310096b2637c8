import { useEffect, useMemo, useState } from "preact/hooks";
import type { Assessor } from "../../compute/assessor.ts";
import type { Fitment } from "../../physics/fitment.ts";
import type { Fault } from "../../physics/outcome.ts";
import type { Prescription, SearchProgress } from "../../physics/prescription/index.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import type { Pack } from "../../records/pack/pack.ts";
import {
  type MountedCheck,
  prescribable,
  searchOptionsOf,
} from "../../records/pack/packCandidates.ts";

export type Prescribing =
  | { readonly state: "searching"; readonly progress: SearchProgress | null }
  /** Not whole: what would free it is still being tried. */
  | { readonly state: "found"; readonly prescription: Prescription; readonly whole: boolean }
  | { readonly state: "fault"; readonly fault: Fault };

const searching: Prescribing = { state: "searching", progress: null };

/** What to do about the vehicle of a check, searched beside the screen; null check, fitment or pack: not yet. */
export function usePrescription(
  assessor: Assessor,
  check: MountedCheck | null,
  fitment: Fitment | null,
  pack: Pack | null,
  unit: LengthUnit,
): Prescribing {
  const [prescribing, setPrescribing] = useState<Prescribing>(searching);
  const asked = useMemo(
    () =>
      fitment && pack && check
        ? {
            fitment,
            candidates: prescribable(pack, check, fitment),
            options: searchOptionsOf(pack, check, fitment, unit),
          }
        : null,
    [check, fitment, pack, unit],
  );
  useEffect(() => {
    setPrescribing(searching);
    if (asked === null) return;
    return assessor.prescribe(
      asked.fitment,
      asked.candidates,
      {
        onProgress: (progress) =>
          setPrescribing((before) =>
            progress.soFar
              ? { state: "found", prescription: progress.soFar, whole: false }
              : before.state === "found"
                ? before
                : { state: "searching", progress },
          ),
        onPrescribed: (prescription) =>
          setPrescribing({ state: "found", prescription, whole: true }),
        onFault: (fault) => setPrescribing({ state: "fault", fault }),
      },
      asked.options,
    );
  }, [assessor, asked]);
  return prescribing;
}
