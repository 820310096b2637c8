import { useEffect, useMemo } from "preact/hooks";
import type { Assessor } from "../../compute/assessor.ts";
import type { Assessment } from "../../physics/fitment.ts";
import type { RemeasurePlan } from "../../physics/remeasure/index.ts";
import type { Sentence } from "../../physics/sentence.ts";
import { completeRecord } from "../../records/check/completeRecord.ts";
import { fitmentOf } from "../../records/check/fitmentOf.ts";
import type { StoredCheck } from "../../records/check/storedCheck.ts";
import { toolsAtHand } from "../../records/entry/toolsAtHand.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import {
  leaveWalk,
  openReading,
  startWalk,
  walkOf,
} from "../../records/remeasure/remeasureWalk.ts";
import type { DoubtBefore, RemeasureWalk } from "../../records/remeasure/underWay.ts";
import { sentenceText } from "../../saying/sentenceText.ts";
import { said, sentenceOf, worded } from "../../saying/texts.ts";
import * as messages from "../../words/compiled/screens/remeasure.ts";
import { answerHref, checksHref, goTo, stepHref } from "../addresses.ts";
import { verdictWithin } from "../assessment/stateWords.ts";
import { useAssessment } from "../assessment/useAssessment.ts";
import { useAssessor } from "../assessment/useAssessor.ts";
import type { Change } from "../guide/stepProps.ts";
import { stepFor, stepsOf } from "../guide/steps.ts";
import { Button, ButtonLink } from "../parts/Button.tsx";
import { Notice } from "../parts/Notice.tsx";
import { Screen, useHeadingFocus } from "../parts/Screen.tsx";
import { Forecast } from "./Forecast.tsx";
import { ReadingsToTake, type ReadingToTake } from "./ReadingsToTake.tsx";
import { lineName } from "./remeasureWords.ts";
import { useRemeasurePlan } from "./useRemeasurePlan.ts";

export interface RemeasureScreenProps {
  readonly stored: StoredCheck;
  readonly unit: LengthUnit;
  readonly change: Change;
  /** Another calculator than the worker's, where there is no worker. */
  readonly startAssessor?: () => Assessor;
}

/** Is what this walk was for decided? */
function isSettled(walk: RemeasureWalk | null, plan: RemeasurePlan): boolean {
  return plan.level === null || (walk?.level === "unsure" && plan.level === "care");
}

