import { useEffect, useRef, useState } from "preact/hooks";
import { inModelUnits } from "../../physics/sentence.ts";
import { isBackup } from "../../sharing/receivedFile.ts";
import type { CheckStore } from "../../storage/checkStore.ts";
import { Button } from "../parts/Button.tsx";
import { Notice } from "../parts/Notice.tsx";
import { type Restored, restoreHere, takeHandedBackup } from "./backupHere.ts";
import { restoredText } from "./savedWords.ts";

/** Puts a backup back. It only ever adds: nothing newer is lost, nothing is deleted. */
export function RestorePart({ store, onRestored }: { store: CheckStore; onRestored: () => void }) {
  const picker = useRef<HTMLInputElement>(null);
  const [working, setWorking] = useState(false);
  const [done, setDone] = useState<Restored | "noBackup" | null>(null);

  const restore = async (file: File) => {
    setDone(null);
    setWorking(true);
    const result = (await isBackup(file)) ? await restoreHere(store, file) : "noBackup";
    setWorking(false);
    setDone(result);
    onRestored();
  };

  useEffect(() => {
    const handed = takeHandedBackup();
    if (handed) restore(handed);
    // Once, as the screen opens.
  }, []);

  return (
    <section class="card">
      <h2>Restore a backup</h2>
      <p>
        It is joined with what is here: missing checks and readings are added, and nothing newer is
        replaced.
      </p>
      <input
        ref={picker}
        type="file"
        accept=".txt,text/plain"
        class="unseen"
        tabIndex={-1}
        aria-label="Backup to restore"
        onChange={(event) => {
          const [file] = event.currentTarget.files ?? [];
          if (file) restore(file);
          event.currentTarget.value = "";
        }}
      />
      <div class="row">
        <Button disabled={working} onClick={() => picker.current?.click()}>
          {working ? "Restoring …" : "Choose a backup"}
        </Button>
      </div>
      {done === "noBackup" && (
        <Notice tone="no" live>
          <p>
            This file is not a backup of Stopfit. A backup's name begins with “stopfit-backup”; a
            single check is opened from the list with “Open a file”.
          </p>
        </Notice>
      )}
      {done && done !== "noBackup" && (
        <Notice tone={done.outcome.ok ? "ok" : "care"} live>
          <p>{restoredText(done.counts)}</p>
          {!done.outcome.ok && <p>{inModelUnits(done.outcome.fault.sentence)}</p>}
        </Notice>
      )}
    </section>
  );
}
