import { useMemo } from "preact/hooks";
import type { Assessor } from "../../../compute/assessor.ts";
import { completeRecord } from "../../../records/check/completeRecord.ts";
import type { LengthUnit } from "../../../records/entry/units.ts";
import type { CheckStore } from "../../../storage/checkStore.ts";
import * as messages from "../../../words/compiled/screens/exchange/reply.ts";
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
            <ButtonLink look="quiet" href={checksHref} icon="back" label={messages.allChecks} />
            <span class="screen-name">{messages.reply2}</span>
          </>
        }
        actions={
          <ButtonLink look="main" href={checksHref}>
            {messages.allChecks}
          </ButtonLink>
        }
      >
        <h1 ref={heading} tabIndex={-1}>
          {messages.thereIsNoOpen}
        </h1>
        <p>{messages.itWasReadAlready}</p>
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
          <ButtonLink look="quiet" href={checksHref} icon="back" label={messages.allChecks} />
          <span class="screen-name">{messages.reply2}</span>
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
            {messages.readToAnswer}
          </Button>
        ) : next ? (
          <ButtonLink look="main" href={stepHref(id, next.step)}>
            {messages.reMeasure({ name: next.name })}
          </ButtonLink>
        ) : (
          <ButtonLink look="main" href={answerHref(id)}>
            {messages.toAnswerToSend}
          </ButtonLink>
        )
      }
    >
      <h1 ref={heading} tabIndex={-1}>
        {messages.replyAbout} <bdi>{vehicle}</bdi>
        {messages.axle({ axle })}
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
          <h2 id="reply-readings">{messages.readingsToReMeasure}</h2>
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
                  {messages.reMeasuredCameOut}
                </Button>
              )
            }
          />
        </section>
      )}
      <section class="card" aria-labelledby="reply-text">
        <h2 id="reply-text">{messages.whatTheyWrote}</h2>
        <p class="reply-text" dir="auto">
          {text}
        </p>
      </section>
      <ReplyFacts reply={kept.reply} fromDesk={kept.fromDesk ?? false} />
    </Screen>
  );
}
