import { useEffect, useMemo, useState } from "preact/hooks";
import type { Assessor } from "../../compute/assessor.ts";
import type { Fault } from "../../physics/outcome.ts";
import type { CheckRecord } from "../../records/check/checkRecord.ts";
import { fitmentOf } from "../../records/check/fitmentOf.ts";
import { changeRecord, newStoredCheck, type StoredCheck } from "../../records/check/storedCheck.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import type { Pack } from "../../records/pack/pack.ts";
import { estimateSentence } from "../../records/pack/stopTitle.ts";
import { quickCheckAnswer } from "../../records/quickCheck/quickCheckAnswer.ts";
import { measuredNames } from "../../records/quickCheck/quickCheckQuestion.ts";
import { quickCheckRecord } from "../../records/quickCheck/quickCheckRecord.ts";
import { inModelUnits } from "../../saying/modelUnits.ts";
import { sentenceText } from "../../saying/sentenceText.ts";
import { said } from "../../saying/texts.ts";
import * as messages from "../../words/compiled/screens/quickCheck.ts";
import { goTo, stepHref } from "../addresses.ts";
import { useAssessment } from "../assessment/useAssessment.ts";
import { useAssessor } from "../assessment/useAssessor.ts";
import { SendButton } from "../exchange/SendButton.tsx";
import { withShortWalk } from "../guide/shortWalk.ts";
import { Button, ButtonLink } from "../parts/Button.tsx";
import { Notice } from "../parts/Notice.tsx";
import { Screen, useHeadingFocus } from "../parts/Screen.tsx";
import { usePackInUse } from "../referencePack.ts";
import type { OpenedStore } from "../useStore.ts";
import { measuredText, QuickCheckAnswerView } from "./QuickCheckAnswerView.tsx";
import { QuickCheckForm } from "./QuickCheckForm.tsx";
import { QuickCheckIntro, QuickCheckTop, QuickCheckWaiting } from "./QuickCheckIntro.tsx";
import {
  keepQuickCheckDraft,
  newDraft,
  openOf,
  type QuickCheckDraft,
  questionOf,
  readingsSoFar,
  readQuickCheckDraft,
  unitOfDraft,
} from "./quickCheckDraft.ts";
import { quickCheckAnswerHref, quickCheckHref } from "./quickCheckRoutes.ts";
import { saveQuickCheck } from "./saveQuickCheck.ts";
import "../answer/answer.css";
import "../styles/check.css";
import "./quickCheck.css";

export interface QuickCheckPlaceProps {
  readonly opened: OpenedStore;
  readonly stage: "questions" | "answer";
  readonly unit: LengthUnit;
  /** Another calculator than the worker's, where there is no worker. */
  readonly startAssessor?: () => Assessor;
}

/** For a customer with a tape measure: at most five readings, then yes, no or can't tell. */
export default function QuickCheckPlace(props: QuickCheckPlaceProps) {
  const { stage, unit } = props;
  const inUse = usePackInUse();
  const [draft, setDraft] = useState(readQuickCheckDraft);
  const put = (next: QuickCheckDraft) => {
    setDraft(next);
    keepQuickCheckDraft(next);
  };
  if (!inUse) return <QuickCheckWaiting stage={stage} />;
  const { pack } = inUse;
  if (stage === "answer" && openOf(draft).length === 0) {
    return <Answered {...props} pack={pack} draft={draft} put={put} />;
  }
  return <Questions opened={props.opened} pack={pack} draft={draft} put={put} unit={unit} />;
}

function Questions({
  opened,
  pack,
  draft,
  put,
  unit,
}: {
  opened: OpenedStore;
  pack: Pack;
  draft: QuickCheckDraft;
  put: (draft: QuickCheckDraft) => void;
  unit: LengthUnit;
}) {
  const measureAll = async () => {
    const check = withShortWalk(
      changeRecord(newStoredCheck(), (record) => ({ ...record, author: { role: "customer" } })),
    );
    await opened.store.put(check);
    goTo(stepHref(check.id, "vehicle"));
  };
  const heading = useHeadingFocus("questions");
  const ready = openOf(draft).length === 0;
  return (
    <Screen
      top={<QuickCheckTop />}
      actions={
        <>
          <Button onClick={() => put(newDraft())}>{messages.startOver}</Button>
          <Button look="main" disabled={!ready} onClick={() => goTo(quickCheckAnswerHref)}>
            {messages.answer}
          </Button>
        </>
      }
    >
      <QuickCheckIntro heading={heading}>
        <QuickCheckForm
          pack={pack}
          draft={draft}
          unit={unit}
          change={(part) => put({ ...draft, ...part })}
          onUnknown={measureAll}
        />
      </QuickCheckIntro>
    </Screen>
  );
}

