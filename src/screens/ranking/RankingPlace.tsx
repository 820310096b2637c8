import { useEffect, useMemo, useState } from "preact/hooks";
import type { Assessor } from "../../compute/assessor.ts";
import type { Sentence } from "../../physics/sentence.ts";
import { fitmentOf } from "../../records/check/fitmentOf.ts";
import type { StoredCheck } from "../../records/check/storedCheck.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import type { Pack } from "../../records/pack/pack.ts";
import { packSince } from "../../records/pack/packSince.ts";
import { sentenceText } from "../../saying/sentenceText.ts";
import * as messages from "../../words/compiled/screens/ranking.ts";
import { answerHref, checksHref } from "../addresses.ts";
import { Cautions } from "../answer/sections/Cautions.tsx";
import { certification } from "../answer/sections/VerdictPanel.tsx";
import { useAssessor } from "../assessment/useAssessor.ts";
import { CheckHead } from "../check/CheckHead.tsx";
import { filled } from "../filled.ts";
import { Button, ButtonLink } from "../parts/Button.tsx";
import { CheckLine } from "../parts/Choices.tsx";
import { Notice } from "../parts/Notice.tsx";
import { Screen, useHeadingFocus } from "../parts/Screen.tsx";
import { usePackInUse } from "../referencePack.ts";
import { TriedStops } from "../triedStops/TriedStops.tsx";
import { rankedName } from "../triedStops/triedWords.ts";
import { allTried, type TriedStop, useTriedStops } from "../triedStops/useTriedStops.ts";
import type { OpenedStore } from "../useStore.ts";
import { RankedComparison } from "./RankedComparison.tsx";
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

const gone: Sentence = [messages.thisCheckIsNo];

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
      <Unready
        heading={messages.noCheckHere}
        sentence={loaded.sentence}
        href={checksHref}
        unit={unit}
      />
    );
  }
  const completion = completeRecord(loaded.stored);
  if (!completion.ok) {
    return (
      <Unready
        heading={messages.checkIsNotComplete}
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
      top={<span class="screen-name brand">{messages.stopfit}</span>}
      actions={
        <ButtonLink look="main" href={href}>
          {href === checksHref ? messages.allChecks : messages.toCheck}
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
  const fitment = useMemo(() => {
    const completion = completeRecord(stored);
    return completion.ok ? fitmentOf(completion.value) : null;
  }, [stored]);
  const tried = useTriedStops(assessor, stored.record, fitment, pack, unit);
  const since = useMemo(() => packSince(stored.record, pack), [stored, pack]);
  const compared = chosen.flatMap((key) => {
    const found = allTried(tried).find((each) => each.key === key);
    return found ? [found.ranked] : [];
  });
  const raised = (stored.record.vehicle?.liftMm ?? 0) > 0;
  const full = chosen.length >= mostCompared;

  const choice = ({ key, ranked }: TriedStop) => (
    <CheckLine
      checked={chosen.includes(key)}
      onChange={(wanted) =>
        setChosen((before) => {
          const others = before.filter((each) => each !== key);
          return wanted ? [...others, key].slice(0, mostCompared) : others;
        })
      }
      {...(full && !chosen.includes(key) && { hint: messages.threeAtMostRemove })}
    >
      {filled(messages.compare, {
        rankedName: <span class="unseen"> {rankedName(ranked, unit)}</span>,
      })}
    </CheckLine>
  );
  return (
    <Screen
      wide
      top={<CheckHead stored={stored} />}
      actions={
        comparing ? (
          <Button icon="back" onClick={() => setComparing(false)}>
            {messages.backToList}
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
              ? messages.tickTwoOrThree
              : messages.compareSideBySide({ compared: compared.length })}
          </Button>
        )
      }
    >
      <h1 ref={heading} tabIndex={-1}>
        {comparing ? messages.sideBySide : messages.whichStopFits}
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
          fittedStop={tried.fitted}
          unit={unit}
        />
      ) : (
        <>
          <p>{messages.everyStopOfLibrary}</p>
          <TriedStops tried={tried} unit={unit} choice={choice} />
          <Cautions raised={raised} />
          <p class="small">{certification}</p>
        </>
      )}
    </Screen>
  );
}
