import { Fragment } from "preact";
import type { Assessment, CornerAssessment, Fitment } from "../../../physics/fitment.ts";
import { rulesOf } from "../../../physics/road/index.ts";
import { cornerContext, lastValue } from "../../../physics/worked/index.ts";
import type { LengthUnit } from "../../../records/entry/units.ts";
import { quantityText } from "../../../saying/quantityText.ts";
import * as messages from "../../../words/compiled/screens/answer/sections.ts";
import { sideWords } from "../../assessment/stateWords.ts";
import { Unfolding } from "../../parts/Unfolding.tsx";
import { type Figure, type FigureGroup, figuresOf, passageOf } from "../formulas/figures.ts";
import { bandText } from "../ladder/ladderWords.ts";
import { probabilityNumber } from "../probabilityWords.ts";
import { WorkedFigureView } from "./WorkedFigureView.tsx";

const groupWords: Record<FigureGroup, string> = {
  travel: messages.travelAndHeight,
  stop: messages.stopWord,
  road: messages.road,
  impact: messages.impacts,
  doubt: messages.marginOfError,
};

/** The numbers of one part of the answer; each opens to its formula with this vehicle's numbers. */
export function Figures({
  group,
  fitment,
  assessment,
  unit,
}: {
  group: FigureGroup;
  fitment: Fitment;
  assessment: Assessment;
  unit: LengthUnit;
}) {
  const known = figuresOf(rulesOf(fitment.use, fitment.rules), unit).filter(
    (figure) =>
      figure.group === group && assessment.corners.some((corner) => figure.value(corner) !== null),
  );
  if (known.length === 0) return null;
  return (
    <Unfolding summary={messages.math({ group: groupWords[group] })}>
      {() => (
        <div class="figures">
          {known.map((figure, index) => (
            <Fragment key={figure.id}>
              {figure.about && figure.about !== known[index - 1]?.about && (
                <h3 class="figures-about">{figure.about}</h3>
              )}
              <FigureRow figure={figure} fitment={fitment} assessment={assessment} unit={unit} />
            </Fragment>
          ))}
        </div>
      )}
    </Unfolding>
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
  const texts = assessment.corners.map((corner) => figureText(figure, corner, unit));
  const alike = new Set(texts).size === 1;
  return (
    <Unfolding
      look="figure"
      figure={figure.id}
      summary={
        <>
          <span class="figure-title">{figure.title}</span>
          <span class="figure-values">
            {alike ? (
              <span>
                {assessment.corners.length > 1 && <small>{messages.both}</small>} {texts[0]}
              </span>
            ) : (
              assessment.corners.map(({ side }, index) => (
                <span key={side}>
                  <small>{sideWords[side]}</small> {texts[index]}
                </span>
              ))
            )}
          </span>
        </>
      }
    >
      {() =>
        assessment.corners.map((corner) => (
          <CornerWorking
            key={corner.side}
            figure={figure}
            fitment={fitment}
            corner={corner}
            unit={unit}
          />
        ))
      }
    </Unfolding>
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
    return <p>{messages.thisFigureIsNot({ side })}</p>;
  }
  const band = figure.band?.(corner);
  return (
    <div class="stack-close">
      <WorkedFigureView
        heading={side}
        figure={worked}
        passage={passageOf[figure.group]}
        unit={unit}
      />
      {band && <p class="small">{messages.n95OfWhatReadings({ band: bandText(band, unit) })}</p>}
    </div>
  );
}

export function figureText(figure: Figure, corner: CornerAssessment, unit: LengthUnit): string {
  const value = figure.value(corner);
  if (value === null) return messages.notKnown;
  if (typeof value === "string") return value;
  if (value.kind === "share" && figure.group === "doubt") return probabilityNumber(value.value);
  if (
    figure.id === "leverRatio" ||
    figure.id === "leverRatioAtFullStop" ||
    figure.id === "oneWheelRatio"
  ) {
    return messages.stopPerWheel({
      value: quantityText(value, unit),
      value2: (1 / value.value).toFixed(2),
    });
  }
  return quantityText(value, unit);
}
