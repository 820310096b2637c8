import { useMemo } from "preact/hooks";
import { rulesOf } from "../../../physics/road/index.ts";
import {
  type SheetlessFitment,
  travelWithoutCurve,
  withoutCurveSentences,
} from "../../../physics/verdict/index.ts";
import type { StoredCheck } from "../../../records/check/storedCheck.ts";
import type { LengthUnit } from "../../../records/entry/units.ts";
import { sentenceText } from "../../../saying/sentenceText.ts";
import * as messages from "../../../words/compiled/screens/answer/sections.ts";
import { sideWords } from "../../assessment/stateWords.ts";
import { SimilarForces } from "../../choosing/SimilarForces.tsx";
import { StateMark } from "../../drawings/StateMark.tsx";
import { Button } from "../../parts/Button.tsx";
import { Cautions } from "./Cautions.tsx";
import { certification } from "./VerdictPanel.tsx";

/** The answer as far as it goes without the stop's test sheet: what is met when, and what room is left. */
export function WithoutSheet({
  stored,
  fitment,
  unit,
  go,
  onChange,
}: {
  stored: StoredCheck;
  fitment: SheetlessFitment;
  unit: LengthUnit;
  go: (step: string) => void;
  onChange: (stored: StoredCheck) => void;
}) {
  const travel = useMemo(
    () => travelWithoutCurve(fitment, rulesOf(fitment.use, fitment.rules).reserveMm),
    [fitment],
  );
  const never = travel.ok && travel.value.some(({ neverMet }) => neverMet);
  const state = never ? "no" : "unsure";
  return (
    <>
      <section class={`verdict verdict-${state}`}>
        <div class="verdict-head">
          <StateMark state={state} size={56} label="" />
          <h1 class={`tone-${state}`} tabIndex={-1}>
            {never ? messages.itDoesntFit : messages.notSureYet}
          </h1>
        </div>
        <p class="verdict-reason">
          {never ? messages.somethingHardTouchesBefore : messages.stopsForcesArentKnown}
        </p>
        {travel.ok ? (
          travel.value.map((corner) => (
            <p key={corner.side}>
              {travel.value.length > 1 && <strong>{sideWords[corner.side]}: </strong>}
              {withoutCurveSentences(corner)
                .map((sentence) => sentenceText(sentence, unit, { coarse: true }))
                .join(" ")}
            </p>
          ))
        ) : (
          <p>{sentenceText(travel.fault.sentence, unit)}</p>
        )}
        <Button wide icon="forward" onClick={() => go("stop.curve")}>
          {messages.enterTestSheet}
        </Button>
        <Cautions raised={(stored.record.vehicle?.liftMm ?? 0) > 0} />
        <p class="verdict-limits">{certification}</p>
      </section>
      <SimilarForces stored={stored} onTake={(taken) => onChange(taken(stored))} unit={unit} />
    </>
  );
}
