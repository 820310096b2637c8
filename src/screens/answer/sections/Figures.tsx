import { useState } from "preact/hooks";
import type { Assessment, CornerAssessment, Fitment } from "../../../physics/fitment.ts";
import { rulesOf } from "../../../physics/road/useRules.ts";
import { quantityText } from "../../../records/quantityText.ts";
import type { LengthUnit } from "../../../records/units.ts";
import { Icon } from "../../parts/Icon.tsx";
import { contactsText } from "../contacts/contactsWords.ts";
import { cornerContext } from "../formulas/cornerContext.ts";
import { type Figure, type FigureGroup, figuresOf } from "../formulas/figures.ts";
import { lastValue } from "../formulas/workedFigure.ts";
import { bandText } from "../ladder/ladderWords.ts";
import { probabilityNumber } from "../probabilityWords.ts";
import { sideWords } from "../stateWords.ts";
import { WorkedFigureView } from "./WorkedFigureView.tsx";

const groups: readonly (readonly [FigureGroup, string])[] = [
  ["travel", "Travel and height"],
  ["stop", "The stop"],
  ["road", "On the road"],
  ["impact", "In an impact"],
  ["doubt", "How sure"],
];

/** Every number of the answer; each opens to its formula with this vehicle's numbers. */
export function Figures({
  fitment,
  assessment,
  unit,
}: {
  fitment: Fitment;
  assessment: Assessment;
  unit: LengthUnit;
}) {
  const figures = figuresOf(rulesOf(fitment.use, fitment.rules), unit);
  return (
    <>
      {groups.map(([group, words]) => {
        const known = figures.filter(
          (figure) =>
            figure.group === group &&
            assessment.corners.some((corner) => figure.value(corner) !== null),
        );
        return (
          known.length > 0 && (
            <section key={group} class="stack-close">
              <h3>{words}</h3>
              {known.map((figure) => (
                <FigureRow
                  key={figure.id}
                  figure={figure}
                  fitment={fitment}
                  assessment={assessment}
                  unit={unit}
                />
              ))}
            </section>
          )
        );
      })}
    </>
  );
}

function FigureRow({
  figure,
  fitment,
  assessment,
  unit,
}: {
  figure: Figure;
  fitment: Fitment;
  assessment: Assessment;
  unit: LengthUnit;
}) {
  const [open, setOpen] = useState(false);
  return (
    <details
      class="disclosure figure"
      onToggle={(event) => setOpen(event.currentTarget.open)}
      data-figure={figure.id}
    >
      <summary>
        <Icon name="forward" />
        <span class="figure-title">{figure.title}</span>
        <span class="figure-values">
          {assessment.corners.map((corner) => (
            <span key={corner.side}>
              <small>{sideWords[corner.side]}</small> {figureText(figure, corner, unit)}
            </span>
          ))}
        </span>
      </summary>
      {open && (
        <div class="disclosure-body">
          {assessment.corners.map((corner) => (
            <CornerWorking
              key={corner.side}
              figure={figure}
              fitment={fitment}
              corner={corner}
              unit={unit}
            />
          ))}
        </div>
      )}
    </details>
  );
}

function CornerWorking({
  figure,
  fitment,
  corner,
  unit,
}: {
  figure: Figure;
  fitment: Fitment;
  corner: CornerAssessment;
  unit: LengthUnit;
}) {
  const context = cornerContext(fitment, corner);
  const worked = context && figure.worked(context);
  const side = sideWords[corner.side];
  if (!worked || !Number.isFinite(lastValue(worked))) {
    return <p>{side}: this figure is not known with the readings given.</p>;
  }
  const band = figure.band?.(corner);
  return (
    <div class="stack-close">
      <WorkedFigureView heading={side} figure={worked} unit={unit} />
      {band && <p class="small">95 % of what the readings allow: {bandText(band, unit)}.</p>}
    </div>
  );
}

export function figureText(figure: Figure, corner: CornerAssessment, unit: LengthUnit): string {
  const value = figure.value(corner);
  if (value === null) return "not known";
  if (typeof value === "string") return value;
  if (value.kind === "count") return contactsText(value.value);
  if (value.kind === "share" && figure.group === "doubt") return probabilityNumber(value.value);
  if (figure.id === "leverRatio" || figure.id === "oneWheelRatio") {
    return `${quantityText(value, unit)} (stop per wheel ${(1 / value.value).toFixed(2)})`;
  }
  return quantityText(value, unit);
}
