import { Fragment } from "preact";
import type { Assessment, Fitment } from "../../../physics/fitment.ts";
import type { LengthUnit } from "../../../records/entry/units.ts";
import { stopTitle } from "../../../records/pack/stopTitle.ts";
import { sentenceText, withoutRanges } from "../../../saying/sentenceText.ts";
import { said } from "../../../saying/texts.ts";
import * as messages from "../../../words/compiled/screens/answer/compare.ts";
import { sideWords, verdictWords } from "../../assessment/stateWords.ts";
import { StateMark } from "../../drawings/StateMark.tsx";
import { Button } from "../../parts/Button.tsx";
import { Unfolding } from "../../parts/Unfolding.tsx";
import { TravelLadder } from "../ladder/TravelLadder.tsx";
import { SideComparison } from "../sections/SideComparison.tsx";
import { ComparedFigures } from "./ComparedFigures.tsx";
import type { ComparedStop } from "./comparedStop.ts";

/** This stop and the other one: verdicts, checks and ladders side by side, drawings over each other. */
export function ComparedStops({
  fitment,
  assessment,
  other,
  onLeave,
  unit,
}: {
  fitment: Fitment;
  assessment: Assessment;
  other: ComparedStop;
  onLeave: () => void;
  unit: LengthUnit;
}) {
  const fittedName = said(stopTitle(fitment.stop));
  const otherName = sentenceText(other.name, unit);
  const both = [
    { name: fittedName, where: "fitted", assessment },
    { name: otherName, where: "instead", assessment: other.assessment },
  ];
  return (
    <div class="stack">
      <div class="compared">
        {both.map((one) => (
          <section key={one.where} class={`compared-one verdict-${one.assessment.verdict}`}>
            <h3>
              <small>{one.where}</small> {one.name}
            </h3>
            <p class="check-state">
              <StateMark state={one.assessment.verdict} size={28} label="" />
              <strong class={`tone-${one.assessment.verdict}`}>
                {verdictWords[one.assessment.verdict]}
              </strong>
            </p>
            <p class="check-sentence">
              {sentenceText(withoutRanges(one.assessment.reason), unit, { coarse: true })}
            </p>
          </section>
        ))}
      </div>
      <p class="small">{messages.otherStopIsOn}</p>
      <h3>{messages.checks({ otherName })}</h3>
      <SideComparison assessment={other.assessment} unit={unit} />
      {assessment.corners.map((corner) => {
        const theirs = other.assessment.corners.find(({ side }) => side === corner.side);
        return (
          theirs && (
            <Fragment key={corner.side}>
              <div class="ladders">
                <TravelLadder assessed={corner} unit={unit} label={fittedName} />
                <TravelLadder assessed={theirs} unit={unit} label={otherName} />
              </div>
              <Unfolding summary={messages.twoStopsInNumbers({ side: sideWords[corner.side] })}>
                {() => (
                  <ComparedFigures
                    fitment={fitment}
                    fitted={corner}
                    instead={theirs}
                    names={[fittedName, otherName]}
                    unit={unit}
                  />
                )}
              </Unfolding>
            </Fragment>
          )
        );
      })}
      <Button icon="cross" onClick={onLeave}>
        {messages.closeComparison}
      </Button>
    </div>
  );
}
