import type { Assessment, Fitment } from "../../physics/fitment.ts";
import { rulesOf } from "../../physics/road/index.ts";
import { simulatedStops } from "../../physics/stop/index.ts";
import { cornerContext, lastValue } from "../../physics/worked/index.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import { said } from "../../saying/texts.ts";
import * as messages from "../../words/compiled/screens/desk.ts";
import { type Figure, figuresOf, passageOf } from "../answer/formulas/figures.ts";
import { TravelLadder } from "../answer/ladder/TravelLadder.tsx";
import { figureText } from "../answer/sections/Figures.tsx";
import { WorkedFigureView } from "../answer/sections/WorkedFigureView.tsx";
import { WheelForceChart } from "../answer/wheelForce/WheelForceChart.tsx";
import { wheelForceCurve } from "../answer/wheelForce/wheelForceCurve.ts";
import { sideWords } from "../assessment/stateWords.ts";
import { CaptionedTable } from "../charts/DataTable.tsx";

/** The ladders and the force at the wheel, drawn. */
export function Drawings({
  fitment,
  assessment,
  unit,
}: {
  fitment: Fitment;
  assessment: Assessment;
  unit: LengthUnit;
}) {
  return (
    <section class="report-part report-page">
      <h2>{messages.drawings}</h2>
      <div class="ladders">
        {assessment.corners.map((corner) => (
          <TravelLadder key={corner.side} assessed={corner} unit={unit} />
        ))}
      </div>
      <div class="report-charts">
        {assessment.corners.map((assessed) => {
          const corner = fitment.corners.find(({ side }) => side === assessed.side);
          const curve = corner ? wheelForceCurve(fitment, corner, assessed) : null;
          return (
            curve?.ok && (
              <WheelForceChart
                key={assessed.side}
                heading={messages.forceAtWheel({ side: sideWords[assessed.side] })}
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

function known(fitment: Fitment, assessment: Assessment, unit: LengthUnit): readonly Figure[] {
  return figuresOf(rulesOf(fitment.use, fitment.rules), unit).filter((figure) =>
    assessment.corners.some((corner) => figure.value(corner) !== null),
  );
}

/** Every figure of both sides. */
export function FiguresTable({
  fitment,
  assessment,
  unit,
}: {
  fitment: Fitment;
  assessment: Assessment;
  unit: LengthUnit;
}) {
  const sides = assessment.corners;
  return (
    <section class="report-part report-page">
      <CaptionedTable
        look="report-table"
        caption={messages.figures}
        columns={[
          { name: messages.figure },
          ...sides.map(({ side }) => ({ name: sideWords[side] })),
        ]}
        rows={known(fitment, assessment, unit).map((figure) => [
          figure.about
            ? messages.figureOf({ about: figure.about, title: figure.title })
            : figure.title,
          ...sides.map((corner) => figureText(figure, corner, unit)),
        ])}
      />
      {sides.some(({ events }) => events !== null) && <p class="small">{said(simulatedStops)}</p>}
    </section>
  );
}

/** Formulas of the first side in full; those of impacts are simulations and have none of their own. */
export function Formulas({
  fitment,
  assessment,
  unit,
}: {
  fitment: Fitment;
  assessment: Assessment;
  unit: LengthUnit;
}) {
  const [first] = assessment.corners;
  const context = first && cornerContext(fitment, first);
  if (!first || !context) return null;
  return (
    <section class="report-part">
      <h2>{messages.formulasWithNumbersOf({ side: first.side })}</h2>
      <div class="report-formulas">
        {known(fitment, assessment, unit)
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
                  unit={unit}
                />
              )
            );
          })}
      </div>
    </section>
  );
}
