import { useState } from "preact/hooks";
import type { ReadingId } from "../../../physics/readings/index.ts";
import type { StoredCheck } from "../../../records/check/storedCheck.ts";
import type { Entry } from "../../../records/entry/entry.ts";
import { setEntry } from "../../../records/filling/changes.ts";
import * as messages from "../../../words/compiled/screens/check/tilt.ts";
import type { Change } from "../../guide/stepProps.ts";
import { Button } from "../../parts/Button.tsx";
import { later } from "../../parts/later.tsx";
import type { Preferences } from "../../preferences.ts";
import type { TiltDialogProps } from "./TiltDialog.tsx";
import { tiltTaskOf } from "./tiltTask.ts";

const TiltDialog = later<TiltDialogProps>(async () => (await import("./TiltDialog.tsx")).default);

interface Props {
  readonly id: ReadingId;
  /** The reading as its step names it. */
  readonly name: string;
  readonly stored: StoredCheck;
  readonly change: Change;
  readonly preferences: Preferences;
  readonly entryOf: (stored: StoredCheck, id: ReadingId, preferences: Preferences) => Entry;
}

/** Beside the typed entry of an angle: the phone's own tilt sensor. Nothing for other readings. */
export function TiltButton({ id, name, stored, change, preferences, entryOf }: Props) {
  const [open, setOpen] = useState(false);
  const task = tiltTaskOf(stored, id);
  if (!task) return null;
  return (
    <>
      <Button wide onClick={() => setOpen(true)}>
        {messages.measureWithThisPhones}
      </Button>
      {open && (
        <TiltDialog
          id={id}
          name={name}
          task={task}
          entry={entryOf(stored, id, preferences)}
          onTaken={(taken) =>
            change((current) => setEntry(current, id, taken(entryOf(current, id, preferences))))
          }
          onLeave={() => setOpen(false)}
        />
      )}
    </>
  );
}
