import { useState } from "preact/hooks";
import type { StoredCheck } from "../../records/check/storedCheck.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import * as messages from "../../words/compiled/screens/exchange.ts";
import { Button, type ButtonLook } from "../parts/Button.tsx";
import { later } from "../parts/later.tsx";

export const SendStored = later<{ stored: StoredCheck; unit: LengthUnit; onLeave: () => void }>(
  async () => (await import("./SendStored.tsx")).default,
);

/** “Send”, and the sheet that it opens. */
export function SendButton({
  stored,
  unit,
  look = "main",
}: {
  stored: StoredCheck;
  unit: LengthUnit;
  look?: ButtonLook;
}) {
  const [open, setOpen] = useState(false);
  return (
    <>
      <Button look={look} icon="forward" onClick={() => setOpen(true)}>
        {messages.send}
      </Button>
      {open && <SendStored stored={stored} unit={unit} onLeave={() => setOpen(false)} />}
    </>
  );
}
