import { dateText } from "../../../records/check/checkName.ts";
import { completeRecord } from "../../../records/check/completeRecord.ts";
import type { StoredCheck } from "../../../records/check/storedCheck.ts";
import { readingsDigest } from "../../../records/review/readingsDigest.ts";
import type { Reply } from "../../../records/review/reply.ts";
import * as messages from "../../../words/compiled/screens/exchange/reply.ts";
import { Card } from "../../parts/Card.tsx";
import { Notice } from "../../parts/Notice.tsx";

const kindWords: { readonly [Kind in Reply["kind"]]: string } = {
  accept: messages.readingsAreAccepted,
  askAgain: messages.readingsAreToBe,
  otherPart: messages.anotherPartIsAdvised,
};

/** What a reply says of itself, and whether anybody can verify it. */
export function ReplyFacts({ reply, fromDesk }: { reply: Reply; fromDesk: boolean }) {
  const { from, vehicle, axle, kind, createdAt } = reply;
  return (
    <Card heading={messages.whatItSaysOf}>
      <dl class="facts">
        <dt>{messages.from}</dt>
        <dd>{from.trim() ? <bdi>{from}</bdi> : messages.noName}</dd>
        <dt>{messages.about}</dt>
        <dd>
          <bdi>{vehicle}</bdi>
          {messages.axle({ axle })}
        </dd>
        <dt>{messages.written}</dt>
        <dd>{dateText(createdAt)}</dd>
        <dt>{messages.saysThat}</dt>
        <dd>{kindWords[kind]}</dd>
      </dl>
      {fromDesk ? (
        <p>{messages.itCameFromReview}</p>
      ) : (
        <Notice tone="care">
          <p>{messages.fileOrLinkCant}</p>
        </Notice>
      )}
    </Card>
  );
}

/** "same": it answers the very readings that are here; "unknown": it does not say which it answers. */
export type Answers = "same" | "others" | "unknown";

export function answersOf({ answers }: Reply, stored: StoredCheck): Answers {
  if (answers === undefined) return "unknown";
  const completion = completeRecord(stored);
  return completion.ok && readingsDigest(completion.value) === answers ? "same" : "others";
}

const answersWords: { readonly [Which in Exclude<Answers, "same">]: string } = {
  others: messages.itAnswersOtherReadings,
  unknown: messages.itDoesNotSay,
};

/** That a reply does not belong to what is here now, where that is so. */
export function AnswersNotice({ answers }: { answers: Answers }) {
  if (answers === "same") return null;
  return (
    <Notice tone={answers === "others" ? "care" : "unsure"}>
      <p>{answersWords[answers]}</p>
    </Notice>
  );
}

export const besideReply = messages.computedHereFromYour;
