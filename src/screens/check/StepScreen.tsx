import { useEffect, useState } from "preact/hooks";
import { completeRecord } from "../../records/check/completeRecord.ts";
import { changeProgress, type StoredCheck } from "../../records/check/storedCheck.ts";
import { withoutSheet } from "../../records/check/withoutSheet.ts";
import { walkOf } from "../../records/remeasure/remeasureWalk.ts";
import type { KeepState } from "../../storage/keeper.ts";
import * as messages from "../../words/compiled/screens/check.ts";
import { answerHref, checksHref, goTo, stepHref } from "../addresses.ts";
import { besideStep } from "../guide/shortWalk.ts";
import { leftSide, rightSide } from "../guide/step.ts";
import type { Change } from "../guide/stepProps.ts";
import { cautionsHold, headingOf, type Step, stepsOf } from "../guide/steps.ts";
import { Button, ButtonLink } from "../parts/Button.tsx";
import { Screen, useHeadingFocus } from "../parts/Screen.tsx";
import type { Preferences } from "../preferences.ts";
import { BeforeValues } from "../remeasure/BeforeValues.tsx";
import { EarlierReadings } from "../remeasure/EarlierReadings.tsx";
import { isWalkStep, onward, RemeasureActions } from "../remeasure/RemeasureActions.tsx";
import { RemeasureBar } from "../remeasure/RemeasureBar.tsx";
import { LiveVerdict } from "./liveVerdict/LiveVerdict.tsx";
import { OverviewBeside, OverviewDialog } from "./Overview.tsx";
import { ProgressBar } from "./ProgressBar.tsx";
import { NotSaved, SavedLine } from "./SavedLine.tsx";
import { StepActions } from "./StepActions.tsx";
import { StepContent } from "./StepContent.tsx";
import { WhoNow } from "./WhoNow.tsx";

interface Props {
  readonly stored: StoredCheck;
  readonly place: string;
  readonly change: Change;
  readonly preferences: Preferences;
  readonly kept: KeepState;
  readonly tryAgain: () => void;
}

/** Steps at the vehicle wait until the cautions have been read. */
function waitsForCautions(stored: StoredCheck, step: Step): boolean {
  const atTheVehicle = step.section === leftSide || step.section === rightSide;
  return atTheVehicle && !cautionsHold(stored);
}

function nameOfCheck(stored: StoredCheck): string {
  return stored.name || stored.record.vehicle?.label || messages.newCheck;
}

export function StepScreen({ stored, place, change, preferences, kept, tryAgain }: Props) {
  const [overview, setOverview] = useState(false);
  /** The step that waits for the cautions. */
  const [waiting, setWaiting] = useState<string | null>(null);
  const all = stepsOf(stored);
  const at = Math.max(
    0,
    all.findIndex((step) => step.id === place),
  );
  const step = all[at];
  const heading = useHeadingFocus(place);
  const waits = step !== undefined && waitsForCautions(stored, step);
  useEffect(() => {
    if (!waits) return;
    setWaiting(place);
    goTo(stepHref(stored.id, "cautions"), { replace: true, within: stepHref(stored.id) });
  }, [waits, place, stored.id]);
  if (!step || waits) return null;

  const go = (id: string) => {
    setOverview(false);
    goTo(stepHref(stored.id, id));
  };
  const { before, after } = besideStep(stored, all, at);
  const completion = completeRecord(stored);
  const complete = completion.ok;
  const walk = walkOf(stored);
  const retaken = walk?.now && isWalkStep(walk.now.reading, step.id) ? walk.now : null;

  const next = () => {
    if (step.id === "cautions" && waiting) {
      setWaiting(null);
      go(waiting);
    } else if (after) {
      go(after.id);
    }
  };
  const pass = () => {
    if (step.state === "todo") {
      change((current) =>
        changeProgress(current, {
          skipped: [...new Set([...current.progress.skipped, step.id])],
        }),
      );
    }
    next();
  };

  return (
    <Screen
      wide
      top={
        <>
          <ButtonLink look="quiet" href={checksHref} icon="back" label={messages.allChecks} />
          <span class="screen-name">{nameOfCheck(stored)}</span>
          <SavedLine kept={kept} />
          <span class="narrow-only">
            <Button
              look="quiet"
              icon="steps"
              label={messages.allSteps}
              onClick={() => setOverview(true)}
            />
          </span>
        </>
      }
      below={
        walk?.now ? (
          <>
            <RemeasureBar
              stored={stored}
              walk={walk}
              here={retaken ? "reading" : step.id === "cautions" ? "cautions" : "elsewhere"}
              change={change}
            />
            {retaken && <LiveVerdict key={stored.id} stored={stored} />}
          </>
        ) : (
          <>
            <ProgressBar all={all} at={at} />
            {step.id !== "finish" && <LiveVerdict key={stored.id} stored={stored} />}
          </>
        )
      }
      actions={
        retaken ? (
          <RemeasureActions stored={stored} now={retaken} step={step} all={all} change={change} />
        ) : (
          <>
            {before && <Button icon="back" label={messages.back} onClick={() => go(before.id)} />}
            {complete && step.id !== "finish" && (
              <ButtonLink href={answerHref(stored.id)}>{messages.answer}</ButtonLink>
            )}
            {after && (
              <StepActions
                stored={stored}
                change={change}
                step={step}
                onNext={next}
                onPass={pass}
              />
            )}
            {step.id === "finish" && (
              <FinishAction
                ready={complete}
                sheetless={withoutSheet(stored, completion) !== null}
                onAnswer={() => goTo(answerHref(stored.id))}
              />
            )}
          </>
        )
      }
    >
      {overview && (
        <OverviewDialog all={all} at={at} onGo={go} onLeave={() => setOverview(false)} />
      )}
      <div class="step-columns">
        <OverviewBeside all={all} at={at} onGo={go} />
        <div class="stack step-content" data-step={step.id}>
          <NotSaved kept={kept} stored={stored} tryAgain={tryAgain} />
          <h1 ref={heading} tabIndex={-1}>
            {headingOf(step)}
          </h1>
          {step.reading && <WhoNow />}
          {retaken && (
            <BeforeValues stored={stored} now={retaken} change={change} unit={preferences.length} />
          )}
          <StepContent
            key={step.id}
            stored={stored}
            change={change}
            step={step}
            all={all}
            preferences={preferences}
            go={go}
            next={() => {
              if (retaken) onward({ stored, now: retaken, step, all, change })?.();
              else if (step.state === "done" && !step.unreadable) next();
            }}
            waiting={all.find(({ id }) => id === waiting)?.name}
          />
          {step.reading && <EarlierReadings stored={stored} id={step.reading} />}
        </div>
      </div>
    </Screen>
  );
}

function FinishAction({
  ready,
  sheetless,
  onAnswer,
}: {
  ready: boolean;
  /** Nothing is missing but the stop's test sheet. */
  sheetless: boolean;
  onAnswer: () => void;
}) {
  return (
    <Button look="main" disabled={!ready && !sheetless} onClick={onAnswer}>
      {ready
        ? messages.showAnswer
        : sheetless
          ? messages.answerWithoutTestSheet
          : messages.notCompleteYet}
    </Button>
  );
}
