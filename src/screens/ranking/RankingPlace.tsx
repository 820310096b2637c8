import { useEffect, useMemo, useState } from "preact/hooks";
import type { Assessor } from "../../compute/assessor.ts";
import { fittedId } from "../../physics/prescription/index.ts";
import type { RankedStop } from "../../physics/ranking/index.ts";
import type { Sentence } from "../../physics/sentence.ts";
import { fitmentOf } from "../../records/check/fitmentOf.ts";
import type { StoredCheck } from "../../records/check/storedCheck.ts";
import { sentenceText } from "../../records/entry/quantityText.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import type { Mountable } from "../../records/pack/mounting.ts";
import { isOffered, type Pack, type PackStop, stopOf } from "../../records/pack/pack.ts";
import {
  fittedInPack,
  type MountedCheck,
  mountsHere,
  packCandidate,
  searchOptionsOf,
} from "../../records/pack/packCandidates.ts";
import { packSince } from "../../records/pack/packSince.ts";
import { answerHref, checksHref } from "../addresses.ts";
import { Cautions } from "../answer/sections/Cautions.tsx";
import { certification } from "../answer/sections/VerdictPanel.tsx";
import { useAssessor } from "../assessment/useAssessor.ts";
import { Button, ButtonLink } from "../parts/Button.tsx";
import { Notice } from "../parts/Notice.tsx";
import { Screen, useHeadingFocus } from "../parts/Screen.tsx";
import { usePackInUse } from "../referencePack.ts";
import type { OpenedStore } from "../useStore.ts";
import { RankedComparison } from "./RankedComparison.tsx";
import { Groups, OtherMountings } from "./RankedGroups.tsx";
import { RankedRow } from "./RankedRow.tsx";
import { rankedKey } from "./rankingWords.ts";
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
          {href === checksHref ? "All checks" : "To the check"}
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
  const [chosen, setChosen] = useState<readonly string[]>([]);
  const [comparing, setComparing] = useState(false);
  const { mounting, unclear, elsewhere } = useMemo(
    () => byMounting(pack, stored.record),
    [pack, stored],
  );
  const candidates = useMemo(
    () => [...mounting, ...unclear].map(packCandidate),
    [mounting, unclear],
  );
  const fitment = useMemo(() => {
    const completion = completeRecord(stored);
    return completion.ok ? fitmentOf(completion.value) : null;
  }, [stored]);
  const options = useMemo(
    () => fitment && searchOptionsOf(pack, stored.record, fitment, unit),
    [pack, stored, fitment, unit],
  );
  const ranking = useRanking(assessor, fitment, candidates, options);
  const since = useMemo(() => packSince(stored.record, pack), [stored, pack]);
  const compared = chosen.flatMap((key) => {
    const found = ranking.ranked.find((each) => rankedKey(each) === key);
    return found ? [found] : [];
  });
  const fitted = fittedInPack(pack, stored.record);
  const isUnclear = ({ id: ranked }: RankedStop) => unclear.some(({ id }) => id === ranked);
  const raised = (stored.record.vehicle?.liftMm ?? 0) > 0;

  const row = (ranked: RankedStop) => (
    <RankedRow
      key={rankedKey(ranked)}
      ranked={ranked}
      stop={ranked.id === fittedId ? fitted : stopOf(pack, ranked.id)}
      fitted={ranked.id === fittedId && ranked.spacerMm === 0}
      unclear={isUnclear(ranked)}
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
            Every stop of the library that mounts here, with this check's requirements. Where a
            spacer helps, it is shown with one.
          </p>
          <Progress ranking={ranking} />
          {ranking.fault && (
            <Notice tone="unsure" live>
              <p>{sentenceText(ranking.fault.sentence, unit)}</p>
            </Notice>
          )}
          <Groups
            ranking={{ ...ranking, ranked: ranking.ranked.filter((each) => !isUnclear(each)) }}
            row={row}
            unit={unit}
          />
          <OtherMountings
            unclear={ranking.ranked.filter(isUnclear)}
            elsewhere={elsewhere}
            row={row}
            unit={unit}
          />
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

/** The stops of the pack that can be ordered by whether they mount here; the one that is fitted is ranked by itself. */
function byMounting(pack: Pack, check: MountedCheck) {
  const fitted = fittedInPack(pack, check)?.id;
  const mounts = mountsHere(pack, check);
  const of = (wanted: Mountable): readonly PackStop[] =>
    pack.stops.filter((stop) => stop.id !== fitted && isOffered(stop) && mounts(stop) === wanted);
  return { mounting: of("yes"), unclear: of("check"), elsewhere: of("no") };
}
