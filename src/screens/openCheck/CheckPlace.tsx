import { useCallback, useEffect, useLayoutEffect, useMemo, useRef, useState } from "preact/hooks";
import type { Fault } from "../../physics/outcome.ts";
import type { Sentence } from "../../physics/sentence.ts";
import type { ListedCheck } from "../../records/check/listedCheck.ts";
import { changeProgress, type StoredCheck } from "../../records/check/storedCheck.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import { checkAgain } from "../../records/filling/fitted.ts";
import { factsOfJob, othersOfJob } from "../../records/filling/job.ts";
import { withFrictionBetween } from "../../records/filling/movedBetween.ts";
import { unitOf } from "../../records/filling/ownUnit.ts";
import { stampedBy } from "../../records/filling/whoMeasured.ts";
import { withEstimates } from "../../records/filling/withEstimates.ts";
import { isBlank } from "../../records/remeasure/earlierValues.ts";
import { putBack, walkOf } from "../../records/remeasure/remeasureWalk.ts";
import { inModelUnits } from "../../saying/modelUnits.ts";
import { sentenceText } from "../../saying/sentenceText.ts";
import { keepJobAlike } from "../../storage/jobs.ts";
import { createKeeper, type Keeper, type KeepState } from "../../storage/keeper.ts";
import * as messages from "../../words/compiled/screens/openCheck.ts";
import { answerHref, checksHref, goTo, stepHref } from "../addresses.ts";
import type { AnswerScreenProps } from "../answer/AnswerScreen.tsx";
import { StepScreen } from "../check/StepScreen.tsx";
import type { ExplainScreenProps } from "../explaining/ExplainScreen.tsx";
import type { FittedScreenProps } from "../fitted/FittedScreen.tsx";
import type { FullTravelScreenProps } from "../fullTravel/FullTravelScreen.tsx";
import { isPractised, noteMeasured } from "../guide/practice.ts";
import {
  explainStep,
  firstOpenStep,
  fittedStep,
  fullTravelStep,
  secondStep,
  stepFor,
  stepsOf,
} from "../guide/steps.ts";
import { tellKept } from "../keptSignal.ts";
import { ButtonLink } from "../parts/Button.tsx";
import { later } from "../parts/later.tsx";
import { Notice } from "../parts/Notice.tsx";
import { Screen } from "../parts/Screen.tsx";
import { measurerNow, type Preferences, preferences } from "../preferences.ts";
import { loadReferencePack } from "../referencePack.ts";
import type { RemeasureScreenProps } from "../remeasure/RemeasureScreen.tsx";
import { noteKept } from "../saved/savedCount.ts";
import type { SecondPersonScreenProps } from "../secondPerson/SecondPersonScreen.tsx";
import type { OpenedStore } from "../useStore.ts";
import "../styles/check.css";
import { isAdviceAlone } from "../../records/check/advised.ts";
import { completeRecord } from "../../records/check/completeRecord.ts";
import { withoutSheet } from "../../records/check/withoutSheet.ts";
import type { ReadingNow } from "../../records/remeasure/underWay.ts";
import { OneMoment } from "../parts/OneMoment.tsx";
import { referencePack } from "../referencePack.ts";

const FullTravelScreen = later<FullTravelScreenProps>(
  async () => (await import("../fullTravel/FullTravelScreen.tsx")).default,
);

const AnswerScreen = later<AnswerScreenProps>(
  async () => (await import("../answer/AnswerScreen.tsx")).default,
);

const FittedScreen = later<FittedScreenProps>(
  async () => (await import("../fitted/FittedScreen.tsx")).FittedScreen,
);

const SecondPersonScreen = later<SecondPersonScreenProps>(
  async () => (await import("../secondPerson/SecondPersonScreen.tsx")).SecondPersonScreen,
);

const ExplainScreen = later<ExplainScreenProps>(
  async () => (await import("../explaining/ExplainScreen.tsx")).ExplainScreen,
);

const RemeasureScreen = later<RemeasureScreenProps>(
  async () => (await import("../remeasure/RemeasureScreen.tsx")).RemeasureScreen,
);

export interface CheckPlaceProps {
  readonly opened: OpenedStore;
  readonly id: string;
  /** A step, the answer, or null for where the check was left. */
  readonly place: string | null;
  readonly preferences: Preferences;
}

type Loaded =
  | { readonly state: "loading" }
  | { readonly state: "gone"; readonly sentence: Sentence | null }
  | { readonly state: "here"; readonly stored: StoredCheck };

