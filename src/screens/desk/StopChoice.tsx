import { sentenceText } from "../../records/entry/quantityText.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import { verdictWords } from "../assessment/stateWords.ts";
import { StateMark } from "../drawings/StateMark.tsx";
import { rankedName, travelLost } from "../ranking/rankingWords.ts";
import type { PartsTried } from "./usePartsTried.ts";

export function StopChoice({
  tried: { parts, done, total, finished },
  picked,
  onPick,
  unit,
}: {
  tried: PartsTried;
  picked: string | null;
  onPick: (key: string) => void;
  unit: LengthUnit;
}) {
  return (
    <>
      {!finished && (
        <p class="small soft" role="status">
          {done} of {total} stops worked out
        </p>
      )}
      <ul class="desk-stops" aria-label="Stops of the parts library, tried on these readings">
        {parts.map(({ key, ranked, unclear }) => {
          const { verdict, assessment, fault } = ranked;
          const lost = travelLost(ranked, unit);
          const shown = unclear && verdict !== "no" ? "unsure" : verdict;
          return (
            <li key={key}>
              <button
                type="button"
                class="desk-stop"
                aria-pressed={picked === key}
                disabled={assessment === null}
                onClick={() => onPick(key)}
              >
                <StateMark state={shown} size={24} label="" />
                <span>
                  <strong>{rankedName(ranked, unit)}</strong>
                  {`: ${unclear ? "check how it mounts first; " : ""}${verdictWords[verdict].toLowerCase()}`}
                  <span class="small soft">
                    {assessment
                      ? sentenceText(assessment.reason, unit)
                      : fault && sentenceText(fault.sentence, unit)}
                    {lost && ` ${lost}`}
                  </span>
                </span>
              </button>
            </li>
          );
        })}
      </ul>
    </>
  );
}
