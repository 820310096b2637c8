import { useState } from "preact/hooks";
import type { StoredCheck } from "../../../records/storedCheck.ts";
import { Overview } from "../../check/Overview.tsx";
import { stepsOf } from "../../check/steps.ts";
import { Button } from "../../parts/Button.tsx";
import { Dialog } from "../../parts/Dialog.tsx";

/** All steps of the check, to change any reading. */
export function ChangeReading({ stored, go }: { stored: StoredCheck; go: (step: string) => void }) {
  const [open, setOpen] = useState(false);
  return (
    <>
      <Button icon="pencil" onClick={() => setOpen(true)}>
        Change a reading
      </Button>
      {open && (
        <Dialog
          heading="Change a reading"
          onLeave={() => setOpen(false)}
          actions={<Button onClick={() => setOpen(false)}>Back to the answer</Button>}
        >
          <Overview all={stepsOf(stored)} at={-1} onGo={go} />
        </Dialog>
      )}
    </>
  );
}
