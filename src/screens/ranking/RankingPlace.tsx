import { useEffect, useMemo, useState } from "preact/hooks";
import type { Assessor } from "../../compute/assessor.ts";
import type { Candidate } from "../../physics/prescription/candidates.ts";
import type { RankedStop } from "../../physics/ranking/rankStops.ts";
import type { Sentence } from "../../physics/sentence.ts";
import { fitmentOf } from "../../records/check/fitmentOf.ts";
import type { StoredCheck } from "../../records/check/storedCheck.ts";
import { sentenceText } from "../../records/entry/quantityText.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import { type Pack, recordStop, stopOf } from "../../records/pack/pack.ts";
import { packSince } from "../../records/pack/packSince.ts";
import { answerHref, checksHref } from "../addresses.ts";
import { Cautions } from "../answer/sections/Cautions.tsx";
import { certification } from "../answer/sections/VerdictPanel.tsx";
import { useAssessor } from "../assessment/useAssessor.ts";
import { Button, ButtonLink } from "../parts/Button.tsx";
import { SelectField } from "../parts/Field.tsx";
import { Notice } from "../parts/Notice.tsx";
import { Screen, useHeadingFocus } from "../parts/Screen.tsx";
import { usePackInUse } from "../referencePack.ts";
import type { OpenedStore } from "../useStore.ts";
import { RankedComparison } from "./RankedComparison.tsx";
import { RankedRow } from "./RankedRow.tsx";
import { fittedInPack, nearlyText, rankedKey } from "./rankingWords.ts";
import { type Ranking, useRanking } from "./useRanking.ts";
import "../answer/answer.css";
import "../charts/charts.css";
import "../answer/sections/figures.css";
import "./ranking.css";
import { completeRecord } from "../../records/check/completeRecord.ts";
import { OneMoment } from "../parts/OneMoment.tsx";

export interface RankingPlaceProps {
  readonly opened: OpenedStore;
  readonly id: string;
  readonly unit: LengthUnit;
  /** Another calculator than the worker's, where there is no worker. */
  readonly startAssessor?: () => Assessor;
}

type Loaded =
  | { readonly state: "loading" }
  | { readonly state: "gone"; readonly sentence: Sentence }
  | { readonly state: "here"; readonly stored: StoredCheck };

const gone: Sentence = ["This check is no longer on this phone."];

/** Which stop of the pack fits the vehicle of one check? */
export default function RankingPlace({ opened, id, unit, startAssessor }: RankingPlaceProps) {
  const { store } = opened;
  const inUse = usePackInUse();
  const [loaded, setLoaded] = useState<Loaded>({ state: "loading" });
  useEffect(() => {
    let left = false;
    store.get(id).then((found) => {
      if (left) return;
      if (!found.ok) setLoaded({ state: "gone", sentence: found.fault.sentence });
      else if (found.value === null || found.value.deletedAt !== undefined) {
        setLoaded({ state: "gone", sentence: gone });
      } else setLoaded({ state: "here", stored: found.value });
    });
    return () => {
      left = true;
    };
  }, [store, id]);
  if (loaded.state === "loading" || !inUse) return <OneMoment />;
  if (loaded.state === "gone") {
    return (
      <Unready heading="No check here" sentence={loaded.sentence} href={checksHref} unit={unit} />
    );
  }
  const completion = completeRecord(loaded.stored);
  if (!completion.ok) {
    return (
      <Unready
        heading="The check is not complete yet"
        sentence={completion.fault.sentence}
        href={answerHref(id)}
        unit={unit}
      />
    );
  }
  return (
    <Ranked stored={loaded.stored} pack={inUse.pack} unit={unit} startAssessor={startAssessor} />
  );
}

function Unready({
  heading,
  sentence,
  href,
  unit,
}: {
  heading: string;
  sentence: Sentence;
  href: string;
  unit: LengthUnit;
}) {
  const focus = useHeadingFocus(heading);
  return (
    <Screen
      top={<span class="screen-name brand">Stopfit</span>}
      actions={
        <ButtonLink look="main" href={href}>
          {href === checksHref ? "To the list of checks" : "To the check"}
        </ButtonLink>
      }
    >
      <h1 ref={focus} tabIndex={-1}>
        {heading}
      </h1>
      <p>{sentenceText(sentence, unit)}</p>
    </Screen>
  );
}

const mostCompared = 3;
const fittedId = "stop of this check";
const anyMount = "";

/** The pack's stops as they may be fitted; the check's own first, where the pack does not have it so. */
function candidatesOf(pack: Pack, stored: StoredCheck, mount: string): readonly Candidate[] {
  const completion = completeRecord(stored);
  if (!completion.ok) return [];
  const own = completion.value.stop;
  const known = pack.stops.some(({ name }) => name === own.name);
  const stops = pack.stops.filter(
    ({ mounting, name }) => mount === anyMount || mounting === mount || name === own.name,
  );
  return [
    ...(known ? [] : [{ id: fittedId, stop: own }]),
    ...stops.map((stop) => ({
      id: stop.id,
      stop: stop.name === own.name ? own : recordStop(stop),
    })),
  ];
}

