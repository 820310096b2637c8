import { limitOf } from "../../physics/readings/index.ts";
import type { StoredCheck } from "../../records/check/storedCheck.ts";
import { isBlank } from "../../records/remeasure/earlierValues.ts";
import { finishReading, isRetaken, leaveWalk } from "../../records/remeasure/remeasureWalk.ts";
import type { HowDone, ReadingNow } from "../../records/remeasure/underWay.ts";
import * as messages from "../../words/compiled/screens/remeasure.ts";
import { answerHref, goTo, stepHref } from "../addresses.ts";
import type { Change } from "../guide/stepProps.ts";
import type { Step } from "../guide/steps.ts";
import { Button } from "../parts/Button.tsx";

export interface WalkStep {
  readonly stored: StoredCheck;
  readonly now: ReadingNow;
  readonly step: Step;
  readonly all: readonly Step[];
  readonly change: Change;
}

/** Is this the step where the reading is taken? A missing limit is chosen first, then measured. */
export function isWalkStep(reading: string, step: string): boolean {
  const limit = limitOf(reading);
  return step === reading || (limit !== null && step.startsWith(`${limit.side}.limits`));
}

function finish({ stored, change }: WalkStep, how: HowDone): void {
  change((current) => finishReading(current, how));
  goTo(stepHref(stored.id, "again"));
}

/** The limit that was chosen just now and is not measured yet. */
function toMeasure({ now, step, all }: WalkStep): Step | undefined {
  return all.find(
    ({ id, state }) =>
      now.before === null && id !== step.id && state === "todo" && isWalkStep(now.reading, id),
  );
}

/** On from a reading that was taken, as the main button does; null while it was not. */
export function onward(walk: WalkStep): (() => void) | null {
  const { stored, now, step } = walk;
  const taken = now.before === null ? step.state === "done" : isRetaken(stored);
  if (!taken || step.unreadable) return null;
  const next = toMeasure(walk);
  return next ? () => goTo(stepHref(stored.id, next.id)) : () => finish(walk, "taken");
}

/** The ways on from a reading that is being taken again. */
export function RemeasureActions(walk: WalkStep) {
  const { stored, now, change } = walk;
  const goOn = onward(walk);
  const blank = isBlank(stored.entries[now.reading]);
  if (now.before !== null && !isRetaken(stored)) {
    return (
      <>
        <Button onClick={() => finish(walk, "passed")}>{messages.skip}</Button>
        <Button look="main" disabled={blank} onClick={() => finish(walk, "same")}>
          {blank ? messages.typeItToContinue : messages.cameOutSame}
        </Button>
      </>
    );
  }
  const leave = () => {
    change(leaveWalk);
    goTo(answerHref(stored.id));
  };
  return (
    <>
      {now.before === null ? (
        <Button onClick={() => finish(walk, "passed")}>{messages.skip}</Button>
      ) : (
        <Button onClick={leave}>{messages.answer}</Button>
      )}
      <Button look="main" disabled={goOn === null} onClick={() => goOn?.()}>
        {toMeasure(walk) ? messages.next : messages.goOn}
      </Button>
    </>
  );
}