/** Between two readings of the walk: works out anew, and stops or goes to the next; before it, the list. */
export function RemeasureScreen({ stored, unit, change, startAssessor }: RemeasureScreenProps) {
  const assessor = useAssessor(startAssessor);
  const walk = walkOf(stored);
  const fitment = useMemo(() => {
    const completion = completeRecord(stored);
    return completion.ok ? fitmentOf(completion.value) : null;
  }, [stored.record, stored.entries]);
  const tools = useMemo(() => toolsAtHand(stored), [stored.entries]);
  const assessed = useAssessment(assessor, fitment, "remeasure");
  const assessment = assessed.state === "complete" ? assessed.assessment : null;
  const passed = useMemo(() => (walk?.done ?? []).map(({ reading }) => reading), [walk?.done]);
  const plan = useRemeasurePlan(assessor, fitment, assessment, tools, passed);
  const heading = useHeadingFocus(plan ? "plan" : "waiting");

  useEffect(() => {
    if (assessment && stored.lastVerdict !== assessment.verdict) {
      change((current) => ({ ...current, lastVerdict: assessment.verdict }));
    }
  }, [assessment]);

  const open = (made: RemeasurePlan, under: RemeasureWalk | null) => {
    const [item] = made.items;
    if (!item || made.level === null) return;
    const { level } = made;
    change((current) =>
      openReading(under ? current : startWalk(current, level), item, made.items.length, {
        said,
        worded,
      }),
    );
    goTo(stepHref(stored.id, stepFor(item.reading, stepsOf(stored)) ?? item.reading), {
      replace: under !== null,
    });
  };

  const goesOn =
    plan !== null && walk !== null && walk.now === null && walk.done.length > 0
      ? !isSettled(walk, plan) && plan.items.length > 0
      : false;
  useEffect(() => {
    if (goesOn && plan) open(plan, walk);
  }, [goesOn, plan]);

  const toAnswer = () => {
    change(leaveWalk);
    goTo(answerHref(stored.id));
  };
  const inMidst = walk?.now ?? null;
  const settled = plan !== null && isSettled(walk, plan);
  const first = plan?.items[0];

  return (
    <Screen
      top={
        <>
          <ButtonLink look="quiet" href={checksHref} icon="back" label={messages.allChecks} />
          <span class="screen-name">
            {stored.name || stored.record.vehicle?.label || messages.newCheck}
          </span>
        </>
      }
      actions={
        inMidst && !settled ? (
          <>
            <Button onClick={toAnswer}>{messages.stopWord}</Button>
            <ButtonLink look="main" href={stepHref(stored.id, inMidst.reading)}>
              {messages.goOn2({ lineName: lineName(stored, inMidst.reading) })}
            </ButtonLink>
          </>
        ) : plan && !settled && first && !goesOn ? (
          <>
            <Button onClick={toAnswer}>{messages.answer}</Button>
            <Button look="main" onClick={() => open(plan, walk)}>
              {messages.start({ lineName: lineName(stored, first.reading) })}
            </Button>
          </>
        ) : (
          <Button look={plan ? "main" : "plain"} onClick={toAnswer}>
            {messages.backToAnswer}
          </Button>
        )
      }
    >
      {assessed.state === "fault" ? (
        <Notice tone="unsure" live>
          <h1>{messages.notSureYet}</h1>
          <p>{sentenceText(assessed.fault.sentence, unit)}</p>
          {assessed.fault.reading && (
            <div class="row">
              <ButtonLink href={stepHref(stored.id, assessed.fault.reading)}>
                {messages.toThatReading}
              </ButtonLink>
            </div>
          )}
        </Notice>
      ) : plan === null || assessment === null || goesOn ? (
        <p class="later-waiting">{messages.workingOutWhatIs}</p>
      ) : (
        <>
          <h1 ref={heading} tabIndex={-1}>
            {settled
              ? messages.settled({ verdict: verdictWithin[assessment.verdict] })
              : messages.reMeasure}
          </h1>
          <Outcome settled={settled} assessment={assessment} plan={plan} walk={walk} unit={unit} />
          {walk && walk.done.length > 0 && (
            <section class="card" aria-labelledby="remeasure-done">
              <h2 id="remeasure-done">{messages.done}</h2>
              <ReadingsToTake readings={doneReadings(stored, walk)} />
            </section>
          )}
          {!settled && plan.items.length > 0 && <Forecast plan={plan} unit={unit} />}
        </>
      )}
    </Screen>
  );
}

const howWords = {
  taken: messages.taken,
  same: messages.cameOutSame2,
  passed: messages.skipped,
} as const;

function doneReadings(stored: StoredCheck, { done }: RemeasureWalk): ReadingToTake[] {
  return done.map(({ reading, how }) => ({
    id: reading,
    name: `${lineName(stored, reading)}: ${howWords[how]}`,
    href: null,
    done: how !== "passed",
  }));
}

function Outcome({
  settled,
  assessment,
  plan,
  walk,
  unit,
}: {
  settled: boolean;
  assessment: Assessment;
  plan: RemeasurePlan;
  walk: RemeasureWalk | null;
  unit: LengthUnit;
}) {
  const narrowed = walk?.just ? narrowedSentence(walk.just, assessment) : null;
  return (
    <Notice tone={assessment.verdict} live>
      <p>{sentenceText(assessment.reason, unit)}</p>
      {narrowed && <p>{sentenceText(narrowed, unit)}</p>}
      {settled && plan.level === "care" && <p>{messages.closerReadingMayStill}</p>}
      {!settled && plan.items.length === 0 && !plan.otherwise && (
        <p>{messages.noReadingLeftWould}</p>
      )}
      {!settled && plan.otherwise && <p>{sentenceText(plan.otherwise, unit)}</p>}
    </Notice>
  );
}

/** What the reading that was taken last did to the doubt. */
function narrowedSentence(
  { about, side, halfWidthMm }: DoubtBefore,
  { corners }: Assessment,
): Sentence | null {
  const corner = corners.find((each) => each.side === side);
  const interval =
    about === "reserve" ? corner?.intervals.reserveMm : corner?.intervals.wheelTravelToContactMm;
  if (!interval) return null;
  const words = about === "reserve" ? messages.reserve : messages.freeTravel;
  return sentenceOf(messages.marginOfErrorOf, {
    side,
    words,
    halfWidthMm: { kind: "length", value: halfWidthMm },
    interval: { kind: "length", value: (interval[1] - interval[0]) / 2 },
  });
}
