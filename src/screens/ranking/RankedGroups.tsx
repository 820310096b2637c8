import { useState } from "preact/hooks";
import type { RankedStop } from "../../physics/ranking/index.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import { mountingText } from "../../records/pack/mounting.ts";
import type { PackStop } from "../../records/pack/pack.ts";
import { Button } from "../parts/Button.tsx";
import { nearlyText } from "./rankingWords.ts";
import type { Ranking } from "./useRanking.ts";

const groups: readonly {
  readonly group: RankedStop["group"];
  readonly heading: string;
  readonly says: string | null;
  readonly none: string;
}[] = [
  {
    group: "fits",
    heading: "These fit",
    says: null,
    none: "No stop of the library fits as this vehicle stands.",
  },
  {
    group: "mayFit",
    heading: "These may fit",
    says: "Nothing fails, but there is a warning or something can't be told yet.",
    none: "None.",
  },
  {
    group: "nearly",
    heading: "Close, but these don't fit",
    says: null,
    none: "None.",
  },
  { group: "doesNotFit", heading: "These don't fit", says: null, none: "None." },
];

export function Groups({
  ranking,
  row,
  unit,
}: {
  ranking: Ranking;
  unit: LengthUnit;
  row: (ranked: RankedStop) => preact.ComponentChildren;
}) {
  const [all, setAll] = useState(false);
  return (
    <>
      {groups.map(({ group, heading, says, none }) => {
        const members = ranking.ranked.filter((ranked) => ranked.group === group);
        const folded = group === "doesNotFit" && !all;
        return (
          <section key={group} class="stack-close" aria-labelledby={`group-${group}`}>
            <h2 id={`group-${group}`}>
              {heading} ({members.length})
            </h2>
            {members.length > 0 && group === "nearly" && (
              <p class="small soft">{nearlyText(unit)}</p>
            )}
            {members.length > 0 && says && <p class="small soft">{says}</p>}
            {members.length === 0 && ranking.finished && <p class="small soft">{none}</p>}
            {folded && members.length > 0 ? (
              <div class="row">
                <Button icon="plus" onClick={() => setAll(true)}>
                  Show them, and what fails
                </Button>
              </div>
            ) : (
              <ul class="ranked-list">{members.map(row)}</ul>
            )}
          </section>
        );
      })}
    </>
  );
}

/** What can't be mounted here, or is not known to: apart, and never among those that fit. */
export function OtherMountings({
  unclear,
  elsewhere,
  row,
  unit,
}: {
  unclear: readonly RankedStop[];
  elsewhere: readonly PackStop[];
  unit: LengthUnit;
  row: (ranked: RankedStop) => preact.ComponentChildren;
}) {
  return (
    <>
      {unclear.length > 0 && (
        <section class="stack-close" aria-labelledby="group-unclear">
          <h2 id="group-unclear">Check the mounting first ({unclear.length})</h2>
          <p class="small soft">
            The thread, bore or seat is not known, here or on the stop. Check first that it mounts.
          </p>
          <ul class="ranked-list">{unclear.map(row)}</ul>
        </section>
      )}
      {elsewhere.length > 0 && (
        <section class="stack-close" aria-labelledby="group-elsewhere">
          <h2 id="group-elsewhere">These mount differently ({elsewhere.length})</h2>
          <p class="small soft">They can't be fitted here, so they were not tried.</p>
          <ul class="plain-list small">
            {elsewhere.map(({ id, name, mount, mounting }) => (
              <li key={id}>
                {name}
                {mount ? ` · ${mountingText(mount, unit)}` : mounting ? ` · ${mounting}` : ""}
              </li>
            ))}
          </ul>
        </section>
      )}
    </>
  );
}
