import { useEffect, useState } from "preact/hooks";
import { takerOf } from "../../../engine/handsSeen.ts";
import type { CheckRecord } from "../../../records/check/checkRecord.ts";
import { type Decision, sharedDecisions } from "../../../records/review/decision.ts";
import type { Listed } from "../../../records/review/listedSubmission.ts";
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
          <p>
            <strong>{taker.person}</strong> has taken this check.
          </p>
        </Notice>
      )}
      {lookers.length > 0 && (
        <p>{lookers.map(({ person }) => person).join(" and ")} looks at it now, too.</p>
      )}
      <Button pressed={mine} onClick={toggle}>
        {mine ? "Taken by you (T gives it back)" : "Take it (T)"}
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
          Reply sent by {reply.from || decision.by}, {momentText(reply.at)}.{" "}
          {reply.fetchedAt
            ? `Fetched by the phone ${momentText(reply.fetchedAt)}.`
            : "Not fetched yet."}
        </p>
        {isNotFetched(reply) && (
          <Notice tone="care">
            <p>The phone did not fetch it for two days. Write to them another way:</p>
            <ReplyWays record={record} decision={decision} greeted />
          </Notice>
        )}
      </>
    );
  }
  if (decision.shared === undefined || waits) {
    return (
      <p data-reply="waiting">
        {decision.shared === undefined
          ? "Saved here; the shared desk is told once it is reached. The reply goes after that."
          : "The reply is on its way."}
      </p>
    );
  }
  return (
    <div class="stack-close">
      <p>The reply is not sent yet.</p>
      <Button onClick={() => shared.sendReply(decision)}>Send the reply</Button>
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
            <strong>Decided twice.</strong> {decisionWords[kind]} by {by}, {momentText(at)}, after
            another. It does not stand, and its reply was not sent:
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
      <h2 id="sent-by-heading">Sent by a phone</h2>
      <p class="small">
        Phone <code>{`${sent.sender.slice(0, 8)} …`}</code>, no. {sent.sequence} in the inbox. Its
        replies reach only this phone. Who holds it, nobody has checked: the name is what was typed
        there. A person of the review desk is known by a credential.
      </p>
      {going ? (
        <p role="status">Names, notes and photos are being erased.</p>
      ) : (
        <Button look="danger" onClick={() => setAsking(true)}>
          Erase names and photos
        </Button>
      )}
      {asking && (
        <Dialog
          heading="Erase names and photos?"
          onLeave={() => setAsking(false)}
          actions={
            <>
              <Button onClick={() => setAsking(false)}>Cancel</Button>
              <Button
                look="danger"
                onClick={() => {
                  setAsking(false);
                  shared.erase(submission.checkId);
                }}
              >
                Erase
              </Button>
            </>
          }
        >
          <p>
            Name, contact, notes and photos of this check go from the shared desk and from every
            desk, for good. Readings, decisions and replies stay. Saved backups still have them.
          </p>
        </Dialog>
      )}
    </section>
  );
}