/** After a change: estimates made anew, and no verdict left over that belongs to other readings. */
function agreeing(before: StoredCheck, after: StoredCheck, unit: LengthUnit): StoredCheck {
  if (after === before || isAdviceAlone(before, after)) return after;
  const estimated = withFrictionBetween(withEstimates(after, unit, referencePack(), inModelUnits));
  if (estimated.record === before.record || after.lastVerdict !== before.lastVerdict) {
    return estimated;
  }
  const { lastVerdict: _, ...rest } = estimated;
  return rest;
}

function useCheck(opened: OpenedStore, id: string) {
  const { store } = opened;
  const [loaded, setLoaded] = useState<Loaded>({ state: "loading" });
  const [kept, setKept] = useState<KeepState>("kept");
  const current = useRef<StoredCheck | null>(null);
  const keeper = useRef<Keeper | null>(null);

  // Fetched before "One moment" is painted, not after it.
  useLayoutEffect(() => {
    let left = false;
    const take = (stored: StoredCheck) => {
      current.current = stored;
      setLoaded({ state: "here", stored });
    };
    const load = async () => {
      const before = current.current;
      // Its steps and estimates go by the pack in use.
      const [found] = await Promise.all([store.get(id), loadReferencePack()]);
      // What was typed meanwhile is joined with the other tab's as it is kept.
      if (left || current.current !== before) return;
      if (!found.ok) setLoaded({ state: "gone", sentence: found.fault.sentence });
      else if (!found.value || found.value.deletedAt) setLoaded({ state: "gone", sentence: null });
      else {
        take(found.value);
        // Left before it could be kept: tried again, and said if it fails again.
        if (store.unkept().some((held) => held.id === id)) created.keep(found.value);
        else if (!opened.fault) noteKept();
      }
    };
    const created = createKeeper(store, {
      onState: (state) => {
        setKept(state);
        if (state === "kept") tellKept();
      },
      onJoined: take,
    });
    keeper.current = created;
    // A new store under an open check: what is on the screen goes into it.
    if (current.current) created.keep(current.current);
    else load();
    const leave = store.subscribe((change) => {
      if (change.id === id && created.state === "kept") load();
    });
    return () => {
      left = true;
      leave();
      created.dispose();
    };
  }, [store, opened.fault, id]);

  const change = useCallback((update: (stored: StoredCheck) => StoredCheck) => {
    const before = current.current;
    if (!before) return;
    const typed = stampedBy(before, update(before), measurerNow());
    const after = agreeing(before, typed, unitOf(typed) ?? preferences().length);
    if (after === before) return;
    current.current = after;
    setLoaded({ state: "here", stored: after });
    keeper.current?.keep(after);
  }, []);

  const tryAgain = useCallback(() => {
    keeper.current?.flush();
  }, []);

  return { loaded, kept, change, tryAgain };
}

/** The other checks of a job on this phone, as long as they are wanted. */
function useOthersOfJob(
  { store }: OpenedStore,
  stored: StoredCheck | null,
): readonly ListedCheck[] {
  const [listed, setListed] = useState<readonly ListedCheck[]>([]);
  const job = stored?.record.job?.id;
  useEffect(() => {
    if (job === undefined) return;
    let left = false;
    const load = async () => {
      const all = await store.list();
      if (!left && all.ok) setListed(all.value);
    };
    load();
    const leave = store.subscribe(load);
    return () => {
      left = true;
      leave();
    };
  }, [store, job]);
  return useMemo(() => (stored ? othersOfJob(stored, listed) : []), [stored, listed]);
}

/** What a step changed of a job's name, number or customer is in its other checks once it is left. */
function useJobAlike({ store }: OpenedStore, stored: StoredCheck | null, step: string | null) {
  const job = stored?.record.job;
  const facts = job ? JSON.stringify(factsOfJob(job)) : "";
  const latest = useRef({ job, facts });
  latest.current = { job, facts };
  useEffect(() => {
    const before = latest.current.facts;
    return () => {
      const { job: left, facts: now } = latest.current;
      if (left && step !== null && now !== before) keepJobAlike(store, left);
    };
  }, [store, step]);
}

function placeOf(stored: StoredCheck, place: string | null): string {
  const all = stepsOf(stored);
  const wanted = place ?? stored.progress.step;
  if (wanted === fullTravelStep || wanted === fittedStep || wanted === secondStep) return wanted;
  if (wanted === "answer" || wanted === "again" || wanted === explainStep) {
    const completion = completeRecord(stored);
    const hasAnswer =
      completion.ok || (wanted === "answer" && withoutSheet(stored, completion) !== null);
    return hasAnswer ? wanted : firstOpenStep(all);
  }
  return (wanted && stepFor(wanted, all)) || firstOpenStep(all);
}

function stepOfReading(stored: StoredCheck, { reading }: ReadingNow): string | null {
  return stepFor(reading, stepsOf(stored));
}

