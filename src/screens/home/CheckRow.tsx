import { useState } from "preact/hooks";
import type { State } from "../../physics/fitment.ts";
import type { StoredCheck } from "../../records/storedCheck.ts";
import { StateMark } from "../drawings/StateMark.tsx";
import { Button } from "../parts/Button.tsx";
import { stepHref } from "../router.ts";
import { checkName, dateText } from "./checkName.ts";

const verdictWords: { readonly [Verdict in State]: string } = {
  ok: "Fits",
  care: "Take care",
  no: "Does not fit",
  unsure: "Not sure",
};

/** One check of the list: a tap goes on with it, the button beside shows what else can be done. */
export function CheckRow({
  stored,
  onRename,
  onCopy,
  onSave,
  onSend,
  onDelete,
}: {
  stored: StoredCheck;
  onRename: () => void;
  onCopy: () => void;
  onSave: () => void;
  onSend: () => void;
  onDelete: () => void;
}) {
  const [open, setOpen] = useState(false);
  const name = checkName(stored);
  const { lastVerdict, record } = stored;
  const axle = record.axle === "front" ? "Front axle" : record.axle === "rear" ? "Rear axle" : null;
  const facts = [
    lastVerdict ? verdictWords[lastVerdict] : "No answer yet",
    axle,
    dateText(stored.createdAt),
  ].filter(Boolean);
  const close = (work: () => void) => () => {
    setOpen(false);
    work();
  };
  return (
    <li class="check-row">
      <div class="check-row-top">
        <a class="check-link" href={stepHref(stored.id)}>
          {lastVerdict ? (
            <StateMark state={lastVerdict} size={32} label="" />
          ) : (
            <span class="check-open-mark" aria-hidden="true" />
          )}
          <span class="check-words">
            <span class="check-name">{name}</span>
            <span class="small soft">{facts.join(" · ")}</span>
          </span>
        </a>
        <Button
          look="quiet"
          icon="more"
          label={`More for ${name}`}
          expanded={open}
          onClick={() => setOpen(!open)}
        />
      </div>
      {open && (
        <div class="check-actions">
          <Button icon="pencil" onClick={close(onRename)}>
            Rename
          </Button>
          <Button icon="copy" onClick={close(onCopy)}>
            Copy
          </Button>
          <Button icon="forward" onClick={close(onSend)}>
            Send
          </Button>
          <Button icon="file" onClick={close(onSave)}>
            Save as a file
          </Button>
          <Button look="danger" icon="bin" onClick={close(onDelete)}>
            Delete
          </Button>
        </div>
      )}
    </li>
  );
}
