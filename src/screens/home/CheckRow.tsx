import type { State } from "../../physics/fitment.ts";
import { checkName, dateText } from "../../records/check/checkName.ts";
import type { ListedCheck } from "../../records/check/listedCheck.ts";
import { pressedAtRest } from "../../records/check/sitsOnStop.ts";
import { stepHref } from "../addresses.ts";
import { StateMark } from "../drawings/StateMark.tsx";
import { MenuRow } from "../parts/MenuRow.tsx";

const verdictWords: { readonly [Verdict in State]: string } = {
  ok: "Fits",
  care: "Take care",
  no: "Does not fit",
  unsure: "Not sure",
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
    axle && `${axle === "front" ? "Front" : "Rear"} axle${job?.moment ? `, ${job.moment}` : ""}`,
    pressedAtRest(record) === null ? null : "Sits on its stop",
    lastVerdict ? verdictWords[lastVerdict] : "No answer yet",
    sent,
    record.stop?.name,
    dateText(stored.createdAt),
  ].filter(Boolean);
  return (
    <MenuRow
      name={checkName(stored)}
      facts={facts.join(" · ")}
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
        { words: "Rename", icon: "pencil", act: () => onAct("rename") },
        { words: "Copy", icon: "copy", act: () => onAct("copy") },
        { words: "Send", icon: "forward", act: () => onAct("send") },
        { words: "Save as a file", icon: "file", act: () => onAct("save") },
        { words: "Job", icon: "steps", act: () => onAct("job") },
        ...(axle
          ? [
              {
                words: "Check the other axle",
                icon: "plus" as const,
                act: () => onAct("otherAxle"),
              },
            ]
          : []),
        { words: "Delete", icon: "bin", danger: true, act: () => onAct("delete") },
      ]}
    />
  );
}
