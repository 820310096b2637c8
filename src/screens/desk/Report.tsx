import { useMemo } from "preact/hooks";
import type { Assessor } from "../../compute/assessor.ts";
import type { Assessment, Fitment } from "../../physics/fitment.ts";
import type { Prescription } from "../../physics/prescription/index.ts";
import { capital, type QuantityKind, type Sentence } from "../../physics/sentence.ts";
import { meanOf } from "../../physics/uncertainty/index.ts";
import { dateText } from "../../records/check/checkName.ts";
import type { CheckRecord, TypedReading } from "../../records/check/checkRecord.ts";
import { fitmentOf } from "../../records/check/fitmentOf.ts";
import { quantityText, sentenceText } from "../../records/entry/quantityText.ts";
import { packSince } from "../../records/pack/packSince.ts";
import { estimateSentence, stopTitle } from "../../records/pack/stopTitle.ts";
import { judgedAtDesk, otherDemands } from "../../records/review/deskDemands.ts";
import { oddReadings, quantityKindOf, readingsOf } from "../../records/review/oddReadings.ts";
import { readingWords } from "../answer/formulas/readingById.ts";
import { certification } from "../answer/sections/VerdictPanel.tsx";
import { checkStateWords, checkTitles, sideWords, verdictWords } from "../assessment/stateWords.ts";
import { useAssessment } from "../assessment/useAssessment.ts";
import { useAssessor } from "../assessment/useAssessor.ts";
import { usePrescription } from "../assessment/usePrescription.ts";
import { LayoutPicture } from "../drawings/LayoutPicture.tsx";
import { StateMark } from "../drawings/StateMark.tsx";
import { cautionsOf } from "../guide/cautions.ts";
import { Button } from "../parts/Button.tsx";
import { canPrint, printPage } from "../parts/printing.ts";
import { Screen, useHeadingFocus } from "../parts/Screen.tsx";
import { savePage } from "../parts/savePage.ts";
import { useReferencePack } from "../referencePack.ts";
import { DemandsUsed } from "./DemandsUsed.tsx";
import { History, Photos } from "./parts.tsx";
import { Drawings, FiguresTable, Formulas } from "./ReportFigures.tsx";
import { toldAnswer } from "./replyItems.ts";
import type { Desk } from "./useDesk.ts";
import { useDecisions, useOpenCheck } from "./useOpenCheck.ts";
import { whoWords } from "./words.ts";
import "../answer/answer.css";
import "../charts/charts.css";
import "../answer/sections/figures.css";
import "../styles/report.css";

export interface ReportProps {
  readonly desk: Desk;
  readonly submissionKey: string;
  readonly unit: "mm" | "in";
  onLeave(): void;
  readonly startAssessor?: (() => Assessor) | undefined;
}

/** One check on paper: answer, readings and figures in both unit systems, drawings, formulas, cautions. */
export function Report({ desk, submissionKey, unit, onLeave, startAssessor }: ReportProps) {
  const open = useOpenCheck(desk, submissionKey);
  const record = open.state === "here" ? open.shown.record : null;
  const heading = useHeadingFocus(`report ${record?.id ?? ""}`);
  const assessor = useAssessor(startAssessor);
  const pack = useReferencePack();
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
        canPrint() ? (
          <Button look="main" disabled={!whole} onClick={printPage}>
            Print
          </Button>
        ) : (
          <Button look="main" disabled={!whole} onClick={() => savePage("Stopfit report")}>
            Save the report
          </Button>
        )
      }
    >
      {open.state === "gone" && <p>This check is not here.</p>}
      {record && fitment && (
        <article class="report">
          <Head record={record} headingRef={heading} />
          {assessed.state === "fault" && (
            <p>
              <InBoth sentence={assessed.fault.sentence} />
            </p>
          )}
          {assessed.state === "complete" ? (
            <Answered
              record={record}
              fitment={fitment}
              assessment={assessed.assessment}
              prescription={prescribing.state === "found" ? prescribing.prescription : null}
            />
          ) : (
            assessed.state !== "fault" && <p class="soft">Working out the answer …</p>
          )}
          <section class="report-part report-cautions">
            <h2>Cautions</h2>
            <ul>
              {cautionsOf("raised").map(({ id, words }) => (
                <li key={id}>{words}</li>
              ))}
            </ul>
          </section>
          <section class="report-part">
            <DemandsUsed demands={otherDemands(record, pack)} pack={pack} unit={unit} />
          </section>
          <Readings record={record} fitment={fitment} />
          {assessed.state === "complete" && (
            <>
              <Drawings record={record} fitment={fitment} assessment={assessed.assessment} />
              <FiguresTable fitment={fitment} assessment={assessed.assessment} />
              <Formulas fitment={fitment} assessment={assessed.assessment} />
            </>
          )}
          {open.state === "here" && (
            <>
              <Photos record={record} leftOut={open.shown.submission.photosLeftOut} />
              <History decisions={decisions} versions={open.versions} />
            </>
          )}
        </article>
      )}
    </Screen>
  );
}

