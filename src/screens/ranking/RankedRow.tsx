import type { RankedStop } from "../../physics/ranking/index.ts";
import { sentenceText } from "../../records/entry/quantityText.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import type { PackStop } from "../../records/pack/pack.ts";
import { stopFacts } from "../../records/pack/stopFacts.ts";
import { verdictWords } from "../assessment/stateWords.ts";
import { StateMark } from "../drawings/StateMark.tsx";
import { CheckLine } from "../parts/Choices.tsx";
import {
  marginTexts,
  mountDifferences,
  rankedName,
  shortcomingsTold,
  travelLost,
} from "./rankingWords.ts";

/** One stop of the list: its verdict, its margins, and what fails. */
export function RankedRow({
  ranked,
  stop,
  fitted,
  fittedStop,
  unclear,
  compared,
  full,
  unit,
  onCompare,
}: {
  ranked: RankedStop;
  /** As the pack has it; null where it is only in the check. */
  stop: PackStop | null;
  /** It is the one of the check. */
  fitted: boolean;
  /** The check's own stop as the pack has it; null where it is not in the pack. */
  fittedStop: PackStop | null;
  /** It is not known whether it mounts here. */
  unclear: boolean;
  compared: boolean;
  /** As many are chosen for comparison as can be. */
  full: boolean;
  unit: LengthUnit;
  onCompare: (compared: boolean) => void;
}) {
  const name = rankedName(ranked, unit);
  // Nothing is green before it is known to mount.
  const shown = unclear && ranked.verdict !== "no" ? "unsure" : ranked.verdict;
  const margins = marginTexts(ranked, unit);
  const lost = travelLost(ranked, unit);
  const mount = stop && !fitted ? mountDifferences(stop, fittedStop, unit) : [];
  return (
    <li class={`card ranked ranked-${unclear ? "mayFit" : ranked.group}`}>
      <div class="ranked-head">
        <StateMark state={shown} size={32} label="" />
        <div>
          <h3>
            {name} {fitted && <span class="ranked-fitted">the one of this check</span>}
          </h3>
          <p class={`small tone-${shown}`}>
            {unclear && ranked.verdict !== "no"
              ? "Check first that it mounts"
              : verdictWords[ranked.verdict]}
          </p>
        </div>
      </div>
      {stop && <p class="small soft">{stopFacts(stop, unit)}</p>}
      {mount.length > 0 && (
        <ul class="ranked-shortcomings">
          {mount.map((text) => (
            <li key={text} class="ranked-mount small">
              <StateMark state="care" size={20} label="" />
              <span>{text}</span>
            </li>
          ))}
        </ul>
      )}
      {lost && (
        <p class="ranked-mount small">
          <StateMark state="care" size={20} label="" />
          <span>{lost}</span>
        </p>
      )}
      {ranked.fault && <p class="small">{sentenceText(ranked.fault.sentence, unit)}</p>}
      {margins.length > 0 && (
        <dl class="ranked-margins">
          {margins.map((margin) => (
            <div key={margin.name} class={margin.short ? "margin-short" : ""}>
              <dt>{margin.name}</dt>
              <dd>{margin.text}</dd>
            </div>
          ))}
        </dl>
      )}
      {ranked.shortcomings.length > 0 && (
        <ul class="ranked-shortcomings">
          {shortcomingsTold(ranked, unit).map(({ state, title, text }) => (
            <li key={title}>
              <StateMark state={state} size={20} label="" />
              <span class="small">
                <strong>{title}:</strong> {text}
              </span>
            </li>
          ))}
        </ul>
      )}
      {ranked.assessment && (
        <CheckLine
          checked={compared}
          onChange={onCompare}
          {...(full && !compared && { hint: "Three at most: remove another one first." })}
        >
          Compare<span class="unseen"> {name}</span>
        </CheckLine>
      )}
    </li>
  );
}
