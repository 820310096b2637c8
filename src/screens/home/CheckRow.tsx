import type { State } from "../../physics/fitment.ts";
import { checkName, dateText } from "../../records/check/checkName.ts";
import type { ListedCheck } from "../../records/check/listedCheck.ts";
import { pressedAtRest } from "../../records/check/sitsOnStop.ts";
import { said } from "../../saying/texts.ts";
import * as messages from "../../words/compiled/screens/home.ts";
import { stepHref } from "../addresses.ts";
import { StateMark } from "../drawings/StateMark.tsx";
import { MenuRow } from "../parts/MenuRow.tsx";

const verdictWords: { readonly [Verdict in State]: string } = {
  ok: messages.fits,
  care: messages.takeCare,
  no: messages.doesNotFit,
  unsure: messages.notSure,
};

export type RowAct = "rename" | "copy" | "send" | "save" | "job" | "otherAxle" | "delete";

/** One check of the list: a tap goes on with it, the button beside shows what else can be done. */
export function CheckRow({
  stored,
  sent,
  current,
  onAct,
}: {
  stored: ListedCheck;
  /** Whether it is the one that is open beside the list. */
  current: boolean;
  /** Where it stands at the desk, where it was sent to one. */
  sent?: string | undefined;
  onAct: (act: RowAct) => void;
}) {
  const { lastVerdict, record } = stored;
  const { axle, job } = record;
  const facts = [
    axle && messages.front({ axle, moment: job?.moment ?? "none" }),
    pressedAtRest(record) === null ? null : messages.sitsOnItsStop,
    lastVerdict ? verdictWords[lastVerdict] : messages.noAnswerYet,
    sent,
    record.stop?.name,
    dateText(stored.createdAt).replaceAll(" ", "\u00a0"),
  ].filter(Boolean);
  return (
    <MenuRow
      name={said(checkName(stored))}
      facts={facts.join("\u00a0· ")}
      href={stepHref(stored.id)}
      current={current}
      mark={
        lastVerdict ? (
          <StateMark state={lastVerdict} size={32} label="" />
        ) : (
          <span class="check-open-mark" aria-hidden="true" />
        )
      }
      actions={[
        { words: messages.rename, icon: "pencil", act: () => onAct("rename") },
        { words: messages.copy, icon: "copy", act: () => onAct("copy") },
        { words: messages.send, icon: "forward", act: () => onAct("send") },
        { words: messages.saveAsFile, icon: "file", act: () => onAct("save") },
        { words: messages.job, icon: "steps", act: () => onAct("job") },
        ...(axle
          ? [
              {
                words: messages.checkOtherAxle,
                icon: "plus" as const,
                act: () => onAct("otherAxle"),
              },
            ]
          : []),
        { words: messages.deleteWord, icon: "bin", danger: true, act: () => onAct("delete") },
      ]}
    />
  );
}