function Head({
  record,
  headingRef,
}: {
  record: CheckRecord;
  headingRef: ReturnType<typeof useHeadingFocus>;
}) {
  const { author, vehicle, stop } = record;
  return (
    <header class="report-part">
      <div class="report-picture">
        <LayoutPicture kind={record.layout.kind} />
      </div>
      <h1 ref={headingRef} tabIndex={-1}>
        Fitment check: {vehicle.label}, {record.axle} axle
      </h1>
      <dl class="facts">
        <dt>Number</dt>
        <dd>{record.id}</dd>
        <dt>Started</dt>
        <dd>{dateText(record.createdAt)}</dd>
        <dt>Measured by</dt>
        <dd>{whoWords({ who: author.name?.trim() ?? "", role: author.role })}</dd>
        <dt>Stop</dt>
        <dd>{stopTitle(stop)}</dd>
        <dt>Use</dt>
        <dd>{vehicle.use}</dd>
        <dt>Lift</dt>
        <dd>{bothLengths(vehicle.liftMm)}</dd>
        <dt>Printed</dt>
        <dd>{dateText(new Date().toISOString())}</dd>
      </dl>
    </header>
  );
}

/** A sentence with its numbers in millimeters, and again in inches where that reads otherwise. */
function InBoth({ sentence }: { sentence: Sentence }) {
  const [metric, imperial] = [sentenceText(sentence, "mm"), sentenceText(sentence, "in")];
  return (
    <>
      {metric}
      {imperial !== metric && <span class="report-other-unit">{imperial}</span>}
    </>
  );
}

function bothLengths(value: number): string {
  const quantity = { kind: "length" as const, value };
  return `${quantityText(quantity, "mm")} (${quantityText(quantity, "in")})`;
}

function Answered({
  record,
  fitment,
  assessment,
  prescription,
}: {
  record: CheckRecord;
  fitment: Fitment;
  assessment: Assessment;
  prescription: Prescription | null;
}) {
  const pack = useReferencePack();
  const odd = useMemo(() => oddReadings(record, pack), [record, pack]);
  const estimate = estimateSentence(record.stop);
  const since = packSince(record, pack).map((sentence) => sentenceText(sentence, "mm"));
  const advice = toldAnswer(assessment, prescription).advice;
  return (
    <section class="report-part" aria-labelledby="report-answer">
      <h2 id="report-answer" class="report-verdict">
        <StateMark state={assessment.verdict} size={32} label="" />
        {verdictWords[assessment.verdict]}
      </h2>
      <p>
        <InBoth sentence={assessment.reason} />
      </p>
      <h3>What to do</h3>
      <ul class="plain-list">
        {advice.map((sentence) => (
          <li key={sentenceText(sentence, "mm")}>
            <InBoth sentence={sentence} />
          </li>
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
                <td>
                  <InBoth sentence={sentence} />
                </td>
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
                {capital(readingWords(fitment, reading))}: <InBoth sentence={sentence} />
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
      <p>{certification}</p>
    </section>
  );
}

function Readings({ record, fitment }: { record: CheckRecord; fitment: Fitment }) {
  return (
    <section class="report-part">
      <table class="report-table">
        <caption>Readings</caption>
        <thead>
          <tr>
            <th scope="col">Reading</th>
            <th scope="col">Metric</th>
            <th scope="col">Inch and pound</th>
            <th scope="col">As it was typed</th>
          </tr>
        </thead>
        <tbody>
          {readingsOf(record).map(({ id, reading }) => {
            const kind = quantityKindOf(id);
            const mean = { kind, value: meanOf(reading) };
            return (
              <tr key={id}>
                <th scope="row">{capital(readingWords(fitment, id))}</th>
                {(["mm", "in"] as const).map((unit) => (
                  <td key={unit}>
                    {quantityText(mean, unit)} ± {quantityText({ kind, value: reading.tol }, unit)}
                  </td>
                ))}
                <td>{typedText(kind, reading)}</td>
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
