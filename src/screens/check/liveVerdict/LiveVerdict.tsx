import { useMemo, useRef } from "preact/hooks";
import type { Assessor } from "../../../compute/assessor.ts";
import type { State } from "../../../physics/fitment.ts";
import { fitmentOf } from "../../../records/check/fitmentOf.ts";
import type { StoredCheck } from "../../../records/check/storedCheck.ts";
import * as messages from "../../../words/compiled/screens/check/liveVerdict.ts";
import { verdictWithin } from "../../assessment/stateWords.ts";
import { useAssessment } from "../../assessment/useAssessment.ts";
import { useAssessor } from "../../assessment/useAssessor.ts";
import { StateMark } from "../../drawings/StateMark.tsx";
import { filled } from "../../filled.ts";
import { useSettled } from "../settled.ts";
import "./liveVerdict.css";
import { completeRecord } from "../../../records/check/completeRecord.ts";

export interface LiveVerdictProps {
  readonly stored: StoredCheck;
  /** Another calculator than the worker's. */
  readonly startAssessor?: () => Assessor;
}

/** Spoken once the typing has paused for this long, ms. */
const pauseMs = 1200;

/** What the check comes to with the readings as they stand, while one of them is being changed. */
export function LiveVerdict({ stored, startAssessor }: LiveVerdictProps) {
  const fitment = useMemo(() => {
    const completion = completeRecord(stored);
    return completion.ok ? fitmentOf(completion.value) : null;
  }, [stored.record, stored.entries]);
  const assessor = useAssessor(startAssessor);
  const assessed = useAssessment(assessor, fitment, messages.besideStep, true);
  const last = useRef<State | null>(null);
  const current = assessed.state === "complete" && assessed.fitment === fitment;
  const verdict: State | null = current
    ? assessed.assessment.verdict
    : assessed.state === "fault"
      ? "unsure"
      : null;
  if (verdict !== null) last.current = verdict;
  const shown = fitment ? last.current : null;
  const words = shown ? messages.withTheseReadings({ shown: verdictWithin[shown] }) : "";
  const settled = useSettled(words, pauseMs);

  if (!fitment && last.current === null) return null;
  return (
    <div class="live-verdict" data-state={fitment && verdict === null ? "working" : "settled"}>
      {shown ? (
        <>
          <StateMark state={shown} size={20} label="" />
          <span aria-hidden="true">
            {filled(messages.withTheseReadings, {
              shown: <strong class={`tone-${shown}`}>{verdictWithin[shown]}</strong>,
            })}
          </span>
        </>
      ) : (
        <span aria-hidden="true">
          {fitment ? messages.workingOutVerdict : messages.noVerdictUntilEvery}
        </span>
      )}
      <span class="unseen" role="status">
        {settled ? words : ""}
      </span>
    </div>
  );
}