/** One check on this phone: its steps and its answer. */
export function CheckPlace({ opened, id, place, preferences: usual }: CheckPlaceProps) {
  const { loaded, kept, change, tryAgain } = useCheck(opened, id);
  const stored = loaded.state === "here" ? loaded.stored : null;
  const unit = stored && unitOf(stored);
  const wanted = unit === null ? usual : { ...usual, length: unit };
  const shown = stored && placeOf(stored, place);

  // A reading emptied to be taken anew is not left empty behind one's back.
  const now = stored && walkOf(stored)?.now;
  const away =
    stored && now && isBlank(stored.entries[now.reading]) && shown !== stepOfReading(stored, now);
  useEffect(() => {
    if (away) change(putBack);
  }, [away, change]);

  useEffect(() => {
    if (!shown) return;
    const href = shown === "answer" ? answerHref(id) : stepHref(id, shown);
    if (shown !== place) goTo(href, { replace: true, within: stepHref(id) });
    change((before) =>
      before.progress.step === shown ? before : changeProgress(before, { step: shown }),
    );
  }, [shown, place, id, change]);

  useLayoutEffect(() => {
    const { dataset } = document.documentElement;
    if (isPractised()) dataset.practised = "";
    return () => {
      delete dataset.practised;
    };
  }, [wanted.explain]);

  const atAnswer = shown === "answer";
  const shownBefore = useRef<string | null>(null);
  useEffect(() => {
    if (atAnswer && shownBefore.current === "finish") noteMeasured(id);
    shownBefore.current = shown;
  }, [shown, atAnswer, id]);
  useEffect(() => {
    if (!atAnswer) return;
    // In the middle of a reading nobody wants to be asked for leave to store it.
    const ask = async () => (await import("../saved/persistence.ts")).askOnceWorthKeeping();
    ask().catch(() => undefined);
  }, [atAnswer]);

  const others = useOthersOfJob(opened, atAnswer ? stored : null);
  useJobAlike(opened, stored, shown);

  const otherAxle = async (): Promise<Fault | null> => {
    if (!stored) return null;
    const { beginOtherAxle } = await import("../job/beginOtherAxle.ts");
    const begun = await beginOtherAxle(opened.store, stored);
    return begun.ok ? null : begun.fault;
  };

  const again = async (): Promise<Fault | null> => {
    if (!stored) return null;
    const { before, after } = checkAgain(stored, referencePack(), wanted.length, inModelUnits);
    const outcome = await opened.store.put(after);
    if (!outcome.ok) return outcome.fault;
    change(() => before);
    goTo(stepHref(after.id));
    return null;
  };

  const go = useCallback((step: string) => goTo(stepHref(id, step)), [id]);

  if (loaded.state === "loading") return <OneMoment />;
  if (!stored) {
    const sentence = loaded.state === "gone" ? loaded.sentence : null;
    return (
      <Screen
        top={<span class="screen-name brand">{messages.stopfit}</span>}
        actions={
          <ButtonLink look="main" href={checksHref}>
            {messages.allChecks}
          </ButtonLink>
        }
      >
        <h1>{messages.thisCheckIsNot}</h1>
        <Notice tone="care" live>
          <p>{sentence ? sentenceText(sentence, wanted.length) : messages.itWasDeletedOr}</p>
        </Notice>
      </Screen>
    );
  }
  if (shown === "answer") {
    return (
      <AnswerScreen
        stored={stored}
        unit={wanted.length}
        go={go}
        onChange={(changed) => change(() => changed)}
        job={{ others, onOtherAxle: otherAxle }}
      />
    );
  }
  if (shown === explainStep)
    return (
      <ExplainScreen
        stored={stored}
        unit={wanted.length}
        onChange={(changed) => change(() => changed)}
      />
    );
  if (shown === "again") {
    return <RemeasureScreen stored={stored} unit={wanted.length} change={change} />;
  }
  const keeping = {
    kept: opened.fault ? { notKept: opened.fault.sentence } : kept,
    tryAgain: () => {
      tryAgain();
      if (opened.fault) opened.tryAgain();
    },
  };
  if (shown === fullTravelStep) {
    return (
      <FullTravelScreen stored={stored} change={change} preferences={wanted} go={go} {...keeping} />
    );
  }
  if (shown === fittedStep) {
    return (
      <FittedScreen
        stored={stored}
        change={change}
        preferences={wanted}
        onAgain={again}
        {...keeping}
      />
    );
  }
  if (shown === secondStep) {
    return <SecondPersonScreen stored={stored} change={change} preferences={wanted} {...keeping} />;
  }
  return (
    <StepScreen
      stored={stored}
      place={shown ?? ""}
      change={change}
      preferences={wanted}
      {...keeping}
    />
  );
}
