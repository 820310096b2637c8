import { useEffect, useState } from "preact/hooks";
import { takerOf } from "../../../engine/handsSeen.ts";
import type { CheckRecord } from "../../../records/check/checkRecord.ts";
import { type Decision, sharedDecisions } from "../../../records/review/decision.ts";
import type { Listed } from "../../../records/review/listedSubmission.ts";
import * as messages from "../../../words/compiled/screens/desk/shared.ts";
import { filled } from "../../filled.ts";
import { Button } from "../../parts/Button.tsx";
import { Dialog } from "../../parts/Dialog.tsx";
import { Notice } from "../../parts/Notice.tsx";
import { ReplyWays } from "../ReplyWays.tsx";
import { decisionWords, momentText } from "../words.ts";
import { isNotFetched } from "./notFetched.ts";
import { takeOrGiveBack } from "./rowWords.ts";
import type { Shared } from "./useShared.ts";

/** Shows others that this check is looked at here, for as long as it is open. */
export function useLooking(shared: Shared | null, checkId: string): void {
  const hand = shared?.hand;
  useEffect(() => {
    if (!hand) return;
    hand(checkId, "looks", true);
    return () => hand(checkId, "looks", false);
  }, [hand, checkId]);
}

/** Who else is at this check, and taking it. */
export function HandsHere({ shared, checkId }: { shared: Shared; checkId: string }) {
  const me = shared.state?.person;
  const hands = shared.hands.get(checkId) ?? [];
  const taker = takerOf(hands);
  const lookers = hands.filter(({ person }) => person !== me && person !== taker?.person);
  const mine = hands.some(({ person, does }) => person === me && does === "took");
  const toggle = () => takeOrGiveBack(shared, checkId);
  useEffect(() => {
    const key = (event: KeyboardEvent) => {
      const { target } = event;
      const typing = target instanceof Element && target.matches("input, textarea, select");
      if (event.key !== "t" || typing || event.ctrlKey || event.metaKey || event.altKey) return;
      event.preventDefault();
      toggle();
    };
    addEventListener("keydown", key);
    return () => removeEventListener("keydown", key);
  });
  return (
    <div class="desk-hands" role="status">
      {taker && taker.person !== me && (
        <Notice tone="care">
          <p>{filled(messages.hasTakenThisCheck, { person: <strong>{taker.person}</strong> })}</p>
        </Notice>
      )}
      {lookers.length > 0 && (
        <p>
          {messages.looksAtItNow({
            lookers: lookers.map(({ person }) => person).join(messages.and),
          })}
        </p>
      )}
      <Button pressed={mine} onClick={toggle}>
        {mine ? messages.takenByYouT : messages.takeItT}
      </Button>
    </div>
  );
}

/** What became of a decision at the shared desk, and of its reply. */
export function SharedReply({
  shared,
  record,
  decision,
}: {
  shared: Shared;
  record: CheckRecord;
  decision: Decision;
}) {
  const reply = shared.replies.get(decision.key);
  const waits = shared.waiting.some(({ id }) => id === decision.key);
  if (reply?.at) {
    return (
      <>
        <p data-reply={reply.fetchedAt ? "fetched" : "sent"}>
          {messages.replySentByHasFetchedAt({
            from: reply.from || decision.by,
            at: momentText(reply.at),
            hasFetchedAt: Boolean(reply.fetchedAt),
            fetchedAt: momentText(reply.fetchedAt ?? ""),
          })}
        </p>
        {isNotFetched(reply) && (
          <Notice tone="care">
            <p>{messages.phoneDidNotFetch}</p>
            <ReplyWays record={record} decision={decision} greeted />
          </Notice>
        )}
      </>
    );
  }
  if (decision.shared === undefined || waits) {
    return (
      <p data-reply="waiting">
        {decision.shared === undefined ? messages.savedHereSharedDesk : messages.replyIsOnIts}
      </p>
    );
  }
  return (
    <div class="stack-close">
      <p>{messages.replyIsNotSent}</p>
      <Button onClick={() => shared.sendReply(decision)}>{messages.sendReply}</Button>
    </div>
  );
}

/** Decisions on a version that had one already: told, and not sent. */
export function DecidedTwice({
  decisions,
  submission,
}: {
  decisions: readonly Decision[];
  submission: string;
}) {
  const { twice } = sharedDecisions(decisions, submission);
  return (
    <>
      {twice.map(({ key, kind, by, at, reply }) => (
        <Notice key={key} tone="care">
          <p data-twice={by}>
            <strong>{messages.decidedTwice}</strong>{" "}
            {messages.byAfterAnotherIt({ kind: decisionWords[kind], by, at: momentText(at) })}
          </p>
          <pre class="desk-reply">{reply}</pre>
        </Notice>
      ))}
    </>
  );
}

/** Who sent a check, by what the engine knows; and taking out what is personal of it. */
export function SentByPhone({ shared, submission }: { shared: Shared; submission: Listed }) {
  const [asking, setAsking] = useState(false);
  const sent = shared.sentBy.get(submission.key);
  if (!sent) return null;
  const going = shared.waiting.some(({ key }) => key === `erase ${submission.checkId}`);
  return (
    <section class="card" aria-labelledby="sent-by-heading">
      <h2 id="sent-by-heading">{messages.sentByPhone}</h2>
      <p class="small">
        {filled(messages.phoneNoInInbox, {
          sender: <code>{`${sent.sender.slice(0, 8)} …`}</code>,
          sequence: sent.sequence,
        })}
      </p>
      {going ? (
        <p role="status">{messages.namesNotesAndPhotos}</p>
      ) : (
        <Button look="danger" onClick={() => setAsking(true)}>
          {messages.eraseNamesAndPhotos}
        </Button>
      )}
      {asking && (
        <Dialog
          heading={messages.eraseNamesAndPhotos2}
          onLeave={() => setAsking(false)}
          actions={
            <>
              <Button onClick={() => setAsking(false)}>{messages.cancel}</Button>
              <Button
                look="danger"
                onClick={() => {
                  setAsking(false);
                  shared.erase(submission.checkId);
                }}
              >
                {messages.erase}
              </Button>
            </>
          }
        >
          <p>{messages.nameContactNotesAnd}</p>
        </Dialog>
      )}
    </section>
  );
}
