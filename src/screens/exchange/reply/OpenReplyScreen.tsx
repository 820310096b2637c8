import { useMemo, useState } from "preact/hooks";
import type { Assessor } from "../../../compute/assessor.ts";
import type { Fault } from "../../../physics/outcome.ts";
import { checkName } from "../../../records/check/checkName.ts";
import { completeRecord } from "../../../records/check/completeRecord.ts";
import type { StoredCheck } from "../../../records/check/storedCheck.ts";
import { limitKindOf } from "../../../records/entry/entryPath.ts";
import { entryName } from "../../../records/entry/readingCatalogue.ts";
import type { LengthUnit } from "../../../records/entry/units.ts";
import type { Reply } from "../../../records/review/reply.ts";
import { said } from "../../../saying/texts.ts";
import * as messages from "../../../words/compiled/screens/exchange/reply.ts";
import { Button } from "../../parts/Button.tsx";
import { Card } from "../../parts/Card.tsx";
import { FaultNotice } from "../../parts/FaultNotice.tsx";
import { Screen, useHeadingFocus } from "../../parts/Screen.tsx";
import { PhoneVerdict } from "../PhoneVerdict.tsx";
import { AnswersNotice, answersOf, besideReply, ReplyFacts } from "./ReplyFacts.tsx";
import { keepReply } from "./takeReplies.ts";
import "./reply.css";

export interface OpenReplyScreenProps {
  readonly reply: Reply;
  /** The check on this phone that it is about. */
  readonly stored: StoredCheck;
  readonly unit: LengthUnit;
  readonly waiting: number;
  readonly fromDesk: boolean;
  /** Faults of what came with it. */
  readonly refused: readonly Fault[];
  onKept(): void;
  onLeave(): void;
  readonly startAssessor?: (() => Assessor) | undefined;
}

/** A reply that came in: what it is, this phone's own verdict beside it, and whether to keep it. */
export function OpenReplyScreen({
  reply,
  stored,
  unit,
  waiting,
  fromDesk,
  refused,
  onKept,
  onLeave,
  startAssessor,
}: OpenReplyScreenProps) {
  const heading = useHeadingFocus(reply.id);
  const [fault, setFault] = useState<Fault | null>(null);
  const [busy, setBusy] = useState(false);
  const completion = useMemo(() => completeRecord(stored), [stored]);
  const answers = useMemo(() => answersOf(reply, stored), [reply, stored]);
  const keep = async () => {
    setBusy(true);
    const kept = await keepReply(stored, reply, fromDesk);
    setBusy(false);
    if (kept.ok) onKept();
    else setFault(kept.fault);
  };
  return (
    <Screen
      top={<span class="screen-name brand">{messages.stopfit}</span>}
      actions={
        <>
          <Button onClick={onLeave}>{waiting > 0 ? messages.next : messages.dontSave}</Button>
          <Button look="main" onClick={keep} disabled={busy}>
            {messages.saveItWithCheck}
          </Button>
        </>
      }
    >
      <h1 ref={heading} tabIndex={-1}>
        {messages.replyWasSentTo}
      </h1>
      <p class="soft">
        {messages.itIsOnlyShown}
        <bdi>{said(checkName(stored))}</bdi>
        {messages.yourReadingsStayAs}
      </p>
      {fault && <FaultNotice fault={fault} />}
      {refused.map((each, index) => (
        <FaultNotice key={`${each.code} ${index}`} fault={each} />
      ))}
      <ReplyFacts reply={reply} fromDesk={fromDesk} />
      <AnswersNotice answers={answers} />
      {completion.ok && (
        <PhoneVerdict
          record={completion.value}
          unit={unit}
          words={besideReply}
          startAssessor={startAssessor}
        />
      )}
      {reply.readings.length > 0 && (
        <Card heading={messages.readingsToReMeasure}>
          <ul class="stack-close">
            {reply.readings.map((id, index) => (
              <li key={index}>{said(entryName(id, limitKindOf(stored.record, id)))}</li>
            ))}
          </ul>
        </Card>
      )}
      <Card heading={messages.whatTheyWrote}>
        <p class="reply-text" dir="auto">
          {reply.text}
        </p>
      </Card>
      {waiting > 0 && <p class="soft">{messages.oneMoreCame({ waiting })}</p>}
    </Screen>
  );
}
