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

/** One check of the list: a tap goes on with it, the button beside shows what else can be done. */
export function CheckRow({
  stored,
  sent,
  onRename,
  onCopy,
  onSave,
  onSend,
  onDelete,
}: {
  stored: ListedCheck;
  /** Where it stands at the desk, where it was sent to one. */
  sent?: string | undefined;
  onRename: () => void;
  onCopy: () => void;
  onSave: () => void;
  onSend: () => void;
  onDelete: () => void;
}) {
  const name = checkName(stored);
  const { lastVerdict, record } = stored;
  const axle = record.axle === "front" ? "Front axle" : record.axle === "rear" ? "Rear axle" : null;
  const facts = [
    pressedAtRest(record) === null ? null : "Sits on its stop",
    lastVerdict ? verdictWords[lastVerdict] : "No answer yet",
    sent,
    axle,
    dateText(stored.createdAt),
  ].filter(Boolean);
  return (
    <MenuRow
      name={name}
      facts={facts.join(" · ")}
      href={stepHref(stored.id)}
      mark={
        lastVerdict ? (
          <StateMark state={lastVerdict} size={32} label="" />
        ) : (
          <span class="check-open-mark" aria-hidden="true" />
        )
      }
      actions={[
        { words: "Rename", icon: "pencil", act: onRename },
        { words: "Copy", icon: "copy", act: onCopy },
        { words: "Send", icon: "forward", act: onSend },
        { words: "Save as a file", icon: "file", act: onSave },
        { words: "Delete", icon: "bin", danger: true, act: onDelete },
      ]}
    />
  );
}
