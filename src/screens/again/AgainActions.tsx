import {
  finishReading,
  type HowDone,
  isRetaken,
  leaveWalk,
  type ReadingNow,
} from "../../records/againWalk.ts";
import { isBlank } from "../../records/earlierValues.ts";
import type { StoredCheck } from "../../records/storedCheck.ts";
import type { Change } from "../check/stepProps.ts";
import type { Step } from "../check/steps.ts";
import { Button } from "../parts/Button.tsx";
import { answerHref, goTo, stepHref } from "../router.ts";

/** Is this the step where the reading is taken? A missing limit is chosen first, then measured. */
export function isWalkStep(reading: string, step: string): boolean {
  const limits = /^(left|right)\.limits/.exec(reading)?.[0];
  return step === reading || (limits !== undefined && step.startsWith(limits));
}

/** The ways on from a reading that is being taken again. */
export function AgainActions({
  stored,
  now,
  step,
  all,
  change,
}: {
  stored: StoredCheck;
  now: ReadingNow;
  step: Step;
  all: readonly Step[];
  change: Change;
}) {
  const finish = (how: HowDone) => {
    change((current) => finishReading(current, how));
    goTo(stepHref(stored.id, "again"));
  };
  const toMeasure = all.find(
    ({ id, state }) =>
      now.before === null && id !== step.id && state === "todo" && isWalkStep(now.reading, id),
  );
  if (now.before === null) {
    return (
      <>
        <Button onClick={() => finish("passed")}>Skip</Button>
        {toMeasure && step.state === "done" ? (
          <Button look="main" onClick={() => goTo(stepHref(stored.id, toMeasure.id))}>
            Next
          </Button>
        ) : (
          <Button
            look="main"
            disabled={step.state !== "done" || step.unreadable}
            onClick={() => finish("taken")}
          >
            Go on
          </Button>
        )}
      </>
    );
  }
  if (isRetaken(stored)) {
    return (
      <>
        <Button
          onClick={() => {
            change(leaveWalk);
            goTo(answerHref(stored.id));
          }}
        >
          Answer
        </Button>
        <Button look="main" disabled={step.unreadable} onClick={() => finish("taken")}>
          Go on
        </Button>
      </>
    );
  }
  const blank = isBlank(stored.entries[now.reading]);
  return (
    <>
      <Button onClick={() => finish("passed")}>Skip</Button>
      <Button look="main" disabled={blank} onClick={() => finish("same")}>
        {blank ? "Type it to go on" : "Came out the same"}
      </Button>
    </>
  );
}
