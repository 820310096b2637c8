import { useMemo } from "preact/hooks";
import type { Assessor } from "../../compute/assessor.ts";
import type { Assessment, CornerAssessment, Fitment } from "../../physics/fitment.ts";
import { rulesOf } from "../../physics/road/useRules.ts";
import { meanOf } from "../../physics/uncertainty/readingMean.ts";
import type { CheckRecord } from "../../records/checkRecord.ts";
import { fitmentOf } from "../../records/fitmentOf.ts";
import { oddReadings, quantityKindOf, readingsOf } from "../../records/oddReadings.ts";
import { packSince } from "../../records/packSince.ts";
import { quantityText, sentenceText } from "../../records/quantityText.ts";
import { estimateSentence, stopTitle } from "../../records/stopTitle.ts";
import { cornerContext } from "../answer/formulas/cornerContext.ts";
import { type Figure, figuresOf } from "../answer/formulas/figures.ts";
import { readingWords } from "../answer/formulas/readingById.ts";
import { lastValue } from "../answer/formulas/workedFigure.ts";
import { useAssessment } from "../answer/hooks/useAssessment.ts";
import { useAssessor } from "../answer/hooks/useAssessor.ts";
import { TravelLadder } from "../answer/ladder/TravelLadder.tsx";
import { figureText } from "../answer/sections/Figures.tsx";
import { certification } from "../answer/sections/VerdictPanel.tsx";
import { WorkedFigureView } from "../answer/sections/WorkedFigureView.tsx";
import { checkStateWords, checkTitles, sideWords, verdictWords } from "../answer/stateWords.ts";
import { WheelForceChart } from "../answer/wheelForce/WheelForceChart.tsx";
import { wheelForceCurve } from "../answer/wheelForce/wheelForceCurve.ts";
import { cautionsOf } from "../check/cautions.ts";
import { LayoutPicture } from "../drawings/LayoutPicture.tsx";
import { StateMark } from "../drawings/StateMark.tsx";
import { dateText } from "../home/checkName.ts";
import { Button } from "../parts/Button.tsx";
import { Screen, useHeadingFocus } from "../parts/Screen.tsx";
import { useReferencePack } from "../referencePack.ts";
import { History } from "./parts.tsx";
import type { Desk } from "./useDesk.ts";
import { useDecisions, useOpenCheck } from "./useOpenCheck.ts";
import { capital, whoWords } from "./words.ts";
import "../answer/answer.css";
import "../answer/charts/charts.css";
import "../answer/sections/figures.css";
import "./report.css";

export interface ReportProps {
  readonly desk: Desk;
  readonly submissionKey: string;
  readonly unit: "mm" | "in";
  onLeave(): void;
  readonly startAssessor?: (() => Assessor) | undefined;
}

