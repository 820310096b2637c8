import { useMemo, useState } from "preact/hooks";
import type { Assessor } from "../../../compute/assessor.ts";
import type { Assessment, Fitment } from "../../../physics/fitment.ts";
import type { Fault } from "../../../physics/outcome.ts";
import { dateText } from "../../../records/check/checkName.ts";
import type { Axle } from "../../../records/check/checkRecord.ts";
import type { ListedCheck } from "../../../records/check/listedCheck.ts";
import type { StoredCheck } from "../../../records/check/storedCheck.ts";
import type { LengthUnit } from "../../../records/entry/units.ts";
import { counterpartOf } from "../../../records/filling/job.ts";
import { sentenceText } from "../../../saying/sentenceText.ts";
import * as messages from "../../../words/compiled/screens/answer/sections.ts";
import { stepHref } from "../../addresses.ts";
import { StateMark } from "../../drawings/StateMark.tsx";
import "../../job/job.css";
import { jobWords } from "../../job/jobWords.ts";
import { Button } from "../../parts/Button.tsx";
import { Notice } from "../../parts/Notice.tsx";
import { BeforeAfter } from "../compare/BeforeAfter.tsx";

const axleWords: { readonly [Each in Axle]: string } = {
  front: messages.frontAxle,
  rear: messages.rearAxle,
};

/** The job of this check: its other checks, before and after side by side, and the other axle. */
export function JobPart({
  stored,
  others,
  onOtherAxle,
  assessor,
  fitment,
  assessment,
  unit,
}: {
  stored: StoredCheck;
  /** The other checks of the job. */
  others: readonly ListedCheck[];
  /** A fault where the new check could not be kept. */
  onOtherAxle: () => Promise<Fault | null>;
  assessor: Assessor;
  fitment: Fitment;
  assessment: Assessment;
  unit: LengthUnit;
}) {
  const [fault, setFault] = useState<Fault | null>(null);
  const [making, setMaking] = useState(false);
  const counterpart = useMemo(() => counterpartOf(stored, others), [stored, others]);
  const { job, axle } = stored.record;
  const hasOtherAxle = others.some(({ record }) => record.axle !== axle);
  return (
    <section
      class={others.length > 0 ? "stack-close" : "stack-close off-paper"}
      aria-labelledby="job-heading"
    >
      <h2 id="job-heading" tabIndex={-1}>
        {job ? jobWords(job) : messages.otherAxle}
      </h2>
      {others.length > 0 && (
        <ul class="job-others">
          {others.map((other) => (
            <li key={other.id}>
              <a href={stepHref(other.id)}>
                {other.lastVerdict && <StateMark state={other.lastVerdict} size={24} label="" />}
                <span>
                  {other.record.axle ? axleWords[other.record.axle] : messages.axleNotChosen}
                  {other.record.job?.moment && messages.change({ moment: other.record.job.moment })}
                  <small>
                    {[other.record.stop?.name, dateText(other.createdAt)]
                      .filter(Boolean)
                      .join(" · ")}
                  </small>
                </span>
              </a>
            </li>
          ))}
        </ul>
      )}
      {counterpart && (
        <BeforeAfter
          key={counterpart.id}
          isBefore={job?.moment === "before"}
          counterpart={counterpart}
          assessor={assessor}
          fitment={fitment}
          assessment={assessment}
          unit={unit}
        />
      )}
      {!hasOtherAxle && (
        <div class="row">
          <Button
            icon="plus"
            disabled={making}
            onClick={async () => {
              setMaking(true);
              setFault(await onOtherAxle());
              setMaking(false);
            }}
          >
            {messages.checkOtherAxle}
          </Button>
        </div>
      )}
      {fault && (
        <Notice tone="no" live>
          <p>{sentenceText(fault.sentence, unit)}</p>
        </Notice>
      )}
    </section>
  );
}
