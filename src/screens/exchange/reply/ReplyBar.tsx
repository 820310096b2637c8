import type { CheckStore } from "../../../storage/checkStore.ts";
import * as messages from "../../../words/compiled/screens/exchange/reply.ts";
import { answerHref, stepHref } from "../../addresses.ts";
import { Button, ButtonLink } from "../../parts/Button.tsx";
import { RetakeBar } from "../../remeasure/RetakeBar.tsx";
import { replyHref } from "./replyRoute.ts";
import { useReply } from "./useReply.ts";

export interface ReplyBarProps {
  readonly store: CheckStore;
  readonly id: string;
  readonly atAnswer: boolean;
}

/** Over a check that a desk asks about: which readings, which is next, and that it is to be sent again. */
export function ReplyBar({ store, id, atAnswer }: ReplyBarProps) {
  const reply = useReply(store, id);
  if (!reply || reply === "none" || reply.asked.length === 0) return null;
  const { asked } = reply;
  const next = asked.find(({ done }) => !done) ?? null;
  const done = asked.filter((each) => each.done).length;
  return (
    <RetakeBar
      label={messages.readingsAskedForAgain}
      state={next ? "unsure" : "ok"}
      words={
        next
          ? messages.askedAgainOfTaken({ done, asked: asked.length })
          : atAnswer
            ? messages.allReMeasuredNow
            : messages.allReMeasured
      }
    >
      <ButtonLink look="quiet" href={replyHref(id)}>
        {messages.reply}
      </ButtonLink>
      {next && <ButtonLink href={stepHref(id, next.step)}>{next.name}</ButtonLink>}
      {!next && !atAnswer && <ButtonLink href={answerHref(id)}>{messages.toAnswer}</ButtonLink>}
      {!next && atAnswer && <Button onClick={reply.close}>{messages.itIsSent}</Button>}
    </RetakeBar>
  );
}
