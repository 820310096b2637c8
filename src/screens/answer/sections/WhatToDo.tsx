import type { LengthUnit } from "../../../records/entry/units.ts";
import { sentenceText, withoutRanges } from "../../../saying/sentenceText.ts";
import * as messages from "../../../words/compiled/screens/answer/sections.ts";
import { verdictWithin } from "../../assessment/stateWords.ts";
import type { Prescribing } from "../../assessment/usePrescription.ts";
import { StateMark } from "../../drawings/StateMark.tsx";
import { filled } from "../../filled.ts";

/** One thing to do, tested, or what blocks it and what frees it. */
export function WhatToDo({ prescribing, unit }: { prescribing: Prescribing; unit: LengthUnit }) {
  return (
    <div class="verdict-advice" aria-live="polite">
      <h2>{messages.whatToDo}</h2>
      <Prescribed prescribing={prescribing} unit={unit} />
    </div>
  );
}

function Prescribed({ prescribing, unit }: { prescribing: Prescribing; unit: LengthUnit }) {
  if (prescribing.state === "fault") {
    return <p>{sentenceText(prescribing.fault.sentence, unit)}</p>;
  }
  if (prescribing.state === "searching") {
    const { progress } = prescribing;
    return (
      <div class="progress-line" role="status">
        <label>
          {progress === null || progress.done === 0
            ? messages.tryingStopsAndSpacers
            : messages.tryingStopsAndSpacersOf({ done: progress.done, total: progress.total })}
          <progress value={progress?.done ?? 0} max={Math.max(1, progress?.total ?? 1)} />
        </label>
      </div>
    );
  }
  const { prescription } = prescribing;
  const text = (sentence: typeof prescription.message) =>
    sentenceText(sentence, unit, { coarse: true });
  const changes = !prescription.none && prescription.change !== "nothing";
  return (
    <>
      <p class="prescription">{text(prescription.message)}</p>
      {changes && (
        <p class="check-state">
          <StateMark state={prescription.verdict} size={22} label="" />
          <span>
            {filled(messages.triedOnThisVehicle, {
              verdict: (
                <strong class={`tone-${prescription.verdict}`}>
                  {verdictWithin[prescription.verdict]}
                </strong>
              ),
            })}
          </span>
        </p>
      )}
    </>
  );
}

/** What has to be known of it: why care, what is lost, what else would do. */
export function Remarks({
  prescribing,
  unit,
  said,
}: {
  prescribing: Prescribing;
  unit: LengthUnit;
  /** What stands above already: not said twice. */
  said: string;
}) {
  const remarks = prescribing.state === "found" ? prescribing.prescription.remarks : [];
  const texts = remarks
    .map((remark) => sentenceText(withoutRanges(remark), unit, { coarse: true }))
    .filter((text) => text.toLowerCase() !== said.toLowerCase());
  if (texts.length === 0) return null;
  return (
    <ul class="prescription-remarks">
      {texts.map((text) => (
        <li key={text}>{text}</li>
      ))}
    </ul>
  );
}
