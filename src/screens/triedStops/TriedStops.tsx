import type { ComponentChildren } from "preact";
import { useState } from "preact/hooks";
import type { RankedStop } from "../../physics/ranking/index.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import { mountingText } from "../../records/pack/mounting.ts";
import { sentenceText } from "../../saying/sentenceText.ts";
import * as messages from "../../words/compiled/screens/triedStops.ts";
import { Button } from "../parts/Button.tsx";
import { Notice } from "../parts/Notice.tsx";
import { type HeadingLevel, headingOf, TriedStopRow } from "./TriedStopRow.tsx";
import { nearlyText } from "./triedWords.ts";
import type { TriedStops as Tried, TriedStop } from "./useTriedStops.ts";
import "./triedStops.css";

const groups: readonly {
  readonly group: RankedStop["group"];
  readonly heading: string;
  readonly says: string | null;
  readonly none: string;
}[] = [
  {
    group: "fits",
    heading: messages.theseFit,
    says: null,
    none: messages.noStopOfLibrary,
  },
  {
    group: "mayFit",
    heading: messages.theseMayFit,
    says: messages.nothingFailsButThere,
    none: messages.none,
  },
  {
    group: "nearly",
    heading: messages.closeButTheseDont,
    says: null,
    none: messages.none,
  },
  { group: "doesNotFit", heading: messages.theseDontFit, says: null, none: messages.none },
];

/**
 * The tested list of stops, the same wherever one is chosen: best first, what is not known to mount apart
 * and never green, what mounts differently named and not tried.
 */
export function TriedStops({
  tried,
  level = 2,
  unit,
  choice,
}: {
  tried: Tried;
  level?: HeadingLevel;
  unit: LengthUnit;
  /** What can be done with one of them; nothing with one that could not be assessed. */
  choice: (stop: TriedStop) => ComponentChildren;
}) {
  const [all, setAll] = useState(false);
  const { mounting, unclear, elsewhere, done, total, finished, fault } = tried;
  const Heading = headingOf(level);
  const row = (stop: TriedStop) => (
    <TriedStopRow
      key={stop.key}
      tried={stop}
      fitted={tried.fitted}
      level={level === 2 ? 3 : 4}
      unit={unit}
    >
      {stop.ranked.assessment && choice(stop)}
    </TriedStopRow>
  );
  return (
    <>
      {!finished && (
        <div class="progress-line" role="status">
          <label>
            {messages.ofStopsWorkedOut({ done, total })}
            <progress value={done} max={Math.max(1, total)} />
          </label>
        </div>
      )}
      {fault && (
        <Notice tone="unsure" live>
          <p>{sentenceText(fault.sentence, unit)}</p>
        </Notice>
      )}
      {groups.map(({ group, heading, says, none }) => {
        const members = mounting.filter(({ ranked }) => ranked.group === group);
        const folded = group === "doesNotFit" && !all;
        return (
          <section key={group} class="stack-close" aria-labelledby={`group-${group}`}>
            <Heading id={`group-${group}`}>
              {heading} ({members.length})
            </Heading>
            {members.length > 0 && group === "nearly" && (
              <p class="small soft">{nearlyText(unit)}</p>
            )}
            {members.length > 0 && says && <p class="small soft">{says}</p>}
            {members.length === 0 && finished && <p class="small soft">{none}</p>}
            {folded && members.length > 0 ? (
              <div class="row">
                <Button icon="plus" onClick={() => setAll(true)}>
                  {messages.showThemAndWhat}
                </Button>
              </div>
            ) : (
              <ul class="ranked-list">{members.map(row)}</ul>
            )}
          </section>
        );
      })}
      {unclear.length > 0 && (
        <section class="stack-close" aria-labelledby="group-unclear">
          <Heading id="group-unclear">
            {messages.checkMountingFirst({ unclear: unclear.length })}
          </Heading>
          <p class="small soft">{messages.threadBoreOrSeat}</p>
          <ul class="ranked-list">{unclear.map(row)}</ul>
        </section>
      )}
      {elsewhere.length > 0 && (
        <section class="stack-close" aria-labelledby="group-elsewhere">
          <Heading id="group-elsewhere">
            {messages.theseMountDifferently({ elsewhere: elsewhere.length })}
          </Heading>
          <p class="small soft">{messages.theyCantBeFitted}</p>
          <ul class="plain-list small">
            {elsewhere.map(({ id, name, mount, mounting: words }) => (
              <li key={id}>
                {name}
                {mount
                  ? ` · ${sentenceText(mountingText(mount), unit)}`
                  : words
                    ? ` · ${words}`
                    : ""}
              </li>
            ))}
          </ul>
        </section>
      )}
    </>
  );
}
