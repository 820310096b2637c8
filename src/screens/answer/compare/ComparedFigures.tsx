import type { CornerAssessment, Fitment } from "../../../physics/fitment.ts";
import { rulesOf } from "../../../physics/road/index.ts";
import type { LengthUnit } from "../../../records/entry/units.ts";
import * as messages from "../../../words/compiled/screens/answer/compare.ts";
import { sideWords } from "../../assessment/stateWords.ts";
import { DataTable } from "../../charts/DataTable.tsx";
import { figuresOf } from "../formulas/figures.ts";
import { figureText } from "../sections/Figures.tsx";

const left: readonly string[] = ["leverRatio", "contactInterval", "reserveInterval"];

/** One side's figures of both stops in two columns. */
export function ComparedFigures({
  fitment,
  fitted,
  instead,
  names,
  unit,
}: {
  fitment: Fitment;
  fitted: CornerAssessment;
  instead: CornerAssessment;
  names: readonly [string, string];
  unit: LengthUnit;
}) {
  const rows = figuresOf(rulesOf(fitment.use, fitment.rules), unit)
    .filter(
      (figure) =>
        !left.includes(figure.id) &&
        (figure.value(fitted) !== null || figure.value(instead) !== null),
    )
    .map((figure) => [
      figure.titleAlone ?? figure.title,
      figureText(figure, fitted, unit),
      figureText(figure, instead, unit),
    ]);
  return (
    <DataTable
      caption={messages.twoStopsInNumbers({ side: sideWords[fitted.side] })}
      columns={[{ name: messages.figure }, { name: names[0] }, { name: names[1] }]}
      rows={rows}
    />
  );
}