/** One check on paper: answer, readings and figures in both unit systems, drawings, formulas, cautions. */
export function Report({ desk, submissionKey, onLeave, startAssessor }: ReportProps) {
  const open = useOpenCheck(desk, submissionKey);
  const record = open.state === "here" ? open.shown.record : null;
  const heading = useHeadingFocus(`report ${record?.id ?? ""}`);
  const assessor = useAssessor(startAssessor);
  const fitment = useMemo(() => (record ? fitmentOf(record) : null), [record]);
  const assessed = useAssessment(assessor, fitment, "report");
  const decisions = useDecisions(desk, record?.id ?? null);
  const whole = assessed.state === "complete" || assessed.state === "fault";
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
        <Button look="main" disabled={!whole} onClick={() => window.print()}>
          Print
        </Button>
      }
    >
      {open.state === "gone" && <p>This check is not here.</p>}
      {record && fitment && (
        <article class="report">
          <Head record={record} headingRef={heading} />
          {assessed.state === "fault" && <p>{sentenceText(assessed.fault.sentence, "mm")}</p>}
          {assessed.state === "complete" ? (
            <Answered record={record} fitment={fitment} assessment={assessed.assessment} />
          ) : (
            assessed.state !== "fault" && <p class="soft">Working out the answer …</p>
          )}
          <Readings record={record} fitment={fitment} />
          {assessed.state === "complete" && (
            <>
              <Drawings fitment={fitment} assessment={assessed.assessment} />
              <FiguresTable fitment={fitment} assessment={assessed.assessment} />
              <Formulas fitment={fitment} assessment={assessed.assessment} />
            </>
          )}
          <section class="report-part">
            <h2>Cautions</h2>
            <ul class="cautions">
              {cautionsOf("raised").map(({ id, words }) => (
                <li key={id}>{words}</li>
              ))}
            </ul>
          </section>
          {open.state === "here" && <History decisions={decisions} versions={open.versions} />}
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
      <h1 ref={headingRef} tabIndex={-1}>
        Fitment check: {vehicle.label}, {record.axle} axle
      </h1>
      <dl class="facts">
        <dt>Number</dt>
        <dd>{record.id}</dd>
        <dt>Begun</dt>
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
      <LayoutPicture kind={record.layout.kind} />
    </header>
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
}: {
  record: CheckRecord;
  fitment: Fitment;
  assessment: Assessment;
}) {
  const pack = useReferencePack();
  const odd = useMemo(() => oddReadings(record, pack), [record, pack]);
  const estimate = estimateSentence(record.stop);
  const since = packSince(record, pack).map((sentence) => sentenceText(sentence, "mm"));
  const advice = new Set(
    assessment.corners.flatMap(({ side, advice: told }) =>
      told.map(({ sentence }) => `${sideWords[side]}: ${sentenceText(sentence, "mm")}`),
    ),
  );
  return (
    <section class="report-part" aria-labelledby="report-answer">
      <h2 id="report-answer" class="report-verdict">
        <StateMark state={assessment.verdict} size={32} label="" />
        {verdictWords[assessment.verdict]}
      </h2>
      <p>{sentenceText(assessment.reason, "mm")}</p>
      <p class="soft">{sentenceText(assessment.reason, "in")}</p>
      <h3>What to do</h3>
      <ul class="plain-list">
        {[...advice].map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
      <table class="report-table">
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
                <td>{sentenceText(sentence, "mm")}</td>
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
                {capital(readingWords(fitment, reading))}: {sentenceText(sentence, "mm")}
              </li>
            ))}
          </ul>
        </>
      )}
      {since.length > 0 && (
        <>
          <h3>Other in the pack in use than in this check</h3>
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
            <th scope="col">±</th>
            <th scope="col">Repeats</th>
          </tr>
        </thead>
        <tbody>
          {readingsOf(record).map(({ id, reading }) => {
            const kind = quantityKindOf(id);
            const mean = { kind, value: meanOf(reading) };
            return (
              <tr key={id}>
                <th scope="row">{capital(readingWords(fitment, id))}</th>
                <td>{quantityText(mean, "mm")}</td>
                <td>{quantityText(mean, "in")}</td>
                <td>{quantityText({ kind, value: reading.tol }, "mm")}</td>
                <td>{reading.values.length}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </section>
  );
}

function Drawings({ fitment, assessment }: { fitment: Fitment; assessment: Assessment }) {
  return (
    <section class="report-part report-page">
      <h2>Drawings</h2>
      <div class="ladders">
        {assessment.corners.map((corner) => (
          <TravelLadder key={corner.side} assessed={corner} unit="mm" />
        ))}
      </div>
      {assessment.corners.map((assessed) => {
        const corner = fitment.corners.find(({ side }) => side === assessed.side);
        const curve = corner ? wheelForceCurve(fitment, corner, assessed) : null;
        return (
          curve?.ok && (
            <WheelForceChart
              key={assessed.side}
              heading={`${sideWords[assessed.side]}: force at the wheel`}
              curve={curve.value}
              unit="mm"
            />
          )
        );
      })}
    </section>
  );
}

function known(fitment: Fitment, assessment: Assessment): readonly Figure[] {
  return figuresOf(rulesOf(fitment.use, fitment.rules), "mm").filter((figure) =>
    assessment.corners.some((corner) => figure.value(corner) !== null),
  );
}

function FiguresTable({ fitment, assessment }: { fitment: Fitment; assessment: Assessment }) {
  const sides = assessment.corners;
  return (
    <section class="report-part report-page">
      <table class="report-table">
        <caption>Figures in both unit systems</caption>
        <thead>
          <tr>
            <th scope="col">Figure</th>
            {sides.map(({ side }) => (
              <th key={side} scope="col">
                {sideWords[side]}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {known(fitment, assessment).map((figure) => (
            <tr key={figure.id}>
              <th scope="row">
                {figure.about ? `${figure.about}: ` : ""}
                {figure.title}
              </th>
              {sides.map((corner) => (
                <td key={corner.side}>{inBoth(figure, corner)}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

function inBoth(figure: Figure, corner: CornerAssessment): string {
  const [metric, imperial] = [figureText(figure, corner, "mm"), figureText(figure, corner, "in")];
  return metric === imperial ? metric : `${metric} (${imperial})`;
}

/** Formulas of the first side in full; those of impacts are simulations and have none of their own. */
function Formulas({ fitment, assessment }: { fitment: Fitment; assessment: Assessment }) {
  const [first] = assessment.corners;
  const context = first && cornerContext(fitment, first);
  if (!first || !context) return null;
  return (
    <section class="report-part report-page report-formulas">
      <h2>Formulas, with the numbers of the {first.side} side</h2>
      {known(fitment, assessment)
        .filter(({ group }) => group !== "impact")
        .map((figure) => {
          const worked = figure.worked(context);
          return (
            worked &&
            Number.isFinite(lastValue(worked)) && (
              <WorkedFigureView key={figure.id} heading={figure.title} figure={worked} unit="mm" />
            )
          );
        })}
    </section>
  );
}
