import { useMemo, useState } from "preact/hooks";
import type { Assessor } from "../../compute/assessor.ts";
import type { Assessment, Fitment } from "../../physics/fitment.ts";
import type { Prescription } from "../../physics/prescription/index.ts";
import { capital, type QuantityKind } from "../../physics/sentence.ts";
import { meanOf } from "../../physics/uncertainty/index.ts";
import { dateText } from "../../records/check/checkName.ts";
import type { CheckRecord, TypedReading } from "../../records/check/checkRecord.ts";
import { fitmentOf } from "../../records/check/fitmentOf.ts";
import { quantityText, sentenceText } from "../../records/entry/quantityText.ts";
import { sourceText } from "../../records/entry/readingSource.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import { packSince } from "../../records/pack/packSince.ts";
import { estimateSentence } from "../../records/pack/stopTitle.ts";
import { judgedAtDesk, otherDemands } from "../../records/review/deskDemands.ts";
import { measurersOf } from "../../records/review/measurers.ts";
import { oddReadings, quantityKindOf, readingsOf } from "../../records/review/oddReadings.ts";
import { unitOf } from "../../records/review/submission.ts";
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
  const heading = useHeadingFocus(`report ${record?.id ?? ""}`);
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
          <Button look="quiet" icon="back" label="To the check" onClick={onLeave} />
          <span class="screen-name">Report</span>
        </>
      }
      actions={
        <>
          <Button onClick={() => setWanted(unit === "mm" ? "in" : "mm")}>
            {unit === "mm" ? "In inches" : "In mm"}
          </Button>
          <Button pressed={withAppendix} onClick={() => setWithAppendix(!withAppendix)}>
            With the appendix
          </Button>
          <PrintButton what="report" look="main" disabled={!whole} />
        </>
      }
    >
      {open.state === "gone" && <p>This check is not here.</p>}
      {record && fitment && assessed.state === "fault" && (
        <article class="report">
          <h1 ref={heading} tabIndex={-1}>
            {record.vehicle.label}, {record.axle} axle
          </h1>
          <p>{sentenceText(assessed.fault.sentence, unit)}</p>
          <Readings record={record} fitment={fitment} unit={unit} />
        </article>
      )}
      {record && fitment && assessed.state !== "fault" && assessed.state !== "complete" && (
        <p class="soft">Working out the answer …</p>
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
            words="The corner drawn to scale"
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
      <h2 id="report-appendix">Appendix: how it was found</h2>
      <Facts record={record} unit={unit} />
      <h3>What to do</h3>
      <ul class="plain-list">
        {advice.map((sentence) => (
          <li key={sentenceText(sentence, "mm")}>{sentenceText(sentence, unit)}</li>
        ))}
      </ul>
      <table class="report-table report-checks">
        <caption>The checks</caption>
        <thead>
          <tr>
            <th scope="col">Check</th>
            <th scope="col">Side</th>
            <th scope="col">State</th>
            <th scope="col">Why</th>
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
          <h3>Odd readings</h3>
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
          <h3>Other in the library in use than in this check</h3>
          <ul class="plain-list">
            {since.map((text) => (
              <li key={text}>{text}</li>
            ))}
          </ul>
        </>
      )}
      {estimate && (
        <p>
          <strong>An estimate.</strong> {estimate}
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
      <dt>Number</dt>
      <dd>{record.id}</dd>
      <dt>Started</dt>
      <dd>{dateText(record.createdAt)}</dd>
      <dt>Check by</dt>
      <dd>
        <bdi>{whoWords({ who: author.name?.trim() ?? "", role: author.role })}</bdi>
      </dd>
      {measurers.length > 0 && (
        <>
          <dt>Measured by</dt>
          <dd>
            <bdi>{measurers.join(", ")}</bdi>
          </dd>
        </>
      )}
      {second && (
        <>
          <dt>Second person</dt>
          <dd>
            <bdi>{second.by}</bdi>, without seeing the first readings, {dateText(second.at)}
          </dd>
        </>
      )}
      <StopAndUse record={record} unit={unit} />
      <dt>Printed</dt>
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
        <caption>Readings</caption>
        <thead>
          <tr>
            <th scope="col">Reading</th>
            <th scope="col">Mean and ±</th>
            <th scope="col">As it was typed</th>
            <th scope="col">Source</th>
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
                  <bdi>{sourceText(reading)}</bdi>
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
  return `${shown.slice(0, most).join("; ")}${more > 0 ? ` and ${more} more` : ""}`;
}
