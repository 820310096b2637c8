import { useEffect, useMemo } from "preact/hooks";
import type { Assessor } from "../../compute/assessor.ts";
import type { FieldPath } from "../../physics/outcome.ts";
import { isReadingId } from "../../physics/readings/index.ts";
import { fitmentOf } from "../../records/check/fitmentOf.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import { judgedAtDesk, otherDemands } from "../../records/review/deskDemands.ts";
import { isReadAgain } from "../../records/review/oddReading.ts";
import { oddReadings } from "../../records/review/oddReadings.ts";
import { sentenceText } from "../../saying/sentenceText.ts";
import * as messages from "../../words/compiled/screens/desk.ts";
import { TravelLadder } from "../answer/ladder/TravelLadder.tsx";
import { Charts } from "../answer/sections/Charts.tsx";
import { Figures } from "../answer/sections/Figures.tsx";
import { MeasureAgain } from "../answer/sections/MeasureAgain.tsx";
import { SideComparison } from "../answer/sections/SideComparison.tsx";
import { certification, VerdictPanel } from "../answer/sections/VerdictPanel.tsx";
import { useAssessment } from "../assessment/useAssessment.ts";
import { useAssessor } from "../assessment/useAssessor.ts";
import { usePrescription } from "../assessment/usePrescription.ts";
import { FullTravelLine } from "../fullTravel/FullTravelNote.tsx";
import { Button, ButtonLink } from "../parts/Button.tsx";
import { Disclosure } from "../parts/Disclosure.tsx";
import { Notice } from "../parts/Notice.tsx";
import { Screen, useHeadingFocus } from "../parts/Screen.tsx";
import { useReferencePack } from "../referencePack.ts";
import { AdvisedByApp } from "./AdvisedByApp.tsx";
import { Decide } from "./Decide.tsx";
import { DemandsUsed } from "./DemandsUsed.tsx";
import { useDecisionDraft } from "./decisionDraft.ts";
import { deskCheckHref, deskHref, deskReportHref } from "./deskRoutes.ts";
import { JobChecks } from "./JobChecks.tsx";
import { PackSince } from "./PackSince.tsx";
import { Facts, History, Photos, VersionDifferences, Versions } from "./parts.tsx";
import { ReadingsTable } from "./ReadingsTable.tsx";
import { HandsHere, SentByPhone, useLooking } from "./shared/SharedCheck.tsx";
import type { Desk } from "./useDesk.ts";
import { type OpenCheck, useDecisions, useOpenCheck } from "./useOpenCheck.ts";
import { momentText, wayWords } from "./words.ts";
import "../answer/answer.css";
import "../charts/charts.css";
import "../answer/sections/figures.css";
import { capital } from "../../physics/sentence.ts";
import { OneMoment } from "../parts/OneMoment.tsx";

export interface CheckAtDeskProps {
  readonly desk: Desk;
  readonly submissionKey: string;
  readonly unit: LengthUnit;
  /** The key of the next check of the list, where there is one. */
  readonly next: string | null;
  onLeave(): void;
  onNext(key: string): void;
  /** The key of the next check that nobody has decided on. */
  readonly nextNew: string | null;
  readonly startAssessor?: (() => Assessor) | undefined;
}

/** One check at the desk: its answer computed here, what looks odd, and what is decided. */
export function CheckAtDesk(props: CheckAtDeskProps) {
  const { desk, submissionKey, onLeave } = props;
  const open = useOpenCheck(desk, submissionKey);
  useEffect(() => {
    const key = (event: KeyboardEvent) => {
      const { target } = event;
      const busy =
        document.querySelector("dialog[open]") ||
        (target instanceof Element && target.matches("input[type=text], textarea, select"));
      if (event.key === "Escape" && !busy) onLeave();
    };
    window.addEventListener("keydown", key);
    return () => window.removeEventListener("keydown", key);
  }, [onLeave]);

  if (open.state === "here" && open.shown.submission.key === submissionKey) {
    return <Opened key={submissionKey} open={open} {...props} />;
  }
  if (open.state === "gone") {
    return (
      <Screen
        top={<span class="screen-name">{messages.reviewDesk}</span>}
        actions={
          <ButtonLink look="main" href={deskHref}>
            {messages.toReviewDesksList}
          </ButtonLink>
        }
      >
        <h1>{messages.thisCheckIsNot}</h1>
        <p>{open.fault ? sentenceText(open.fault.sentence, "mm") : messages.itWasNeverTaken}</p>
      </Screen>
    );
  }
  return <OneMoment />;
}

