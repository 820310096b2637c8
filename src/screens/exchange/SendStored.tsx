import { completeRecord } from "../../records/check/completeRecord.ts";
import type { StoredCheck } from "../../records/check/storedCheck.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import { inModelUnits } from "../../saying/modelUnits.ts";
import * as messages from "../../words/compiled/screens/exchange.ts";
import { Button } from "../parts/Button.tsx";
import { Dialog } from "../parts/Dialog.tsx";
import { markSent } from "../saved/safety.ts";
import SendSheet from "./SendSheet.tsx";

const shownMissing = 4;

/** Sends a check of this phone, or says what it still lacks. */
export default function SendStored({
  stored,
  unit,
  onLeave,
}: {
  stored: StoredCheck;
  unit: LengthUnit;
  onLeave: () => void;
}) {
  const completion = completeRecord(stored);
  if (completion.ok) {
    return (
      <SendSheet
        record={completion.value}
        unit={unit}
        onLeave={onLeave}
        onSent={() => markSent(stored)}
      />
    );
  }
  const { missing } = completion;
  const more = missing.length - shownMissing;
  return (
    <Dialog
      heading={messages.notReadyToSend}
      onLeave={onLeave}
      actions={
        <Button look="main" onClick={onLeave}>
          {messages.closeWord}
        </Button>
      }
    >
      <p>{messages.checkIsSentOnce}</p>
      <ul class="stack-close">
        {missing.slice(0, shownMissing).map(({ field, sentence }) => (
          <li key={field}>{inModelUnits(sentence)}</li>
        ))}
      </ul>
      {more > 0 && <p>{messages.andMore2({ more })}</p>}
      <p>{messages.toGoOnWith}</p>
    </Dialog>
  );
}
