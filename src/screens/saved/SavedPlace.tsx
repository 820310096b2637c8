import { useCallback, useEffect, useState } from "preact/hooks";
import type { Sentence } from "../../physics/sentence.ts";
import { checkName, dateText } from "../../records/check/checkName.ts";
import type { ListedCheck } from "../../records/check/listedCheck.ts";
import { inModelUnits } from "../../saying/modelUnits.ts";
import { said } from "../../saying/texts.ts";
import { canShareFile, share } from "../../sharing/shareFile.ts";
import { isBrowserOnApple, isInstalled } from "../../sharing/thisDevice.ts";
import type { Backup } from "../../storage/backup.ts";
import { markBackedUp } from "../../storage/backup.ts";
import type { CheckStore } from "../../storage/checkStore.ts";
import * as messages from "../../words/compiled/screens/saved.ts";
import { checksHref, stepHref } from "../addresses.ts";
import { Button, ButtonLink } from "../parts/Button.tsx";
import { Notice } from "../parts/Notice.tsx";
import { OneMoment } from "../parts/OneMoment.tsx";
import { Screen, useHeadingFocus } from "../parts/Screen.tsx";
import type { OpenedStore } from "../useStore.ts";
import { BackupButton } from "./BackupButton.tsx";
import { backupOf } from "./backupHere.ts";
import { InstallSteps } from "./InstallSteps.tsx";
import { installOffer, takeInstallOffer } from "./installOffer.ts";
import { askToKeep, canAskToKeep, sizeText } from "./persistence.ts";
import { RestorePart } from "./RestorePart.tsx";
import { savedName } from "./savedRoute.ts";
import { checksText, onlyHereText, safekeepingWords } from "./savedWords.ts";
import { type Keeping, useKeeping } from "./useKeeping.ts";

export interface SavedPlaceProps {
  readonly opened: OpenedStore;
}

/** Whether what is on this phone stays there, and how it is saved elsewhere. */
export function SavedPlace({ opened: { store, fault } }: SavedPlaceProps) {
  const heading = useHeadingFocus("saved");
  const [checks, setChecks] = useState<readonly ListedCheck[] | null>(null);
  const { keeping, lookAgain } = useKeeping(checks);
  const load = useCallback(async () => {
    const listed = await store.list();
    setChecks(listed.ok ? listed.value : []);
  }, [store]);
  useEffect(() => {
    load();
    return store.subscribe(load);
  }, [store, load]);

  return (
    <Screen
      top={
        <>
          <ButtonLink look="quiet" href={checksHref} icon="back" label={messages.allChecks} />
          <span class="screen-name">{savedName}</span>
        </>
      }
    >
      <h1 ref={heading} tabIndex={-1}>
        {savedName}
      </h1>
      {fault && (
        <Notice tone="no" live>
          <p>{inModelUnits(fault.sentence)}</p>
        </Notice>
      )}
      {!keeping && <OneMoment />}
      {keeping && !fault && (
        <PersistencePart
          keeping={keeping}
          lookAgain={lookAgain}
          store={store}
          checks={checks?.length ?? 0}
        />
      )}
      {keeping && checks && (
        <BackupPart store={store} keeping={keeping} count={checks.length} onSaved={lookAgain} />
      )}
      <RestorePart store={store} onRestored={load} />
    </Screen>
  );
}