function Answered({
  opened,
  unit: own,
  pack,
  draft,
  put,
  startAssessor,
}: QuickCheckPlaceProps & {
  pack: Pack;
  draft: QuickCheckDraft;
  put: (draft: QuickCheckDraft) => void;
}) {
  const unit = unitOfDraft(draft, own);
  const question = questionOf(draft);
  const questionText = JSON.stringify(question);
  const made = useMemo(() => {
    if (question === null) return null;
    return question.ok ? quickCheckRecord(pack, question.value, inModelUnits) : question;
  }, [questionText, pack]);
  const { stored, notKept } = useKept(
    opened,
    made?.ok ? made.value.record : null,
    draft,
    put,
    unit,
  );
  const assessor = useAssessor(startAssessor);
  const fitment = useMemo(() => (made?.ok ? fitmentOf(made.value.record) : null), [made]);
  const assessed = useAssessment(assessor, fitment, "quickCheck");
  const estimate = made?.ok ? estimateSentence(made.value.record.stop) : null;
  const answer = useMemo(
    () =>
      made?.ok && (assessed.state === "static" || assessed.state === "complete")
        ? quickCheckAnswer(made.value, assessed.assessment)
        : null,
    [made, assessed],
  );
  const fault: Fault | null =
    made && !made.ok ? made.fault : assessed.state === "fault" ? assessed.fault : null;
  const heading = useHeadingFocus("answered");
  return (
    <Screen
      top={<QuickCheckTop />}
      actions={
        <>
          <ButtonLink href={quickCheckHref} icon="back">
            {messages.readings}
          </ButtonLink>
          {stored && <SendButton stored={stored} unit={unit} />}
        </>
      }
    >
      <span ref={heading} tabIndex={-1} class="unseen">
        {messages.answer2}
      </span>
      {fault && (
        <Notice tone="unsure" live>
          <h1>{messages.cantTellYet}</h1>
          <p class="small">
            {measuredText(measuredNames.filter((name) => readingsSoFar(draft)[name] !== undefined))}
          </p>
          <p>{sentenceText(fault.sentence, unit, { coarse: true })}</p>
          <div class="row">
            <Button icon="pencil" onClick={() => goTo(quickCheckHref)}>
              {messages.toThatReading}
            </Button>
          </div>
        </Notice>
      )}
      {!fault && !answer && <p class="later-waiting">{messages.workingOutAnswer}</p>}
      {answer && (
        <QuickCheckAnswerView
          answer={answer}
          estimated={estimate && said(estimate)}
          unit={unit}
          onReading={() => goTo(quickCheckHref)}
        />
      )}
      {notKept && (
        <Notice tone="no" live>
          <p>{sentenceText(notKept.sentence, unit)}</p>
        </Notice>
      )}
      {stored && (
        <section class="card">
          <h2>{messages.wantFirmerAnswer}</h2>
          <p>{messages.theseReadingsAreSaved}</p>
          <div class="row">
            <ButtonLink href={stepHref(stored.id, "vehicle")} icon="forward">
              {messages.carryOnAsFull}
            </ButtonLink>
            <Button
              onClick={() => {
                put(newDraft());
                goTo(quickCheckHref);
              }}
            >
              {messages.anotherVehicle}
            </Button>
          </div>
        </section>
      )}
    </Screen>
  );
}

/** The answer's check, kept once for each set of readings. */
function useKept(
  { store }: OpenedStore,
  record: CheckRecord | null,
  draft: QuickCheckDraft,
  put: (draft: QuickCheckDraft) => void,
  unit: LengthUnit,
): { stored: StoredCheck | null; notKept: Fault | null } {
  const [kept, setKept] = useState<{ stored: StoredCheck | null; notKept: Fault | null }>({
    stored: null,
    notKept: null,
  });
  const text = record ? JSON.stringify(record) : null;
  useEffect(() => {
    if (!record) return;
    let left = false;
    saveQuickCheck(store, record, draft.keptAt, unit).then(({ stored, outcome }) => {
      if (left) return;
      setKept({ stored, notKept: outcome.ok ? null : outcome.fault });
      if (stored.id !== draft.id || stored.updatedAt !== draft.keptAt) {
        put({ ...draft, id: stored.id, createdAt: stored.createdAt, keptAt: stored.updatedAt });
      }
    });
    return () => {
      left = true;
    };
  }, [store, text]);
  return kept;
}
