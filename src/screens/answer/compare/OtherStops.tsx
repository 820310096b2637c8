import { useEffect, useRef } from "preact/hooks";
import type { Assessor } from "../../../compute/assessor.ts";
import type { Assessment, Fitment } from "../../../physics/fitment.ts";
import type { LengthUnit } from "../../../records/entry/units.ts";
import type { Pack } from "../../../records/pack/pack.ts";
import type { MountedCheck } from "../../../records/pack/packCandidates.ts";
import * as messages from "../../../words/compiled/screens/answer/compare.ts";
import { filled } from "../../filled.ts";
import { Button } from "../../parts/Button.tsx";
import { TriedStops } from "../../triedStops/TriedStops.tsx";
import { rankedName } from "../../triedStops/triedWords.ts";
import { useTriedStops } from "../../triedStops/useTriedStops.ts";
import { ComparedStops } from "./ComparedStops.tsx";
import { type ComparedStop, comparedStop } from "./comparedStop.ts";

/** The tested list of stops; one of them side by side with the one that is fitted. */
export function OtherStops({
  assessor,
  check,
  fitment,
  assessment,
  pack,
  picked,
  onPick,
  unit,
}: {
  assessor: Assessor;
  check: MountedCheck;
  fitment: Fitment;
  assessment: Assessment;
  pack: Pack;
  picked: ComparedStop | null;
  onPick: (stop: ComparedStop | null) => void;
  unit: LengthUnit;
}) {
  const tried = useTriedStops(assessor, check, fitment, pack, unit);
  const compared = useRef<HTMLDivElement>(null);
  // What was picked was tried on the readings as they were.
  useEffect(() => () => onPick(null), [fitment]);
  useEffect(() => {
    if (!picked) return;
    compared.current?.focus({ preventScroll: true });
    compared.current?.scrollIntoView({ block: "start" });
  }, [picked]);
  return (
    <div class="stack">
      {picked && (
        <div ref={compared} tabIndex={-1}>
          <ComparedStops
            fitment={fitment}
            assessment={assessment}
            other={picked}
            onLeave={() => onPick(null)}
            unit={unit}
          />
        </div>
      )}
      <TriedStops
        tried={tried}
        level={3}
        unit={unit}
        choice={({ ranked, asFitted }) => {
          const other = comparedStop(ranked);
          const isPicked = other !== null && other.fitment === picked?.fitment;
          return (
            !asFitted && (
              <div class="row">
                <Button pressed={isPicked} onClick={() => onPick(isPicked ? null : other)}>
                  {filled(messages.setAgainstFittedOne, {
                    rankedName: <span class="unseen">: {rankedName(ranked, unit)}</span>,
                  })}
                </Button>
              </div>
            )
          );
        }}
      />
    </div>
  );
}