function Ranked({
  stored,
  pack,
  unit,
  startAssessor,
}: {
  stored: StoredCheck;
  pack: Pack;
  unit: LengthUnit;
  startAssessor: (() => Assessor) | undefined;
}) {
  const heading = useHeadingFocus("stops");
  const assessor = useAssessor(startAssessor);
  const [mount, setMount] = useState(anyMount);
  const [chosen, setChosen] = useState<readonly string[]>([]);
  const [comparing, setComparing] = useState(false);
  const candidates = useMemo(() => candidatesOf(pack, stored, mount), [pack, stored, mount]);
  const fitment = useMemo(() => {
    const completion = completeRecord(stored);
    return completion.ok ? fitmentOf(completion.value) : null;
  }, [stored]);
  const ranking = useRanking(assessor, fitment, candidates);
  const own = stored.record.stop?.name ?? "";
  const since = useMemo(() => packSince(stored.record, pack), [stored, pack]);
  const compared = chosen.flatMap((key) => {
    const found = ranking.ranked.find((each) => rankedKey(each) === key);
    return found ? [found] : [];
  });
  const mounts = [...new Set(pack.stops.flatMap(({ mounting }) => (mounting ? [mounting] : [])))];
  const fitted = fittedInPack(pack, own);
  const raised = (stored.record.vehicle?.liftMm ?? 0) > 0;

  const row = (ranked: RankedStop) => (
    <RankedRow
      key={rankedKey(ranked)}
      ranked={ranked}
      stop={stopOf(pack, ranked.id)}
      fitted={ranked.name === own && ranked.spacerMm === 0}
      fittedStop={fitted}
      compared={chosen.includes(rankedKey(ranked))}
      full={chosen.length >= mostCompared}
      unit={unit}
      onCompare={(wanted) =>
        setChosen((before) => {
          const others = before.filter((key) => key !== rankedKey(ranked));
          return wanted ? [...others, rankedKey(ranked)].slice(0, mostCompared) : others;
        })
      }
    />
  );
  return (
    <Screen
      wide
      top={
        <>
          <ButtonLink look="quiet" href={answerHref(stored.id)} icon="back" label="To the answer" />
          <span class="screen-name">{stored.name || stored.record.vehicle?.label || "Check"}</span>
        </>
      }
      actions={
        comparing ? (
          <Button icon="back" onClick={() => setComparing(false)}>
            Back to the list
          </Button>
        ) : (
          <Button
            look="main"
            disabled={compared.length < 2}
            onClick={() => {
              setComparing(true);
              window.scrollTo(0, 0);
            }}
          >
            {compared.length < 2
              ? "Tick two or three to compare"
              : `Compare ${compared.length} side by side`}
          </Button>
        )
      }
    >
      <h1 ref={heading} tabIndex={-1}>
        {comparing ? "Side by side" : "Which stop fits?"}
      </h1>
      {since.map((sentence) => {
        const text = sentenceText(sentence, unit);
        return (
          <Notice key={text} tone="care">
            <p>{text}</p>
          </Notice>
        );
      })}
      {comparing ? (
        <RankedComparison
          assessor={assessor}
          chosen={compared}
          pack={pack}
          fittedStop={fitted}
          unit={unit}
        />
      ) : (
        <>
          <p>
            Every stop of the pack on this vehicle, on the same mount, with this check's use and
            demands. Where a spacer helps, it is shown with one.
          </p>
          <SelectField
            label="Mounting"
            value={mount}
            options={[
              { value: anyMount, text: "Any mounting" },
              ...mounts.map((each) => ({ value: each, text: each })),
            ]}
            onChange={setMount}
          />
          <Progress ranking={ranking} />
          {ranking.fault && (
            <Notice tone="unsure" live>
              <p>{sentenceText(ranking.fault.sentence, unit)}</p>
            </Notice>
          )}
          <Groups ranking={ranking} row={row} unit={unit} />
          <Cautions raised={raised} />
          <p class="small">{certification}</p>
        </>
      )}
    </Screen>
  );
}

function Progress({ ranking: { done, total, finished } }: { ranking: Ranking }) {
  if (finished) return null;
  return (
    <div class="progress-line" role="status">
      <label>
        {done} of {total} stops worked out
        <progress value={done} max={Math.max(1, total)} />
      </label>
    </div>
  );
}

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
    none: "No stop of the pack fits as this vehicle stands.",
  },
  {
    group: "mayFit",
    heading: "These may fit",
    says: "Nothing fails, but something needs care or can't be said for sure yet.",
    none: "None.",
  },
  {
    group: "nearly",
    heading: "These nearly fit, but do not",
    says: null,
    none: "None.",
  },
  { group: "doesNotFit", heading: "These do not fit", says: null, none: "None." },
];

function Groups({
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
