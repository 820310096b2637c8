import { useEffect, useMemo } from "preact/hooks";
import type { Assessor } from "../../compute/assessor.ts";
import type { State } from "../../physics/fitment.ts";
import { fitmentOf } from "../../records/check/fitmentOf.ts";
import type { StoredCheck } from "../../records/check/storedCheck.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import * as messages from "../../words/compiled/screens/answer.ts";
import { checksHref } from "../addresses.ts";
import { useAskedRecord } from "../assessment/useAskedRecord.ts";
import { SendButton } from "../exchange/SendButton.tsx";
import { ButtonLink } from "../parts/Button.tsx";
import { Screen } from "../parts/Screen.tsx";
import { useUnfoldedOnPaper } from "../parts/useUnfoldedOnPaper.ts";
import { Answer, type JobAround } from "./Answer.tsx";
import { checkNamed } from "./card/cardContent.ts";
import { ChangeReading } from "./sections/ChangeReading.tsx";
import { Incomplete } from "./sections/Incomplete.tsx";
import { WithoutSheet } from "./sections/WithoutSheet.tsx";
import "./answer.css";
import "../charts/charts.css";
import "../styles/paper.css";
import "./sections/figures.css";
import { completeRecord } from "../../records/check/completeRecord.ts";
import { withoutSheet } from "../../records/check/withoutSheet.ts";

export interface AnswerScreenProps {
  readonly stored: StoredCheck;
  readonly unit: LengthUnit;
  /** To the step of a reading or field, by its id. */
  go(step: string): void;
  onChange(stored: StoredCheck): void;
  /** Another calculator than the worker's, where there is no worker. */
  readonly startAssessor?: () => Assessor;
  readonly job?: JobAround;
}

export default function AnswerScreen({
  stored,
  unit,
  go,
  onChange,
  startAssessor,
  job,
}: AnswerScreenProps) {
  const asked = useAskedRecord(stored.record);
  const completion = useMemo(() => completeRecord(stored), [asked, stored.entries]);
  const fitment = useMemo(() => (completion.ok ? fitmentOf(completion.value) : null), [completion]);
  const sheetless = useMemo(() => withoutSheet(stored, completion), [completion]);
  const name = stored.name || stored.record.vehicle?.label || messages.newCheck;
  const named = completion.ok ? checkNamed(completion.value) : { title: name, facts: [] };
  useEffect(() => window.scrollTo(0, 0), []);
  useUnfoldedOnPaper(".cautions");

  const remember = (verdict: State) => {
    if (stored.lastVerdict !== verdict) onChange({ ...stored, lastVerdict: verdict });
  };

  return (
    <Screen
      wide
      printed
      top={
        <>
          <ButtonLink look="quiet" href={checksHref} icon="back" label={messages.allChecks} />
          <span class="screen-name">{name}</span>
        </>
      }
      actions={
        <>
          <ChangeReading stored={stored} go={go} />
          {completion.ok && <SendButton stored={stored} unit={unit} />}
        </>
      }
    >
      <div class="on-paper">
        <p>
          <strong>{named.title}</strong>
        </p>
        <p class="small soft">{named.facts.join(" · ")}</p>
      </div>
      {fitment ? (
        <Answer
          stored={stored}
          asked={asked}
          fitment={fitment}
          liftMm={stored.record.vehicle?.liftMm ?? 0}
          unit={unit}
          go={go}
          onVerdict={remember}
          onChange={onChange}
          startAssessor={startAssessor}
          job={job}
        />
      ) : (
        !completion.ok &&
        (sheetless ? (
          <WithoutSheet
            stored={stored}
            fitment={sheetless}
            unit={unit}
            go={go}
            onChange={onChange}
          />
        ) : (
          <Incomplete missing={completion.missing} unit={unit} go={go} />
        ))
      )}
    </Screen>
  );
}
