import { inModelUnits } from "../../physics/sentence.ts";
import { completeRecord } from "../../records/check/completeRecord.ts";
import type { StoredCheck } from "../../records/check/storedCheck.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
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
      heading="Not ready to send"
      onLeave={onLeave}
      actions={
        <Button look="main" onClick={onLeave}>
          Close
        </Button>
      }
    >
      <p>A check is sent once it is complete, so that others can work out the answer too.</p>
      <ul class="stack-close">
        {missing.slice(0, shownMissing).map(({ field, sentence }) => (
          <li key={field}>{inModelUnits(sentence)}</li>
        ))}
      </ul>
      {more > 0 && <p>And {more} more.</p>}
      <p>To go on with it on another device, save it as a file and open that there.</p>
    </Dialog>
  );
}
