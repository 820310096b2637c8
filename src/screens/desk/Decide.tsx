import { useRef, useState } from "preact/hooks";
import type { Fault } from "../../physics/outcome.ts";
import type { CheckRecord } from "../../records/check/checkRecord.ts";
import { newId } from "../../records/check/storedCheck.ts";
import { type Decision, standingDecision } from "../../records/review/decision.ts";
import * as messages from "../../words/compiled/screens/desk.ts";
import { filled } from "../filled.ts";
import { Button } from "../parts/Button.tsx";
import { FaultNotice } from "../parts/FaultNotice.tsx";
import { Notice } from "../parts/Notice.tsx";
import { Deciding } from "./Deciding.tsx";
import type { DecideProps } from "./decideProps.ts";
import { type DecisionDraft, draftOf, hasWords } from "./decisionDraft.ts";
import { deskName } from "./deskName.ts";
import { ReplyWays } from "./ReplyWays.tsx";
import { DecidedTwice, SharedReply } from "./shared/SharedCheck.tsx";
import type { Desk } from "./useDesk.ts";
import { decisionWords, momentText } from "./words.ts";

/** What is decided of this version, and the reply that goes with it. */
export function Decide(props: DecideProps) {
  const { desk, record, submission, decisions, draft, onDraft } = props;
  const standing = standingDecision(decisions, submission.key);
  const [fault, setFault] = useState<Fault | null>(null);
  const heading = useRef<HTMLHeadingElement>(null);
  const decide = async (decision: Decision, next = false) => {
    const outcome = await desk.decide(decision);
    setFault(outcome.ok ? null : outcome.fault);
    // Taken back, it is there to be changed; decided, nothing is begun any more.
    if (outcome.ok) onDraft(decision.kind === "undo" && standing ? draftOf(standing) : null);
    if (outcome.ok && next) return props.onNextNew();
    heading.current?.focus();
    heading.current?.scrollIntoView({ block: "nearest" });
  };
  return (
    <section class="card desk-decide" aria-labelledby="decide-heading">
      <h2 id="decide-heading" ref={heading} tabIndex={-1}>
        {standing ? messages.decided : messages.decide}
      </h2>
      {fault && <FaultNotice fault={fault} />}
      <DecidedTwice decisions={decisions} submission={submission.key} />
      {standing ? (
        <Decided desk={desk} record={record} decision={standing} draft={draft} onUndo={decide} />
      ) : (
        <Deciding {...props} onDecide={decide} />
      )}
    </section>
  );
}

function Decided({
  desk,
  record,
  decision,
  draft,
  onUndo,
}: {
  desk: Desk;
  record: CheckRecord;
  decision: Decision;
  draft: DecisionDraft;
  onUndo: (decision: Decision) => void;
}) {
  const undo = () =>
    onUndo({
      key: newId(),
      checkId: decision.checkId,
      submission: decision.submission,
      kind: "undo",
      by: desk.shared?.state?.person ?? deskName(),
      at: new Date().toISOString(),
      note: "",
      undoes: decision.key,
    });
  return (
    <div class="stack" data-decided={decision.kind}>
      <p role="status">
        {filled(messages.by, {
          kind: <strong>{decisionWords[decision.kind]}</strong>,
          by: decision.by || messages.noName,
          at: momentText(decision.at),
        })}
      </p>
      {decision.fromBackup !== undefined && (
        <Notice tone="care">
          <p>{messages.fromBackupThatWas({ fromBackup: momentText(decision.fromBackup) })}</p>
        </Notice>
      )}
      {hasWords(draft) && (
        <Notice tone="care" live>
          <p>{messages.itWasDecidedIn}</p>
          {[draft.note, ...Object.values(draft.typed)].filter(Boolean).map((text) => (
            <pre key={text} class="desk-reply">
              {text}
            </pre>
          ))}
        </Notice>
      )}
      {decision.note && <p>{decision.note}</p>}
      {desk.shared?.sentBy.has(decision.submission) ? (
        <SharedReply shared={desk.shared} record={record} decision={decision} />
      ) : (
        <ReplyWays record={record} decision={decision} />
      )}
      <pre class="desk-reply">{decision.reply}</pre>
      <Button icon="undo" onClick={undo}>
        {messages.takeDecisionBack}
      </Button>
    </div>
  );
}
