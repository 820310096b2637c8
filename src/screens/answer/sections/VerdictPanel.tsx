import type { Assessment, Fitment } from "../../../physics/fitment.ts";
import { sitsOnStopSentence } from "../../../physics/prescription/index.ts";
import { readingName } from "../../../physics/readingNames.ts";
import { semicolonList } from "../../../physics/sentence.ts";
import { decidingChecks } from "../../../physics/verdict/index.ts";
import type { LengthUnit } from "../../../records/entry/units.ts";
import { estimateSentence } from "../../../records/pack/stopTitle.ts";
import { firstSentence, sentenceText, withoutRanges } from "../../../saying/sentenceText.ts";
import { said } from "../../../saying/texts.ts";
import * as messages from "../../../words/compiled/screens/answer/sections.ts";
import { checkTitlesWithin, verdictWords } from "../../assessment/stateWords.ts";
import type { Prescribing } from "../../assessment/usePrescription.ts";
import { StateMark } from "../../drawings/StateMark.tsx";
import { Button } from "../../parts/Button.tsx";
import { isMissing } from "../missing.ts";
import { Cautions } from "./Cautions.tsx";
import { Remarks, WhatToDo } from "./WhatToDo.tsx";

export const certification = messages.thisIsScreeningCheck;

/**
 * All of it without scrolling: that it sits on its stop, the verdict in word, shape and colour, one
 * sentence why, one thing to do, what to measure where it is not sure.
 */
export function VerdictPanel({
  assessment,
  fitment,
  complete,
  prescribing,
  raised,
  go,
  unit,
}: {
  assessment: Assessment;
  fitment: Fitment;
  /** False while impacts and stiffness are still being worked out. */
  complete: boolean;
  prescribing: Prescribing;
  raised: boolean;
  /** To the step of a reading; absent where none can be taken. */
  go?: (step: string) => void;
  unit: LengthUnit;
}) {
  const settled = complete || assessment.verdict === "no";
  const { verdict } = assessment;
  const first = sitsOnStopSentence(fitment);
  const soFar = inOrderSoFar(assessment);
  const estimate = estimateSentence(fitment.stop);
  const again = go && verdict === "unsure" ? readingToTake(assessment) : null;
  // One sentence: what to measure stands on the button, the rest under the details.
  const why = firstSentence(withoutRanges(assessment.reason));
  const reason = sentenceText(why, unit, { coarse: true });
  return (
    <section class={settled ? `verdict verdict-${verdict}` : "verdict"} aria-live="polite">
      {first.length > 0 && (
        <p class="verdict-first">
          <strong>{sentenceText(first, unit, { coarse: true })}</strong>
        </p>
      )}
      <div class="verdict-head">
        {settled && <StateMark state={verdict} size={56} label="" />}
        <h1 class={settled ? `tone-${verdict}` : ""} tabIndex={-1}>
          {settled ? verdictWords[verdict] : messages.workingOutImpacts}
        </h1>
      </div>
      {settled && <p class="verdict-reason">{reason}</p>}
      {settled && <WhatToDo prescribing={prescribing} unit={unit} />}
      {settled && again !== null && go && (
        <div class="verdict-measure">
          <Button wide icon="forward" onClick={() => go(again)}>
            {messages.measure({ readingName: said(readingName(again)) })}
          </Button>
        </div>
      )}
      {settled && <Cautions raised={raised} />}
      {settled && <Remarks prescribing={prescribing} unit={unit} said={reason} />}
      {settled && soFar && <p class="small">{soFar}</p>}
      {estimate && (
        <p class="small">
          <strong>{messages.estimate}</strong> {said(estimate)}
        </p>
      )}
      <p class="verdict-limits">{certification}</p>
    </section>
  );
}

/** The reading that a check is unsure of, that of the reason first, beyond what was never given. */
function readingToTake({ corners }: Assessment): string | null {
  const found = decidingChecks(corners).find(
    ({ corner, check }) => check.reading !== undefined && !isMissing(check.reading, corner.missing),
  );
  return found?.check.reading ?? null;
}

/** What cannot be decided yet does not hide what can. */
function inOrderSoFar({ verdict, corners }: Assessment): string | null {
  if (verdict !== "unsure") return null;
  const ids = new Set(corners.flatMap(({ checks }) => checks.map(({ id }) => id)));
  const fine = [...ids].filter((id) =>
    corners.every(({ checks }) => checks.find((check) => check.id === id)?.state === "ok"),
  );
  if (fine.length === 0) return null;
  const words = said(semicolonList(fine.map((id) => checkTitlesWithin[id])));
  return messages.okSoFar({ words });
}
