import type { Assessment, Fitment, Stop } from "../../../physics/fitment.ts";
import { secantRate, stiffnessClassOf } from "../../../physics/stop/stiffnessClass.ts";
import { stopCurve } from "../../../physics/stop/stopCurve.ts";
import { meanOf } from "../../../physics/uncertainty/readingMean.ts";
import { sentenceText } from "../../../records/quantityText.ts";
import type { LengthUnit } from "../../../records/units.ts";
import { StateMark } from "../../drawings/StateMark.tsx";
import { Button } from "../../parts/Button.tsx";
import { Notice } from "../../parts/Notice.tsx";
import { lengthText } from "../ladder/ladderWords.ts";
import { TravelLadder } from "../ladder/TravelLadder.tsx";
import { classText } from "../map/HeightClassMap.tsx";
import { SideComparison } from "../sections/SideComparison.tsx";
import { verdictWords } from "../stateWords.ts";
import type { Comparison } from "./useComparison.ts";

/** Stops to set against this one; a tap on one shows both side by side. */
export function StopPicker({
  stops,
  picked,
  onPick,
  unit,
}: {
  stops: readonly Stop[];
  picked: string | null;
  onPick: (stop: Stop | null) => void;
  unit: LengthUnit;
}) {
  return (
    <ul class="stop-picker">
      {stops.map((stop) => (
        <li key={stop.name}>
          <button
            type="button"
            class="stop-choice"
            aria-pressed={picked === stop.name}
            onClick={() => onPick(picked === stop.name ? null : stop)}
          >
            <span class="stop-name">{stop.name}</span>
            <span class="stop-figures">
              {lengthText(meanOf(stop.freeHeight), unit)} high, {stopClassText(stop, unit)}
              {stop.duty === "carry" && ", made to carry"}
            </span>
          </button>
        </li>
      ))}
    </ul>
  );
}

function stopClassText(stop: Stop, unit: LengthUnit): string {
  const curve = stopCurve(stop);
  return curve.ok ? classText(stiffnessClassOf(secantRate(curve.value)), unit) : "class not known";
}

/** This stop and the other one: verdicts, checks and ladders side by side, drawings over each other. */
export function ComparedStops({
  fitment,
  assessment,
  comparison,
  onLeave,
  unit,
}: {
  fitment: Fitment;
  assessment: Assessment;
  comparison: Comparison;
  onLeave: () => void;
  unit: LengthUnit;
}) {
  if (comparison.fault) {
    return (
      <Notice tone="unsure" live>
        <p>{sentenceText(comparison.fault.sentence, unit)}</p>
      </Notice>
    );
  }
  const { other } = comparison;
  if (!other) return <p class="soft">Working out the other stop …</p>;
  const otherName = sentenceText(other.name, unit);
  const both = [
    { name: fitment.stop.name, where: "fitted", assessment },
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
            <p class="check-sentence">{sentenceText(one.assessment.reason, unit)}</p>
          </section>
        ))}
      </div>
      <p class="small">
        The other stop on the same mount: the gap is taken to change by what it is taller or
        shorter. Fit it and measure the gap before relying on it.
      </p>
      <h3>{otherName}: the checks</h3>
      <SideComparison assessment={other.assessment} unit={unit} />
      <div class="ladders">
        {assessment.corners.map((corner) => {
          const theirs = other.assessment.corners.find(({ side }) => side === corner.side);
          return (
            <>
              <TravelLadder
                key={`${corner.side} fitted`}
                assessed={corner}
                unit={unit}
                label={fitment.stop.name}
              />
              {theirs && (
                <TravelLadder
                  key={`${corner.side} instead`}
                  assessed={theirs}
                  unit={unit}
                  label={otherName}
                />
              )}
            </>
          );
        })}
      </div>
      <Button icon="cross" onClick={onLeave}>
        Leave the comparison
      </Button>
    </div>
  );
}
