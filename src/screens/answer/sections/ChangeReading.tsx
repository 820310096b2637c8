import { useState } from "preact/hooks";
import type { StoredCheck } from "../../../records/check/storedCheck.ts";
import * as messages from "../../../words/compiled/screens/answer/sections.ts";
import { OverviewDialog } from "../../check/Overview.tsx";
import { stepsOf } from "../../guide/steps.ts";
import { Button } from "../../parts/Button.tsx";

/** All steps of the check, to change any reading. */
export function ChangeReading({ stored, go }: { stored: StoredCheck; go: (step: string) => void }) {
  const [open, setOpen] = useState(false);
  return (
    <>
      <Button icon="pencil" onClick={() => setOpen(true)}>
        {messages.changeReading}
      </Button>
      {open && (
        <OverviewDialog
          all={stepsOf(stored)}
          at={-1}
          onGo={go}
          onLeave={() => setOpen(false)}
          leave={messages.backToAnswer}
        />
      )}
    </>
  );
}
