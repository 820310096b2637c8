import { useEffect, useMemo, useState } from "preact/hooks";
import type { Assessor } from "../../compute/assessor.ts";
import type { Assessment, Fitment, State } from "../../physics/fitment.ts";
import type { Fault } from "../../physics/outcome.ts";
import type { PartialCheckRecord } from "../../records/check/checkRecord.ts";
import { completeRecord } from "../../records/check/completeRecord.ts";
import type { ListedCheck } from "../../records/check/listedCheck.ts";
import type { StoredCheck } from "../../records/check/storedCheck.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import { stopTitle } from "../../records/pack/stopTitle.ts";
import { sentenceText } from "../../saying/sentenceText.ts";
import { said } from "../../saying/texts.ts";
import * as messages from "../../words/compiled/screens/answer.ts";
import { useAfterPaint } from "../assessment/useAfterPaint.ts";
import { useAssessment } from "../assessment/useAssessment.ts";
import { useAssessor } from "../assessment/useAssessor.ts";
import { useKeptAdvice } from "../assessment/useKeptAdvice.ts";
import { usePrescription } from "../assessment/usePrescription.ts";
import type { PlacedNoteProps } from "../fullTravel/FullTravelNote.tsx";
import { fullTravelStep } from "../guide/steps.ts";
import { Button } from "../parts/Button.tsx";
import { later } from "../parts/later.tsx";
import { Notice } from "../parts/Notice.tsx";
import { Unfolding } from "../parts/Unfolding.tsx";
import { usePackInUse } from "../referencePack.ts";
import { RemeasureOffer } from "../remeasure/RemeasureOffer.tsx";
import { TravelView } from "../travelView/TravelView.tsx";
import { CardButton } from "./card/CardButton.tsx";
import type { ComparedStop } from "./compare/comparedStop.ts";
import { OtherStops } from "./compare/OtherStops.tsx";
import { prescribedStop } from "./compare/prescribedStop.ts";
import { TravelLadder } from "./ladder/TravelLadder.tsx";
import { AfterAnswer } from "./sections/AfterAnswer.tsx";
import { Cautions } from "./sections/Cautions.tsx";
import { Charts } from "./sections/Charts.tsx";
import { Figures } from "./sections/Figures.tsx";
import { JobPart } from "./sections/JobPart.tsx";
import { Jumps } from "./sections/Jumps.tsx";
import { LinkageNote } from "./sections/LinkageNote.tsx";
import { MeasureAgain } from "./sections/MeasureAgain.tsx";
import { MissingRide } from "./sections/MissingRide.tsx";
import { RulesUsed } from "./sections/RulesUsed.tsx";
import { SideComparison } from "./sections/SideComparison.tsx";
import { certification, VerdictPanel } from "./sections/VerdictPanel.tsx";

/** The job that a check belongs to, as its place knows it. */
export interface JobAround {
  /** The other checks of the job. */
  readonly others: readonly ListedCheck[];
  /** Starts a check of the other axle; a fault where it could not be kept. */
  onOtherAxle(): Promise<Fault | null>;
}

const FullTravelNote = later<PlacedNoteProps>(
  async () => (await import("../fullTravel/FullTravelNote.tsx")).FullTravelNote,
  { quiet: true },
);

/** The answer to a complete check, and the ways to ask more of it. */
export function Answer({
  stored,
  asked,
  fitment,
  liftMm,
  unit,
  go,
  onVerdict,
  onChange,
  startAssessor,
  job,
}: {
  stored: StoredCheck;
  /** The record that the answer is of. */
  asked: PartialCheckRecord;
  fitment: Fitment;
  liftMm: number;
  unit: LengthUnit;
  go: (step: string) => void;
  onVerdict: (verdict: State) => void;
  onChange: (stored: StoredCheck) => void;
  startAssessor?: (() => Assessor) | undefined;
  job?: JobAround | undefined;
}) {
  const assessor = useAssessor(startAssessor);
  const assessed = useAssessment(assessor, fitment, "answer");
  const verdict = assessed.state === "complete" ? assessed.assessment.verdict : null;
  useEffect(() => {
    if (verdict) onVerdict(verdict);
  }, [verdict]);

  if (assessed.state === "waiting") {
    return <p class="later-waiting">{messages.workingOutAnswer}</p>;
  }
  if (assessed.state === "fault") {
    const { reading, sentence } = assessed.fault;
    return (
      <>
        <Notice tone="unsure" live>
          <h1>{messages.notSureYet}</h1>
          <p>{sentenceText(sentence, unit)}</p>
        </Notice>
        {reading && (
          <Button look="main" icon="forward" onClick={() => go(reading)}>
            {messages.toThatReading}
          </Button>
        )}
        <Cautions raised={liftMm > 0} />
        <p class="small">{certification}</p>
      </>
    );
  }
  return (
    <Answered
      stored={stored}
      asked={asked}
      assessor={assessor}
      fitment={assessed.fitment}
      assessment={assessed.assessment}
      complete={assessed.state === "complete"}
      liftMm={liftMm}
      unit={unit}
      go={go}
      onChange={onChange}
      job={job}
    />
  );
}

