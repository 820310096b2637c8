import { useMemo, useState } from "preact/hooks";
import type { Assessor } from "../../compute/assessor.ts";
import type { Assessment, Fitment } from "../../physics/fitment.ts";
import type { Prescription } from "../../physics/prescription/index.ts";
import { capital, type QuantityKind } from "../../physics/sentence.ts";
import { meanOf } from "../../physics/uncertainty/index.ts";
import { dateText } from "../../records/check/checkName.ts";
import type { CheckRecord, TypedReading } from "../../records/check/checkRecord.ts";
import { fitmentOf } from "../../records/check/fitmentOf.ts";
import { sourceText } from "../../records/entry/readingSource.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import { packSince } from "../../records/pack/packSince.ts";
import { estimateSentence } from "../../records/pack/stopTitle.ts";
import { judgedAtDesk, otherDemands } from "../../records/review/deskDemands.ts";
import { measurersOf } from "../../records/review/measurers.ts";
import { oddReadings, quantityKindOf, readingsOf } from "../../records/review/oddReadings.ts";
import { unitOf } from "../../records/review/submission.ts";
import { quantityText } from "../../saying/quantityText.ts";
import { sentenceText } from "../../saying/sentenceText.ts";
import { said } from "../../saying/texts.ts";
import * as messages from "../../words/compiled/screens/desk.ts";
import { CardPage } from "../answer/card/CardPage.tsx";
import { cardContent } from "../answer/card/cardContent.ts";
import { cardCode, cardLink, mostCardPhotos, photosOf } from "../answer/card/cardPictures.ts";
import { readingWords } from "../answer/formulas/readingById.ts";
import { checkStateWords, checkTitles, sideWords } from "../assessment/stateWords.ts";
import { useAssessment } from "../assessment/useAssessment.ts";
import { useAssessor } from "../assessment/useAssessor.ts";
import { type Prescribing, usePrescription } from "../assessment/usePrescription.ts";
import { Button } from "../parts/Button.tsx";
import { PrintButton } from "../parts/PrintButton.tsx";
import { Screen, useHeadingFocus } from "../parts/Screen.tsx";
import { useReferencePack } from "../referencePack.ts";
import { cornerOf, outboard } from "../travelView/cornerOf.ts";
import { TravelStill } from "../travelView/TravelPictures.tsx";
import { DemandsUsed } from "./DemandsUsed.tsx";
import { History, Photos, StopAndUse } from "./parts.tsx";
import { Drawings, FiguresTable, Formulas } from "./ReportFigures.tsx";
import { toldAnswer } from "./replyItems.ts";
import type { Desk } from "./useDesk.ts";
import { useDecisions, useOpenCheck } from "./useOpenCheck.ts";
import { whoWords } from "./words.ts";
import "../answer/answer.css";
import "../charts/charts.css";
import "../answer/sections/figures.css";
import "../styles/paper.css";
import "../styles/report.css";

export interface ReportProps {
  readonly desk: Desk;
  readonly submissionKey: string;
  /** The desk's own, where nothing tells in which one a check was measured. */
  readonly unit: LengthUnit;
  onLeave(): void;
  readonly startAssessor?: (() => Assessor) | undefined;
}