function PersistencePart({
  keeping,
  lookAgain,
  store,
  checks,
}: {
  keeping: Keeping;
  lookAgain: () => void;
  store: CheckStore;
  checks: number;
}) {
  const { tone, name, words } = safekeepingWords(keeping.persistence, {
    inAppleBrowser: isBrowserOnApple(),
    installed: isInstalled(),
  });
  const [asked, setAsked] = useState(false);
  const install = async () => {
    await takeInstallOffer()?.prompt();
    await askToKeep();
    lookAgain();
  };
  const ask = async () => {
    await askToKeep();
    setAsked(true);
    lookAgain();
  };
  const { space, low } = keeping;
  return (
    <section class="card">
      <Notice tone={tone} live>
        <p>
          <strong>{name}</strong>
        </p>
        <p>{words}</p>
        {asked && keeping.persistence !== "kept" && <p>{messages.askedAndBrowserHas}</p>}
      </Notice>
      {keeping.persistence !== "kept" && (
        <>
          <div class="row">
            {installOffer() && (
              <Button look="main" onClick={install}>
                {messages.installStopfit}
              </Button>
            )}
            {canAskToKeep() && <Button onClick={ask}>{messages.askBrowserToSave}</Button>}
          </div>
          {!isInstalled() && <InstallSteps store={store} checks={checks} />}
          <p class="small soft">{messages.privateWindowLosesEverything}</p>
        </>
      )}
      {space && (
        <p class={low ? "" : "small soft"}>
          {low && <strong>{messages.shortOfSpace} </strong>}
          {messages.usedLeftForStopfit({
            size: sizeText(space.usedBytes),
            size2: sizeText(space.freeBytes),
          })}
          {low && messages.deleteChecksYouNo}
        </p>
      )}
    </section>
  );
}

const shownNames = 6;

function BackupPart({
  store,
  keeping,
  count,
  onSaved,
}: {
  store: CheckStore;
  keeping: Keeping;
  count: number;
  onSaved: () => void;
}) {
  const { lastBackupAt, onlyHere } = keeping;
  const more = onlyHere.length - shownNames;
  return (
    <section class="card">
      <h2>{messages.backup}</h2>
      <p>
        {lastBackupAt
          ? messages.lastBackup({ lastBackupAt: dateText(lastBackupAt) })
          : messages.noBackupWasMade}{" "}
        {count === 0
          ? messages.thereAreNoChecks
          : onlyHere.length === 0
            ? messages.hereNothingChangedSince({ checks: checksText(count) })
            : onlyHereText(onlyHere.length)}
      </p>
      {onlyHere.length > 0 && (
        <ul class="stack-close">
          {onlyHere.slice(0, shownNames).map((stored) => (
            <li key={stored.id}>
              <a href={stepHref(stored.id)}>{said(checkName(stored))}</a>
            </li>
          ))}
          {more > 0 && <li>{messages.andMore2({ more })}</li>}
        </ul>
      )}
      <p class="small soft">{messages.oneFileWithEverything}</p>
      <div class="row">
        <BackupButton store={store} onSaved={onSaved} />
        <ShareBackup store={store} onSaved={onSaved} />
      </div>
    </section>
  );
}

/** By the share sheet, which opens only straight after a tap: the file is made by a tap before. */
function ShareBackup({ store, onSaved }: { store: CheckStore; onSaved: () => void }) {
  const [ready, setReady] = useState<Backup | null>(null);
  const [said, setSaid] = useState<Sentence | null>(null);
  const shareable = canShareFile(new File([""], "stopfit-backup.txt", { type: "text/plain" }));
  if (!shareable) return null;
  const make = async () => {
    const backup = await backupOf(store);
    if (backup.ok) setReady(backup.value);
    setSaid(backup.ok ? null : backup.fault.sentence);
  };
  const hand = async (backup: Backup) => {
    const shared = await share({ files: [backup.file], title: messages.backupOfStopfit });
    setReady(null);
    if (!shared.ok) setSaid(shared.fault.sentence);
    else if (shared.value === "handed over") {
      setSaid([messages.backupWasHandedTo]);
      await markBackedUp(backup);
      onSaved();
    }
  };
  return (
    <>
      {ready ? (
        <Button look="main" onClick={() => hand(ready)}>
          {messages.shareItNow}
        </Button>
      ) : (
        <Button onClick={make}>{messages.shareBackup}</Button>
      )}
      {said && <p role="status">{inModelUnits(said)}</p>}
    </>
  );
}