function Answered({
  stored,
  asked,
  assessor,
  fitment,
  assessment,
  complete,
  liftMm,
  unit,
  go,
  onChange,
  job,
}: {
  stored: StoredCheck;
  asked: PartialCheckRecord;
  assessor: Assessor;
  fitment: Fitment;
  assessment: Assessment;
  complete: boolean;
  liftMm: number;
  unit: LengthUnit;
  go: (step: string) => void;
  onChange: (stored: StoredCheck) => void;
  job: JobAround | undefined;
}) {
  const rest = useAfterPaint();
  const completed = useMemo(() => completeRecord(stored), [stored]);
  const [picked, setPicked] = useState<ComparedStop | null>(null);
  const inUse = usePackInUse();
  const prescribing = usePrescription(
    assessor,
    asked,
    complete ? fitment : null,
    inUse?.pack ?? null,
    unit,
  );
  useKeptAdvice(stored, prescribing, inUse?.pack ?? null, onChange);
  const other = picked ?? prescribedStop(fitment, prescribing);

  return (
    <>
      {stored.record.fullTravel !== undefined && (
        <FullTravelNote place="overAdvice" record={stored.record} fitment={fitment} unit={unit} />
      )}
      <VerdictPanel
        assessment={assessment}
        fitment={fitment}
        complete={complete}
        prescribing={prescribing}
        raised={liftMm > 0}
        go={go}
        unit={unit}
      />
      <TravelView
        assessor={assessor}
        fitment={fitment}
        assessment={assessment}
        axle={stored.record.axle ?? "front"}
        prescribed={prescribedStop(fitment, prescribing)}
        unit={unit}
      />
      {stored.record.fullTravel !== undefined && (
        <FullTravelNote place="afterAdvice" record={stored.record} fitment={fitment} unit={unit} />
      )}
      {complete && completed.ok && (
        <CardButton
          record={completed.value}
          assessment={assessment}
          prescribing={prescribing}
          unit={unit}
        />
      )}
      <AfterAnswer stored={stored} unit={unit} go={go} />
      {complete && job && (
        <JobPart
          stored={stored}
          others={job.others}
          onOtherAxle={job.onOtherAxle}
          assessor={assessor}
          fitment={fitment}
          assessment={assessment}
          unit={unit}
        />
      )}
      <MissingRide assessment={assessment} go={go} />
      <LinkageNote stored={stored} assessment={assessment} go={go} />
      <h2 id="details-heading" class="off-paper" tabIndex={-1}>
        {messages.details}
      </h2>
      <Jumps
        places={[
          ["ladder-heading", messages.travelLadder],
          ["again-heading", messages.reMeasure],
          ["compare-heading", messages.anotherStop],
          ["drawings-heading", messages.forceAndImpact],
        ]}
      />
      {rest && (
        <>
          <section class="stack" aria-labelledby="checks-heading">
            <h2 id="checks-heading" tabIndex={-1}>
              {assessment.corners.length > 1 ? messages.leftAndRight : messages.checks}
            </h2>
            <SideComparison assessment={assessment} unit={unit} complete={complete} />
          </section>
          <section class="stack" aria-labelledby="ladder-heading">
            <h2 id="ladder-heading" tabIndex={-1}>
              {messages.travelLadder}
            </h2>
            <div class="ladders">
              {assessment.corners.map((corner) => (
                <TravelLadder key={corner.side} assessed={corner} unit={unit} />
              ))}
            </div>
            <Figures group="travel" fitment={fitment} assessment={assessment} unit={unit} />
          </section>
          <section class="card" aria-labelledby="again-heading">
            <h2 id="again-heading" tabIndex={-1}>
              {messages.whatToReMeasure}
            </h2>
            {complete && (
              <RemeasureOffer
                stored={stored}
                assessor={assessor}
                fitment={fitment}
                assessment={assessment}
                unit={unit}
                go={go}
                onChange={onChange}
              />
            )}
            <MeasureAgain fitment={fitment} assessment={assessment} unit={unit} go={go} />
            <div class="row">
              <Button icon="forward" onClick={() => go(fullTravelStep)}>
                {messages.fullTravelCheckBy}
              </Button>
            </div>
            <Figures group="doubt" fitment={fitment} assessment={assessment} unit={unit} />
          </section>
          <section class="stack off-paper" aria-labelledby="compare-heading">
            <h2 id="compare-heading" tabIndex={-1}>
              {messages.compareAnotherStop}
            </h2>
            <div class="row">
              <Button icon="forward" onClick={() => go("stops")}>
                {messages.whichStopOfLibrary}
              </Button>
            </div>
            <p class="small">
              {messages.orTryEachStop({ stopTitle: said(stopTitle(fitment.stop)) })}
            </p>
            {inUse && complete && (
              <Unfolding summary={messages.tryLibrarysStopsHere}>
                {() => (
                  <OtherStops
                    assessor={assessor}
                    check={asked}
                    fitment={fitment}
                    assessment={assessment}
                    pack={inUse.pack}
                    picked={picked}
                    onPick={setPicked}
                    unit={unit}
                  />
                )}
              </Unfolding>
            )}
          </section>
          {complete && (
            <section class="stack" aria-labelledby="drawings-heading">
              <h2 id="drawings-heading" tabIndex={-1}>
                {messages.forceImpactAndStiffness}
              </h2>
              <Charts
                assessor={assessor}
                fitment={fitment}
                assessment={assessment}
                other={other}
                unit={unit}
              />
              <Figures group="stop" fitment={fitment} assessment={assessment} unit={unit} />
              <Figures group="impact" fitment={fitment} assessment={assessment} unit={unit} />
              <Figures group="road" fitment={fitment} assessment={assessment} unit={unit} />
            </section>
          )}
          <RulesUsed fitment={fitment} reference={stored.record.reference} unit={unit} go={go} />
        </>
      )}
      <p class="small">{certification}</p>
    </>
  );
}
