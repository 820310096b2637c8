import { useState } from "preact/hooks";
import type { Sentence } from "../../physics/sentence.ts";
import { inModelUnits } from "../../saying/modelUnits.ts";
import { whereSaved } from "../../sharing/saveFile.ts";
import type { CheckStore } from "../../storage/checkStore.ts";
import * as messages from "../../words/compiled/screens/saved.ts";
import { Button } from "../parts/Button.tsx";

/** “Save a backup”, and what came of it. */
export function BackupButton({
  store,
  plain = false,
  onSaved,
}: {
  store: CheckStore;
  /** Without its icon, where there is little room. */
  plain?: boolean;
  onSaved: () => void;
}) {
  const [working, setWorking] = useState(false);
  const [said, setSaid] = useState<Sentence | null>(null);
  const save = async () => {
    setWorking(true);
    const { saveBackupHere } = await import("./backupHere.ts");
    const saved = await saveBackupHere(store);
    setWorking(false);
    setSaid(
      saved.ok
        ? [messages.backupIsReady({ whereSaved: inModelUnits(whereSaved()) })]
        : saved.fault.sentence,
    );
    if (saved.ok) onSaved();
  };
  return (
    <>
      <Button look="main" {...(!plain && { icon: "file" })} disabled={working} onClick={save}>
        {messages.saveBackup}
      </Button>
      {said && <p role="status">{inModelUnits(said)}</p>}
    </>
  );
}
