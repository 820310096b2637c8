import { useMemo } from "preact/hooks";
import type { Assessor } from "../../../compute/assessor.ts";
import { completeRecord } from "../../../records/check/completeRecord.ts";
import type { LengthUnit } from "../../../records/entry/units.ts";
import type { CheckStore } from "../../../storage/checkStore.ts";
import { answerHref, checksHref, goTo, stepHref } from "../../addresses.ts";
import { Button, ButtonLink } from "../../parts/Button.tsx";
import { Screen, useHeadingFocus } from "../../parts/Screen.tsx";
import { ReadingsToTake } from "../../remeasure/ReadingsToTake.tsx";
import { PhoneVerdict } from "../PhoneVerdict.tsx";
import { AnswersNotice, answersOf, besideReply, ReplyFacts } from "./ReplyFacts.tsx";
import { useReply } from "./useReply.ts";
import "./reply.css";
import { OneMoment } from "../../parts/OneMoment.tsx";

export interface ReplyPlaceProps {
  readonly store: CheckStore;
  readonly id: string;
  readonly unit: LengthUnit;
  readonly startAssessor?: () => Assessor;
}

/** What the desk replied to a check on this phone, and the readings that it asks for. */
export function ReplyPlace({ store, id, unit, startAssessor }: ReplyPlaceProps) {
  const reply = useReply(store, id);
  const stored = reply && reply !== "none" ? reply.stored : null;
  const record = useMemo(() => {
    const completion = stored && completeRecord(stored);
    return completion?.ok ? completion.value : null;
  }, [stored]);
  const heading = useHeadingFocus(reply && reply !== "none" ? reply.kept.id : `${reply}`);
  if (!reply) return <OneMoment />;
  if (reply === "none") {
    return (
      <Screen
        top={
          <>
            <ButtonLink look="quiet" href={checksHref} icon="back" label="All checks" />
            <span class="screen-name">Reply</span>
          </>
        }
        actions={
          <ButtonLink look="main" href={checksHref}>
            All checks
          </ButtonLink>
        }
      >
        <h1 ref={heading} tabIndex={-1}>
          There is no open reply to this check
        </h1>
        <p>It was read already, or the check is not on this phone.</p>
      </Screen>
    );
  }
  const { asked, kept } = reply;
  const next = asked.find(({ done }) => !done) ?? null;
  const { vehicle, axle, text } = kept.reply;
  return (
    <Screen
      top={
        <>
          <ButtonLink look="quiet" href={checksHref} icon="back" label="All checks" />
          <span class="screen-name">Reply</span>
        </>
      }
      actions={
        asked.length === 0 ? (
          <Button
            look="main"
            onClick={async () => {
              await reply.close();
              goTo(answerHref(id), { replace: true });
            }}
          >
            Read; to the answer
          </Button>
        ) : next ? (
          <ButtonLink look="main" href={stepHref(id, next.step)}>
            Re-measure: {next.name}
          </ButtonLink>
        ) : (
          <ButtonLink look="main" href={answerHref(id)}>
            To the answer, to send it again
          </ButtonLink>
        )
      }
    >
      <h1 ref={heading} tabIndex={-1}>
        Reply about <bdi>{vehicle}</bdi>, {axle} axle
      </h1>
      {kept.reply.kind !== "askAgain" && (
        <AnswersNotice answers={answersOf(kept.reply, reply.stored)} />
      )}
      {record && (
        <PhoneVerdict
          record={record}
          unit={unit}
          words={besideReply}
          startAssessor={startAssessor}
        />
      )}
      {asked.length > 0 && (
        <section class="card" aria-labelledby="reply-readings">
          <h2 id="reply-readings">Readings to re-measure</h2>
          <ReadingsToTake
            readings={asked.map(({ id: reading, name, step, done }) => ({
              id: reading,
              name,
              href: stepHref(id, step),
              done,
            }))}
            more={({ id: reading, done }) =>
              !done && (
                <Button look="quiet" onClick={() => reply.markSame(reading)}>
                  Re-measured, came out the same
                </Button>
              )
            }
          />
        </section>
      )}
      <section class="card" aria-labelledby="reply-text">
        <h2 id="reply-text">What they wrote</h2>
        <p class="reply-text" dir="auto">
          {text}
        </p>
      </section>
      <ReplyFacts reply={kept.reply} fromDesk={kept.fromDesk ?? false} />
    </Screen>
  );
}
