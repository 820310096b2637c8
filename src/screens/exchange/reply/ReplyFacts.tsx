import { dateText } from "../../../records/check/checkName.ts";
import { completeRecord } from "../../../records/check/completeRecord.ts";
import type { StoredCheck } from "../../../records/check/storedCheck.ts";
import { readingsDigest } from "../../../records/review/readingsDigest.ts";
import type { Reply } from "../../../records/review/reply.ts";
import { Card } from "../../parts/Card.tsx";
import { Notice } from "../../parts/Notice.tsx";

const kindWords: { readonly [Kind in Reply["kind"]]: string } = {
  accept: "the readings are accepted",
  askAgain: "readings are to be re-measured",
  otherPart: "another part is advised",
};

/** What a reply says of itself, and whether anybody can verify it. */
export function ReplyFacts({ reply, fromDesk }: { reply: Reply; fromDesk: boolean }) {
  const { from, vehicle, axle, kind, createdAt } = reply;
  return (
    <Card heading="What it says of itself">
      <dl class="facts">
        <dt>From</dt>
        <dd>{from.trim() ? <bdi>{from}</bdi> : "no name"}</dd>
        <dt>About</dt>
        <dd>
          <bdi>{vehicle}</bdi>, {axle} axle
        </dd>
        <dt>Written</dt>
        <dd>{dateText(createdAt)}</dd>
        <dt>Says that</dt>
        <dd>{kindWords[kind]}</dd>
      </dl>
      {fromDesk ? (
        <p>
          It came from the review desk itself: only people of the review desk can put a reply there.
        </p>
      ) : (
        <Notice tone="care">
          <p>
            A file or a link can't prove who wrote it. Go by it only if you know where it came from.
          </p>
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
  others:
    "It answers other readings than those that are here now: they were changed since, or it is about another version.",
  unknown: "It does not say which readings it answers. They may have changed since.",
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

export const besideReply =
  "Computed here from your readings. A reply can't change it; it never makes a stop fit that does not.";
