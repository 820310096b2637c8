import type { ComponentChildren } from "preact";
import type { LengthUnit } from "../../records/entry/units.ts";
import type { PackStop } from "../../records/pack/pack.ts";
import { stopFacts } from "../../records/pack/stopFacts.ts";
import { sentenceText } from "../../saying/sentenceText.ts";
import * as messages from "../../words/compiled/screens/triedStops.ts";
import { verdictWords } from "../assessment/stateWords.ts";
import { StateMark } from "../drawings/StateMark.tsx";
import {
  marginTexts,
  mountDifferences,
  rankedName,
  shortcomingsTold,
  travelLost,
} from "./triedWords.ts";
import type { TriedStop } from "./useTriedStops.ts";

export type HeadingLevel = 2 | 3 | 4;

export function headingOf(level: HeadingLevel): "h2" | "h3" | "h4" {
  return `h${level}`;
}

/** One stop of the list: its verdict, its margins, and what fails. */
export function TriedStopRow({
  tried: { ranked, stop, asFitted, unclear, shown },
  fitted,
  level,
  unit,
  children,
}: {
  tried: TriedStop;
  /** The check's own stop as the pack has it; null where it is not in the pack. */
  fitted: PackStop | null;
  level: HeadingLevel;
  unit: LengthUnit;
  children: ComponentChildren;
}) {
  const Heading = headingOf(level);
  const margins = marginTexts(ranked, unit);
  const lost = travelLost(ranked, unit);
  const mount = stop && !asFitted ? mountDifferences(stop, fitted, unit) : [];
  return (
    <li class={`card ranked ranked-${unclear ? "mayFit" : ranked.group}`}>
      <div class="ranked-head">
        <StateMark state={shown} size={32} label="" />
        <div>
          <Heading>
            {rankedName(ranked, unit)}{" "}
            {asFitted && <span class="ranked-fitted">{messages.oneOfThisCheck}</span>}
          </Heading>
          <p class={`small tone-${shown}`}>
            {unclear && ranked.verdict !== "no"
              ? messages.checkFirstThatIt
              : verdictWords[ranked.verdict]}
          </p>
        </div>
      </div>
      {stop && <p class="small soft">{sentenceText(stopFacts(stop), unit)}</p>}
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
      {ranked.fault && (
        <p class="small">{sentenceText(ranked.fault.sentence, unit, { coarse: true })}</p>
      )}
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
      {children}
    </li>
  );
}
