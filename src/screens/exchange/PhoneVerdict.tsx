import { useEffect, useState } from "preact/hooks";
import { type Assessor, createAssessor } from "../../compute/assessor.ts";
import type { Assessment } from "../../physics/fitment.ts";
import type { Fault } from "../../physics/outcome.ts";
import type { CheckRecord } from "../../records/check/checkRecord.ts";
import { fitmentOf } from "../../records/check/fitmentOf.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import { sentenceText, withoutRanges } from "../../saying/sentenceText.ts";
import * as messages from "../../words/compiled/screens/exchange.ts";
import { verdictWords } from "../assessment/stateWords.ts";
import { StateMark } from "../drawings/StateMark.tsx";
import { Card } from "../parts/Card.tsx";
import { FaultNotice } from "../parts/FaultNotice.tsx";

/** The verdict that this phone computes from a record, whatever anyone wrote of it. */
export function PhoneVerdict({
  record,
  unit,
  words,
  startAssessor = createAssessor,
}: {
  record: CheckRecord;
  unit: LengthUnit;
  /** What stands below it. */
  words: string;
  startAssessor?: (() => Assessor) | undefined;
}) {
  const [assessment, setAssessment] = useState<Assessment | null>(null);
  const [fault, setFault] = useState<Fault | null>(null);
  useEffect(() => {
    setAssessment(null);
    setFault(null);
    const assessor = startAssessor();
    const cancel = assessor.assess(fitmentOf(record), {
      onStatic: () => undefined,
      onComplete: setAssessment,
      onFault: setFault,
    });
    return () => {
      cancel();
      assessor.dispose();
    };
  }, [record, startAssessor]);
  return (
    <Card heading={messages.whatThisPhoneMakes}>
      <div aria-live="polite">
        {fault && <FaultNotice fault={fault} />}
        {!fault && !assessment && <p class="soft">{messages.workingItOut}</p>}
        {assessment && (
          <div class="received-verdict" data-verdict={assessment.verdict}>
            <StateMark state={assessment.verdict} size={48} label="" />
            <div class="stack-close">
              <p>
                <strong class={`tone-${assessment.verdict}`}>
                  {verdictWords[assessment.verdict]}
                </strong>
              </p>
              <p>{sentenceText(withoutRanges(assessment.reason), unit, { coarse: true })}</p>
            </div>
          </div>
        )}
      </div>
      <p class="small soft">{words}</p>
    </Card>
  );
}
