import { useCallback, useState } from "preact/hooks";
import type { Outcome } from "../../physics/outcome.ts";
import { inModelUnits } from "../../physics/sentence.ts";
import type { Pack } from "../../records/pack/pack.ts";
import {
  type FoundPart,
  partOfLabel,
  partOfNumber,
  readPartCode,
} from "../../records/pack/partCode.ts";
import { partText } from "../../records/pack/stopFacts.ts";
import { stopTitle } from "../../records/pack/stopTitle.ts";
import type { CodeReader } from "../../sharing/codeReader.ts";
import { Button } from "../parts/Button.tsx";
import { TextField } from "../parts/Field.tsx";
import { later } from "../parts/later.tsx";
import { Notice } from "../parts/Notice.tsx";
import type { LabelScannerProps } from "./LabelScanner.tsx";

const LabelScanner = later<LabelScannerProps>(
  async () => (await import("./LabelScanner.tsx")).LabelScanner,
);

/** "Arm block, HL-1052, revision B, batch 2611". */
function foundText({ stop, revision, batch }: FoundPart): string {
  const { partNumber } = stop;
  return partNumber === undefined
    ? stopTitle(stop)
    : `${stopTitle(stop)}, ${partText({ partNumber, revision, batch })}`;
}

/** A part by the label on its bag, or by its number typed: what it is stands below, and is handed over. */
export function PartEntry({
  pack,
  onFound,
  startReader,
}: {
  pack: Pack;
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
      <TextField
        label="Part number"
        hint="As on the bag."
        value={typed}
        maxLength={200}
        onInput={(text) => {
          setTyped(text);
          setOutcome(null);
        }}
        onEnter={() => take(partOfNumber(pack, typed))}
      />
      <div class="row">
        {!scanning && (
          <Button icon="camera" onClick={() => setScanning(true)}>
            Scan the label
          </Button>
        )}
        <Button disabled={typed.trim() === ""} onClick={() => take(partOfNumber(pack, typed))}>
          Find the part
        </Button>
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
          {outcome.value.remark && <p>{outcome.value.remark}</p>}
        </Notice>
      )}
    </div>
  );
}
