import type { Assessment, CornerAssessment, Fitment } from "../../physics/fitment.ts";
import { rulesOf } from "../../physics/road/index.ts";
import { simulatedStops } from "../../physics/stop/index.ts";
import { cornerContext, lastValue } from "../../physics/worked/index.ts";
import type { CheckRecord } from "../../records/check/checkRecord.ts";
import { unitOf } from "../../records/review/submission.ts";
import { type Figure, figuresOf, passageOf } from "../answer/formulas/figures.ts";
import { TravelLadder } from "../answer/ladder/TravelLadder.tsx";
import { figureText } from "../answer/sections/Figures.tsx";
import { WorkedFigureView } from "../answer/sections/WorkedFigureView.tsx";
import { WheelForceChart } from "../answer/wheelForce/WheelForceChart.tsx";
import { wheelForceCurve } from "../answer/wheelForce/wheelForceCurve.ts";
import { sideWords } from "../assessment/stateWords.ts";
import { CaptionedTable } from "../charts/DataTable.tsx";

/** The drawings, the ladders in both unit systems. */
export function Drawings({
  record,
  fitment,
  assessment,
}: {
  record: CheckRecord;
  fitment: Fitment;
  assessment: Assessment;
}) {
  const unit = unitOf(record);
  return (
    <section class="report-part report-page">
      <h2>Drawings</h2>
      {(["mm", "in"] as const).map((unit) => (
        <div key={unit} class="ladders">
          {assessment.corners.map((corner) => (
            <TravelLadder
              key={corner.side}
              assessed={corner}
              unit={unit}
              label={unit === "in" ? "in inches" : "in millimeters"}
            />
          ))}
        </div>
      ))}
      <div class="report-charts">
        {assessment.corners.map((assessed) => {
          const corner = fitment.corners.find(({ side }) => side === assessed.side);
          const curve = corner ? wheelForceCurve(fitment, corner, assessed) : null;
          return (
            curve?.ok && (
              <WheelForceChart
                key={assessed.side}
                heading={`${sideWords[assessed.side]}: force at the wheel`}
                curve={curve.value}
                unit={unit}
              />
            )
          );
        })}
      </div>
    </section>
  );
}

function known(fitment: Fitment, assessment: Assessment): readonly Figure[] {
  return figuresOf(rulesOf(fitment.use, fitment.rules), "mm").filter((figure) =>
    assessment.corners.some((corner) => figure.value(corner) !== null),
  );
}

/** Every figure in both unit systems. */
export function FiguresTable({
  fitment,
  assessment,
}: {
  fitment: Fitment;
  assessment: Assessment;
}) {
  const sides = assessment.corners;
  return (
    <section class="report-part report-page">
      <CaptionedTable
        look="report-table"
        caption="Figures in both unit systems"
        columns={[{ name: "Figure" }, ...sides.map(({ side }) => ({ name: sideWords[side] }))]}
        rows={known(fitment, assessment).map((figure) => [
          `${figure.about ? `${figure.about}: ` : ""}${figure.title}`,
          ...sides.map((corner) => inBoth(figure, corner)),
        ])}
      />
      {sides.some(({ events }) => events !== null) && <p class="small">{simulatedStops}</p>}
    </section>
  );
}

function inBoth(figure: Figure, corner: CornerAssessment): string {
  const [metric, imperial] = [figureText(figure, corner, "mm"), figureText(figure, corner, "in")];
  return metric === imperial ? metric : `${metric} (${imperial})`;
}

/** Formulas of the first side in full; those of impacts are simulations and have none of their own. */
export function Formulas({ fitment, assessment }: { fitment: Fitment; assessment: Assessment }) {
  const [first] = assessment.corners;
  const context = first && cornerContext(fitment, first);
  if (!first || !context) return null;
  return (
    <section class="report-part">
      <h2>Formulas, with the numbers of the {first.side} side</h2>
      <div class="report-formulas">
        {known(fitment, assessment)
          .filter(({ group }) => group !== "impact")
          .map((figure) => {
            const worked = figure.worked(context);
            return (
              worked &&
              Number.isFinite(lastValue(worked)) && (
                <WorkedFigureView
                  key={figure.id}
                  heading={figure.title}
                  figure={worked}
                  passage={passageOf[figure.group]}
                  unit="mm"
                />
              )
            );
          })}
      </div>
    </section>
  );
}
