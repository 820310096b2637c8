import { useEffect, useRef, useState } from "preact/hooks";
import type { Fault } from "../../physics/outcome.ts";
import { inModelUnits } from "../../saying/modelUnits.ts";
import { isBackup } from "../../sharing/receivedFile.ts";
import type { CheckStore } from "../../storage/checkStore.ts";
import type { Restored } from "../../storage/restoreBackup.ts";
import type { BackupSurvey } from "../../storage/surveyBackup.ts";
import * as messages from "../../words/compiled/screens/saved.ts";
import { Button } from "../parts/Button.tsx";
import { Notice } from "../parts/Notice.tsx";
import { BackupSurveyCard } from "./BackupSurveyCard.tsx";
import {
  type HandedBackup,
  restoreHere,
  surveyHere,
  takeHandedBackup,
  undoHere,
} from "./backupHere.ts";
import { restoredText } from "./savedWords.ts";

type State =
  | { readonly at: "start" }
  | { readonly at: "working"; readonly words: string }
  | { readonly at: "asking"; readonly backup: HandedBackup; readonly survey: BackupSurvey }
  | { readonly at: "done"; readonly restored: Restored }
  | { readonly at: "undone" }
  | { readonly at: "fault"; readonly fault: Fault };

const noBackup: Fault = {
  code: "notABackup",
  sentence: [messages.thisFileIsNot],
};

/**
 * Puts a backup back, once a person has seen what is in it and what it would change. Nothing newer is
 * lost, and what is replaced can be brought back.
 */
export function RestorePart({ store, onRestored }: { store: CheckStore; onRestored: () => void }) {
  const picker = useRef<HTMLInputElement>(null);
  const survey = useRef(new AbortController());
  const [state, setState] = useState<State>({ at: "start" });

  const look = async (backup: HandedBackup) => {
    survey.current.abort();
    const own = new AbortController();
    survey.current = own;
    setState({ at: "working", words: messages.lookingAtWhatIs });
    const found = (await isBackup(backup.file))
      ? await surveyHere(store, backup.file, own.signal)
      : { ok: false as const, fault: noBackup };
    if (own.signal.aborted) return;
    if (!found.ok) setState({ at: "fault", fault: found.fault });
    else if (found.value === null) setState({ at: "start" });
    else setState({ at: "asking", backup, survey: found.value });
  };

  useEffect(() => {
    const handed = takeHandedBackup();
    if (handed) look(handed);
    return () => survey.current.abort();
    // Once, as the screen opens.
  }, []);

  const restore = async ({ file }: HandedBackup, withDecisions: boolean) => {
    setState({ at: "working", words: messages.restoring });
    const restored = await restoreHere(store, file, withDecisions);
    if (restored.ok) setState({ at: "done", restored: restored.value });
    else setState({ at: "fault", fault: restored.fault });
    onRestored();
  };

  const undo = async ({ receipt }: Restored) => {
    setState({ at: "working", words: messages.takingItBack });
    const undone = await undoHere(store, receipt);
    setState(undone.ok ? { at: "undone" } : { at: "fault", fault: undone.fault });
    onRestored();
  };

  return (
    <section class="card">
      <h2>{messages.restoreBackup}</h2>
      <p>{messages.firstYouSeeWhat}</p>
      <input
        ref={picker}
        type="file"
        accept=".txt,text/plain"
        class="unseen"
        tabIndex={-1}
        aria-label={messages.backupToRestore}
        onChange={(event) => {
          const [file] = event.currentTarget.files ?? [];
          if (file) look({ file, way: messages.chosenHere });
          event.currentTarget.value = "";
        }}
      />
      {state.at !== "asking" && (
        <div class="row">
          <Button disabled={state.at === "working"} onClick={() => picker.current?.click()}>
            {state.at === "working" ? state.words : messages.chooseBackup}
          </Button>
        </div>
      )}
      {state.at === "asking" && (
        <BackupSurveyCard
          backup={state.backup}
          survey={state.survey}
          onLeave={() => setState({ at: "start" })}
          onRestore={(withDecisions) => restore(state.backup, withDecisions)}
        />
      )}
      {state.at === "fault" && (
        <Notice tone="no" live>
          <p>{inModelUnits(state.fault.sentence)}</p>
        </Notice>
      )}
      {state.at === "undone" && (
        <Notice tone="ok" live>
          <p>{messages.takenBackWhatIs}</p>
        </Notice>
      )}
      {state.at === "done" && (
        <Notice tone={state.restored.fault === null ? "ok" : "care"} live>
          <p>{restoredText(state.restored.counts)}</p>
          {state.restored.fault && <p>{inModelUnits(state.restored.fault.sentence)}</p>}
          {state.restored.counts.added > 0 && (
            <div class="row">
              <Button icon="undo" onClick={() => undo(state.restored)}>
                {messages.takeItBack}
              </Button>
            </div>
          )}
        </Notice>
      )}
    </section>
  );
}