function Opened({
  desk,
  open,
  unit,
  next,
  nextNew,
  onLeave,
  onNext,
  startAssessor,
}: CheckAtDeskProps & { open: Extract<OpenCheck, { state: "here" }> }) {
  const { shown, before, versions } = open;
  const { record, submission } = shown;
  const heading = useHeadingFocus(submission.key);
  const decisions = useDecisions(desk, record.id);
  const assessor = useAssessor(startAssessor);
  const pack = useReferencePack();
  const judged = useMemo(() => judgedAtDesk(record, pack), [record, pack]);
  const fitment = useMemo(() => fitmentOf(judged), [judged]);
  const assessed = useAssessment(assessor, fitment, "answer");
  const odd = useMemo(() => oddReadings(record, pack), [record, pack]);
  const readAgain = useMemo(() => odd.filter(isReadAgain), [odd]);
  const demands = useMemo(() => otherDemands(record, pack), [record, pack]);
  const [draft, changeDraft] = useDecisionDraft(submission.key);
  const askFor = (id: FieldPath) => {
    if (!isReadingId(id)) return;
    const { asked } = draft;
    changeDraft({ kind: "askAgain", asked: asked.includes(id) ? asked : [...asked, id] });
    document.getElementById("decide-heading")?.scrollIntoView({ block: "start" });
  };
  const assessment =
    assessed.state === "static" || assessed.state === "complete" ? assessed.assessment : null;
  const complete = assessed.state === "complete";
  const prescribing = usePrescription(assessor, record, complete ? fitment : null, pack, unit);
  const latest = versions[0]?.key === submission.key;
  const { shared } = desk;
  useLooking(shared, record.id);

  return (
    <Screen
      wide
      top={
        <>
          <Button look="quiet" icon="back" label={messages.toReviewDesksList} onClick={onLeave} />
          <bdi class="screen-name">{record.vehicle.label}</bdi>
        </>
      }
      actions={
        <>
          <ButtonLink href={deskReportHref(submission.key)}>{messages.reportToPrint}</ButtonLink>
          {next && <Button onClick={() => onNext(next)}>{messages.nextCheck}</Button>}
        </>
      }
    >
      <div class="desk-check">
        <div class="stack desk-check-main">
          <header class="stack-close">
            <h1 ref={heading} tabIndex={-1}>
              <bdi>{record.vehicle.label}</bdi>
              {messages.axle({ axle: record.axle })}
            </h1>
            <p class="soft">
              {messages.cameInSavedAs({
                way: wayWords[submission.way],
                receivedAt: momentText(submission.receivedAt),
              })}
            </p>
          </header>
          <JobChecks record={record} checks={desk.checks ?? []} />
          {shared?.state && <HandsHere shared={shared} checkId={record.id} />}
          {!latest && versions[0] && (
            <Notice tone="care">
              <p>
                {messages.newerVersionOfThis}{" "}
                <a href={deskCheckHref(versions[0].key)}>{messages.openNewest}</a>
              </p>
            </Notice>
          )}
          <Versions versions={versions} shown={submission.key} />
          {before && <VersionDifferences before={before.record} after={record} unit={unit} />}
          {assessed.state === "waiting" && <p class="later-waiting">{messages.workingOutAnswer}</p>}
          {assessed.state === "fault" && (
            <Notice tone="unsure" live>
              <p>{sentenceText(assessed.fault.sentence, unit)}</p>
              {isReadingId(assessed.fault.reading ?? "") && (
                <Button onClick={() => askFor(assessed.fault.reading ?? "")}>
                  {messages.askToReMeasure}
                </Button>
              )}
            </Notice>
          )}
          {assessment && (
            <div class="desk-verdict">
              <VerdictPanel
                assessment={assessment}
                fitment={fitment}
                complete={complete}
                prescribing={prescribing}
                raised={record.vehicle.liftMm > 0}
                unit={unit}
              />
            </div>
          )}
          <AdvisedByApp record={record} prescribing={prescribing} pack={pack} unit={unit} />
          <DemandsUsed demands={demands} pack={pack} unit={unit} />
          <PackSince record={record} pack={pack} unit={unit} />
          <FullTravelLine record={record} fitment={fitment} unit={unit} />
          <section class="card" aria-labelledby="odd-heading">
            <h2 id="odd-heading">{messages.oddReadings}</h2>
            {odd.length === 0 && <p>{messages.none}</p>}
            {odd.length > 0 && (
              <ul class="desk-odd">
                {odd.map((each, index) => (
                  <li key={`${each.reading} ${each.kind} ${index}`} data-odd={each.kind}>
                    <bdi>{sentenceText(each.sentence, unit)}</bdi>
                    {isReadAgain(each) && (
                      <Button onClick={() => askFor(each.reading)}>{messages.askAgain}</Button>
                    )}
                  </li>
                ))}
              </ul>
            )}
          </section>
          {assessment && (
            <section class="stack" aria-labelledby="sides-heading">
              <h2 id="sides-heading">
                {record.corners.length > 1 ? messages.leftAndRight : messages.checks}
              </h2>
              <SideComparison assessment={assessment} unit={unit} complete={complete} />
            </section>
          )}
          <section class="card" aria-labelledby="readings-heading">
            <h2 id="readings-heading">{messages.readings}</h2>
            <ReadingsTable record={record} fitment={fitment} odd={odd} unit={unit} />
          </section>
          {assessment && (
            <>
              <section class="card" aria-labelledby="doubt-heading">
                <h2 id="doubt-heading">{messages.whatAddsToMargin}</h2>
                <MeasureAgain fitment={fitment} assessment={assessment} unit={unit} go={askFor} />
                <Figures group="doubt" fitment={fitment} assessment={assessment} unit={unit} />
              </section>
              <section class="stack" aria-labelledby="ladder-heading">
                <h2 id="ladder-heading">{messages.travelLadder}</h2>
                <div class="ladders">
                  {assessment.corners.map((corner) => (
                    <TravelLadder key={corner.side} assessed={corner} unit={unit} />
                  ))}
                </div>
                <Figures group="travel" fitment={fitment} assessment={assessment} unit={unit} />
                <Figures group="stop" fitment={fitment} assessment={assessment} unit={unit} />
                <Figures group="road" fitment={fitment} assessment={assessment} unit={unit} />
                <Figures group="impact" fitment={fitment} assessment={assessment} unit={unit} />
              </section>
              {complete && (
                <Disclosure summary={messages.forceImpactAndStiffness}>
                  <Charts
                    assessor={assessor}
                    fitment={fitment}
                    assessment={assessment}
                    other={null}
                    unit={unit}
                  />
                </Disclosure>
              )}
            </>
          )}
          <Photos record={record} leftOut={submission.photosLeftOut} />
          <Facts record={record} mailFrom={submission.from} unit={unit} />
          {shared && <SentByPhone shared={shared} submission={submission} />}
          <p class="small">{certification}</p>
        </div>
        <div class="stack desk-check-side">
          <Decide
            desk={desk}
            record={record}
            submission={submission}
            fitment={fitment}
            assessment={complete ? assessment : null}
            prescribing={prescribing}
            assessor={assessor}
            odd={readAgain}
            draft={draft}
            onDraft={changeDraft}
            decisions={decisions}
            onNextNew={() => (nextNew ? onNext(nextNew) : onLeave())}
          />
          <History decisions={decisions} versions={versions} />
        </div>
      </div>
      <p class="unseen" role="status">
        {complete && messages.isComputed({ label: capital(record.vehicle.label) })}
      </p>
    </Screen>
  );
}
