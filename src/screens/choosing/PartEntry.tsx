import { useCallback, useState } from "preact/hooks";
import type { CodeReader } from "../../compute/codeReader.ts";
import type { Outcome } from "../../physics/outcome.ts";
import type { Pack } from "../../records/pack/pack.ts";
import {
  type FoundPart,
  partOfLabel,
  partOfNumber,
  readPartCode,
} from "../../records/pack/partCode.ts";
import { stopInFull } from "../../records/pack/stopFacts.ts";
import { inModelUnits } from "../../saying/modelUnits.ts";
import { said } from "../../saying/texts.ts";
import * as messages from "../../words/compiled/screens/choosing.ts";
import { Button } from "../parts/Button.tsx";
import { TextField } from "../parts/Field.tsx";
import { later } from "../parts/later.tsx";
import { Notice } from "../parts/Notice.tsx";
import type { LabelScannerProps } from "./LabelScanner.tsx";

const LabelScanner = later<LabelScannerProps>(
  async () => (await import("./LabelScanner.tsx")).LabelScanner,
);

function foundText({ stop, revision, batch }: FoundPart): string {
  return said(stopInFull({ ...stop, revision, batch }));
}

/** A part by the label on its bag, or by its number typed: what it is stands below, and is handed over. */
export function PartEntry({
  pack,
  byNumber = true,
  onFound,
  startReader,
}: {
  pack: Pack;
  /** Also by its number; where there is a field for that already, by the label only. */
  byNumber?: boolean;
  onFound: (found: FoundPart) => void;
  readonly startReader?: () => Promise<CodeReader>;
}) {
  const [typed, setTyped] = useState("");
  const [scanning, setScanning] = useState(false);
  const [outcome, setOutcome] = useState<Outcome<FoundPart> | null>(null);
  const take = useCallback(
    (found: Outcome<FoundPart>) => {
      setOutcome(found);
      if (!found.ok) return;
      navigator.vibrate?.(60);
      setScanning(false);
      onFound(found.value);
    },
    [onFound],
  );
  const takeText = useCallback(
    (text: string) => {
      const label = readPartCode(text);
      take(label.ok ? partOfLabel(pack, label.value) : label);
    },
    [pack, take],
  );
  return (
    <div class="stack-close">
      {byNumber && (
        <TextField
          label={messages.partNumber}
          hint={messages.asOnBag}
          value={typed}
          maxLength={200}
          onInput={(text) => {
            setTyped(text);
            setOutcome(null);
          }}
          onEnter={() => take(partOfNumber(pack, typed))}
        />
      )}
      <div class="row">
        {!scanning && (
          <Button icon="camera" onClick={() => setScanning(true)}>
            {messages.scanLabel}
          </Button>
        )}
        {byNumber && (
          <Button disabled={typed.trim() === ""} onClick={() => take(partOfNumber(pack, typed))}>
            {messages.findPart}
          </Button>
        )}
      </div>
      {scanning && (
        <LabelScanner
          onText={takeText}
          onLeave={() => setScanning(false)}
          {...(startReader && { startReader })}
        />
      )}
      {outcome && !outcome.ok && (
        <Notice tone="no" live>
          <p>{inModelUnits(outcome.fault.sentence)}</p>
        </Notice>
      )}
      {outcome?.ok && (
        <Notice tone={outcome.value.remark ? "care" : "ok"} live>
          <p>
            <strong>{foundText(outcome.value)}</strong>
          </p>
          {outcome.value.remark && <p>{said(outcome.value.remark)}</p>}
        </Notice>
      )}
    </div>
  );
}
