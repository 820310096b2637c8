import { useMemo, useState } from "preact/hooks";
import type { Fault } from "../../physics/outcome.ts";
import type { CheckRecord } from "../../records/check/checkRecord.ts";
import type { Decision } from "../../records/review/decision.ts";
import { saveFile } from "../../sharing/saveFile.ts";
import { canShareFile, canShareText, copyText, share } from "../../sharing/shareFile.ts";
import { appAddress, replyLink } from "../../sharing/shareLink.ts";
import * as messages from "../../words/compiled/screens/desk.ts";
import { Button, ButtonLink } from "../parts/Button.tsx";
import { FaultNotice } from "../parts/FaultNotice.tsx";
import { mailLink, replyFile, replyOf, withGreeting, withLink } from "./replyItems.ts";

/** How a reply leaves: shared, copied, mailed, or saved as a file for that person's phone. */
export function ReplyWays({
  record,
  decision,
  greeted = false,
}: {
  record: CheckRecord;
  decision: Decision;
  /** Letters of the shared desk name nobody; by mail the person is greeted by name. */
  greeted?: boolean;
}) {
  const [done, setDone] = useState("");
  const [fault, setFault] = useState<Fault | null>(null);
  // Made before the tap: browsers open the share sheet only straight after one.
  const { text, file, mail } = useMemo(() => {
    const words = greeted ? withGreeting(record, decision.reply ?? "") : (decision.reply ?? "");
    const reply = replyOf(record, decision);
    const link = reply && replyLink(reply, appAddress(location));
    const whole = withLink(words, link);
    return {
      text: whole,
      file: reply && replyFile(reply),
      mail: mailLink(record, whole) ?? mailLink(record, words),
    };
  }, [record, decision, greeted]);
  const say = (words: string, problem: Fault | null) => {
    setDone(problem ? "" : words);
    setFault(problem);
  };
  const shareable = canShareText(text);
  const shareIt = async () => {
    const withFile = file !== null && canShareFile(file);
    const outcome = await share(withFile && file ? { files: [file], text } : { text });
    if (!outcome.ok) say("", outcome.fault);
    else if (outcome.value === "handed over") say(messages.handedToWhatYou, null);
  };
  return (
    <div class="stack-close">
      <div class="row">
        {shareable && (
          <Button look="main" onClick={shareIt}>
            {messages.shareReply}
          </Button>
        )}
        <Button
          icon="copy"
          onClick={async () => {
            const outcome = await copyText(text);
            say(messages.textIsCopiedWith, outcome.ok ? null : copyRefused);
          }}
        >
          {messages.copyText}
        </Button>
        {mail && <ButtonLink href={mail}>{messages.writeMail}</ButtonLink>}
        {file && (
          <Button
            icon="file"
            onClick={async () => {
              if (await saveFile(file)) say(messages.replyFileWasHandedOver, null);
              else say("", notSaved);
            }}
          >
            {messages.saveReplyFile}
          </Button>
        )}
      </div>
      {done && (
        <p class="small" role="status">
          {done}
        </p>
      )}
      {fault && <FaultNotice fault={fault} />}
    </div>
  );
}

const notSaved: Fault = {
  code: "replyNotSaved",
  sentence: [messages.replyFileIsNot],
};

const copyRefused: Fault = {
  code: "copyRefused",
  sentence: [messages.browserDoesNotLet],
};