/** One check on paper: a page for the customer in one unit, and behind it how it was found. */
export function Report({ desk, submissionKey, unit: usual, onLeave, startAssessor }: ReportProps) {
  const open = useOpenCheck(desk, submissionKey);
  const record = open.state === "here" ? open.shown.record : null;
  const [wanted, setWanted] = useState<LengthUnit | null>(null);
  const unit = wanted ?? (record ? unitOf(record) : usual);
  const heading = useHeadingFocus(`report ${record?.id}`);
  const assessor = useAssessor(startAssessor);
  const pack = useReferencePack();
  const [withAppendix, setWithAppendix] = useState(true);
  const fitment = useMemo(
    () => (record ? fitmentOf(judgedAtDesk(record, pack)) : null),
    [record, pack],
  );
  const assessed = useAssessment(assessor, fitment, "report");
  const decisions = useDecisions(desk, record?.id ?? null);
  const prescribing = usePrescription(
    assessor,
    record,
    assessed.state === "complete" ? fitment : null,
    pack,
    unit,
  );
  const whole =
    (assessed.state === "complete" &&
      prescribing.state !== "searching" &&
      (prescribing.state === "fault" || prescribing.whole)) ||
    assessed.state === "fault";
  return (
    <Screen
      wide
      top={
        <>
          <Button look="quiet" icon="back" label={messages.toCheck} onClick={onLeave} />
          <span class="screen-name">{messages.report2}</span>
        </>
      }
      actions={
        <>
          <Button onClick={() => setWanted(unit === "mm" ? "in" : "mm")}>
            {unit === "mm" ? messages.inInches : messages.inMm}
          </Button>
          <Button pressed={withAppendix} onClick={() => setWithAppendix(!withAppendix)}>
            {messages.withAppendix}
          </Button>
          <PrintButton what="report" look="main" disabled={!whole} />
        </>
      }
    >
      {open.state === "gone" && <p>{messages.thisCheckIsNotHere}</p>}
      {record && fitment && assessed.state === "fault" && (
        <article class="report">
          <h1 ref={heading} tabIndex={-1}>
            {messages.axle3({ label: record.vehicle.label, axle: record.axle })}
          </h1>
          <p>{sentenceText(assessed.fault.sentence, unit)}</p>
          <Readings record={record} fitment={fitment} unit={unit} />
        </article>
      )}
      {record && fitment && assessed.state !== "fault" && assessed.state !== "complete" && (
        <p class="soft">{messages.workingOutAnswer}</p>
      )}
      {record && fitment && assessed.state === "complete" && (
        <article class="report">
          <CustomerPage
            record={record}
            fitment={fitment}
            assessment={assessed.assessment}
            prescribing={prescribing}
            headingRef={heading}
            unit={unit}
          />
          {withAppendix && (
            <>
              <Answered
                record={record}
                fitment={fitment}
                assessment={assessed.assessment}
                prescription={prescribing.state === "found" ? prescribing.prescription : null}
                unit={unit}
              />
              <section class="report-part">
                <DemandsUsed demands={otherDemands(record, pack)} pack={pack} unit={unit} />
              </section>
              <Readings record={record} fitment={fitment} unit={unit} />
              <Drawings fitment={fitment} assessment={assessed.assessment} unit={unit} />
              <FiguresTable fitment={fitment} assessment={assessed.assessment} unit={unit} />
              <Formulas fitment={fitment} assessment={assessed.assessment} unit={unit} />
              {open.state === "here" && (
                <>
                  <Photos record={record} leftOut={open.shown.submission.photosLeftOut} />
                  <History decisions={decisions} versions={open.versions} />
                </>
              )}
            </>
          )}
        </article>
      )}
    </Screen>
  );
}

function CustomerPage({
  record,
  fitment,
  assessment,
  prescribing,
  headingRef,
  unit,
}: {
  record: CheckRecord;
  fitment: Fitment;
  assessment: Assessment;
  prescribing: Prescribing;
  headingRef: ReturnType<typeof useHeadingFocus>;
  unit: LengthUnit;
}) {
  const content = useMemo(
    () => cardContent(record, assessment, prescribing, unit),
    [record, assessment, prescribing, unit],
  );
  const side = assessment.corners[0]?.side ?? "left";
  const corner = useMemo(() => cornerOf(fitment, side), [fitment, side]);
  return (
    <CardPage
      content={content}
      heading={
        <h1 ref={headingRef} tabIndex={-1}>
          {content.title}
        </h1>
      }
      travel={
        corner && (
          <TravelStill
            corner={corner}
            direction={outboard(side, record.axle)}
            words={messages.cornerDrawnToScale}
          />
        )
      }
      photos={photosOf(record).slice(0, mostCardPhotos)}
      code={useMemo(() => cardCode(record), [record])}
      link={useMemo(() => cardLink(record), [record])}
    />
  );
}

