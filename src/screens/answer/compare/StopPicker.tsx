import { useState } from "preact/hooks";
import { gapOf } from "../../../physics/budget/index.ts";
import type { Fitment, Stop } from "../../../physics/fitment.ts";
import { secantRate, stiffnessClassOf, stopCurve } from "../../../physics/stop/index.ts";
import { meanOf } from "../../../physics/uncertainty/index.ts";
import type { LengthUnit } from "../../../records/entry/units.ts";
import type { PackStop } from "../../../records/pack/pack.ts";
import { stopInFull } from "../../../records/pack/stopFacts.ts";
import { Button } from "../../parts/Button.tsx";
import { lengthText } from "../ladder/ladderWords.ts";
import { classText } from "../map/cellWords.ts";

const shownFirst = 6;

/** Stops to set against the fitted one, likeliest first; a tap on one shows both side by side. */
export function StopPicker({
  fitment,
  stops,
  picked,
  onPick,
  unit,
}: {
  fitment: Fitment;
  stops: readonly PackStop[];
  picked: PackStop | null;
  onPick: (stop: PackStop | null) => void;
  unit: LengthUnit;
}) {
  const [all, setAll] = useState(false);
  const ordered = likeliestFirst(fitment, stops);
  const shown = all ? ordered : ordered.slice(0, shownFirst);
  return (
    <>
      <ul class="stop-picker">
        {shown.map((stop) => (
          <li key={stop.id}>
            <button
              type="button"
              class="stop-choice"
              aria-pressed={picked === stop}
              onClick={() => onPick(picked === stop ? null : stop)}
            >
              <span class="stop-name">{stopInFull(stop)}</span>
              <span class="stop-figures">
                {lengthText(meanOf(stop.freeHeight), unit)} high, {stopClassText(stop, unit)}
                {stop.duty === "carry" && ", made to carry"}
              </span>
            </button>
          </li>
        ))}
      </ul>
      {shown.length < ordered.length && (
        <Button icon="plus" onClick={() => setAll(true)}>
          All {ordered.length} stops of the library
        </Button>
      )}
    </>
  );
}

/** Of the fitted one's duty and short enough for the gaps first, then by how near in height. */
function likeliestFirst(fitment: Fitment, stops: readonly PackStop[]): PackStop[] {
  const height = meanOf(fitment.stop.freeHeight);
  const leastGap = Math.min(
    ...fitment.corners.map((corner) => {
      const gap = gapOf(fitment, corner);
      return gap.ok ? gap.value : 0;
    }),
  );
  const distance = (stop: Stop) => {
    const taller = meanOf(stop.freeHeight) - height;
    return (
      Math.abs(taller) +
      (taller > leastGap ? 10_000 : 0) +
      (stop.duty === fitment.stop.duty ? 0 : 1000)
    );
  };
  return [...stops].sort((a, b) => distance(a) - distance(b));
}

function stopClassText(stop: Stop, unit: LengthUnit): string {
  const curve = stopCurve(stop);
  return curve.ok ? classText(stiffnessClassOf(secantRate(curve.value)), unit) : "class not known";
}