function Answered({
  record,
  fitment,
  assessment,
  prescription,
  unit,
}: {
  record: CheckRecord;
  fitment: Fitment;
  assessment: Assessment;
  prescription: Prescription | null;
  unit: LengthUnit;
}) {
  const pack = useReferencePack();
  const odd = useMemo(() => oddReadings(record, pack), [record, pack]);
  const estimate = estimateSentence(record.stop);
  const since = packSince(record, pack).map((sentence) => sentenceText(sentence, unit));
  const advice = toldAnswer(assessment, prescription).advice;
  return (
    <section class="report-part report-page" aria-labelledby="report-appendix">
      <h2 id="report-appendix">{messages.appendixHowItWas}</h2>
      <Facts record={record} unit={unit} />
      <h3>{messages.whatToDo}</h3>
      <ul class="plain-list">
        {advice.map((sentence) => (
          <li key={sentenceText(sentence, "mm")}>{sentenceText(sentence, unit)}</li>
        ))}
      </ul>
      <table class="report-table report-checks">
        <caption>{messages.checks}</caption>
        <thead>
          <tr>
            <th scope="col">{messages.check2}</th>
            <th scope="col">{messages.side}</th>
            <th scope="col">{messages.state}</th>
            <th scope="col">{messages.why}</th>
          </tr>
        </thead>
        <tbody>
          {assessment.corners.flatMap(({ side, checks }) =>
            checks.map(({ id, state, sentence }) => (
              <tr key={`${side} ${id}`}>
                <th scope="row">{checkTitles[id]}</th>
                <td>{sideWords[side]}</td>
                <td>{checkStateWords[state]}</td>
                <td>{sentenceText(sentence, unit)}</td>
              </tr>
            )),
          )}
        </tbody>
      </table>
      {odd.length > 0 && (
        <>
          <h3>{messages.oddReadings}</h3>
          <ul class="plain-list">
            {odd.map(({ reading, kind, sentence }) => (
              <li key={`${reading} ${kind}`}>
                {capital(readingWords(fitment, reading))}: {sentenceText(sentence, unit)}
              </li>
            ))}
          </ul>
        </>
      )}
      {since.length > 0 && (
        <>
          <h3>{messages.otherInLibraryIn}</h3>
          <ul class="plain-list">
            {since.map((text) => (
              <li key={text}>{text}</li>
            ))}
          </ul>
        </>
      )}
      {estimate && (
        <p>
          <strong>{messages.estimate}</strong> {said(estimate)}
        </p>
      )}
    </section>
  );
}

function Facts({ record, unit }: { record: CheckRecord; unit: LengthUnit }) {
  const { author, second } = record;
  const measurers = measurersOf(record);
  return (
    <dl class="facts">
      <dt>{messages.numberWord}</dt>
      <dd>{record.id}</dd>
      <dt>{messages.started}</dt>
      <dd>{dateText(record.createdAt)}</dd>
      <dt>{messages.checkBy}</dt>
      <dd>
        <bdi>{whoWords({ who: author.name?.trim() ?? "", role: author.role })}</bdi>
      </dd>
      {measurers.length > 0 && (
        <>
          <dt>{messages.measuredBy}</dt>
          <dd>
            <bdi>{measurers.join(", ")}</bdi>
          </dd>
        </>
      )}
      {second && (
        <>
          <dt>{messages.secondPerson}</dt>
          <dd>
            <bdi>{second.by}</bdi>
            {messages.withoutSeeingFirstReadings({ at: dateText(second.at) })}
          </dd>
        </>
      )}
      <StopAndUse record={record} unit={unit} />
      <dt>{messages.printed}</dt>
      <dd>{dateText(new Date().toISOString())}</dd>
    </dl>
  );
}

function Readings({
  record,
  fitment,
  unit,
}: {
  record: CheckRecord;
  fitment: Fitment;
  unit: LengthUnit;
}) {
  return (
    <section class="report-part">
      <table class="report-table">
        <caption>{messages.readings}</caption>
        <thead>
          <tr>
            <th scope="col">{messages.reading}</th>
            <th scope="col">{messages.meanAnd}</th>
            <th scope="col">{messages.asItWasTyped}</th>
            <th scope="col">{messages.source}</th>
          </tr>
        </thead>
        <tbody>
          {readingsOf(record).map(({ id, reading }) => {
            const kind = quantityKindOf(id);
            const mean = { kind, value: meanOf(reading) };
            return (
              <tr key={id}>
                <th scope="row">{capital(readingWords(fitment, id))}</th>
                <td>
                  {quantityText(mean, unit)} ± {quantityText({ kind, value: reading.tol }, unit)}
                </td>
                <td>{typedText(kind, reading)}</td>
                <td>
                  <bdi>{said(sourceText(reading))}</bdi>
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </section>
  );
}

/** Every repeat, as it was typed where that is known. */
function typedText(kind: QuantityKind, { values, typed }: TypedReading): string {
  const shown = typed ?? values.map((value) => quantityText({ kind, value }, "mm"));
  const most = 8;
  const more = shown.length - most;
  return `${shown.slice(0, most).join("; ")}${more > 0 ? messages.andMore2({ more }) : ""}`;
}
